package list

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"path/filepath"
	"strings"

	"seamtally/batch/finding"
)

// Read reads a joint list from its bytes. What the file is, is decided by its
// content and never by its name. The error, if any, is a *Refusal.
func Read(name string, data []byte) (src *Source, problems []finding.Problem, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			src, problems = nil, nil
			err = refuse("please report the file to the makers of this tool", "the file could not be read because of a fault in this tool (%v)", fault)
		}
		var r *Refusal
		if errors.As(err, &r) {
			r.File = name
		}
		for i := range problems {
			problems[i].Place.File = name
		}
	}()
	src = &Source{File: name, Data: data}
	kind, refusal := sniff(data)
	if refusal != nil {
		return nil, nil, refusal
	}
	if kind == CSV {
		problems, err = readCSV(src)
		problems = append(problems, misnamed(name)...)
	} else {
		problems, err = readWorkbook(src)
	}
	if err != nil {
		return nil, nil, err
	}
	sum := sha256.Sum256(data)
	src.SHA256 = hex.EncodeToString(sum[:])
	return src, problems, nil
}

// misnamed warns where a text file bears the name of a workbook: a workbook that
// was damaged on its way could look so too.
func misnamed(name string) []finding.Problem {
	ext := strings.ToLower(filepath.Ext(name))
	if ext != ".xlsx" && ext != ".xlsm" && ext != ".xls" {
		return nil
	}
	return []finding.Problem{{Level: finding.Warning, Code: "misnamed",
		Text: "the file is named " + ext + " but holds plain text; it was read as CSV",
		Hint: "check that it is the right file, and name it .csv"}}
}
