package batch

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"seamtally/batch/save"
)

// listEndings are the files of a folder that may be lists.
var listEndings = map[string]bool{".xlsx": true, ".xlsm": true, ".csv": true, ".tsv": true}

// Expand returns the job's lists with every folder among them replaced by the
// lists in it, by name. What this tool wrote, the shop file, hidden files and the
// locks of spreadsheet programs are no lists; folders within are not entered.
func Expand(job Job) ([]string, error) {
	var all []string
	for _, name := range job.Lists {
		info, err := os.Stat(name)
		if name == standardInput || err != nil || !info.IsDir() {
			all = append(all, name) // What cannot be read is told when it is read.
			continue
		}
		found, err := job.listsIn(name)
		if err != nil {
			return nil, err
		}
		all = append(all, found...)
	}
	return all, nil
}

func (j *Job) listsIn(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, unreadable("folder", dir, err)
	}
	var found []string
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		if e.IsDir() || !listEndings[strings.ToLower(filepath.Ext(e.Name()))] || strings.HasPrefix(e.Name(), ".") || strings.HasPrefix(e.Name(), "~$") {
			continue
		}
		if j.Shop != "" && pathKey(path) == pathKey(j.Shop) || written(path) {
			continue
		}
		found = append(found, path)
	}
	if len(found) == 0 {
		return nil, fmt.Errorf("the folder %q holds no list (XLSX, XLSM, CSV or TSV) apart from what seamtally wrote there; name the folder where the lists are, or a list itself", dir)
	}
	return found, nil
}

// written tells whether this tool wrote a file, changed since or not.
func written(path string) bool {
	data, err := os.ReadFile(path)
	if err != nil {
		return false
	}
	if strings.EqualFold(filepath.Ext(path), ".csv") {
		return save.JudgeCSV(data) != save.Foreign
	}
	return judgeWorkbook(data) != save.Foreign
}
