package pack

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"
)

// The stamp is a custom document property. It holds the hash of every byte of
// the file before the part it stands in, and that part is the last one: a file
// that was saved by anybody else keeps the property but not the hash.
const (
	propsName  = "docProps/custom.xml"
	propsType  = "application/vnd.openxmlformats-officedocument.custom-properties+xml"
	propsNS    = "http://schemas.openxmlformats.org/officeDocument/2006/custom-properties"
	variantNS  = "http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes"
	propsFmtID = "{D5CDD505-2E9C-101B-9397-08002B2CF9AE}"
	stampKey   = "seamtally"
)

const noProps = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>` + "\n" + `<Properties xmlns="` + propsNS + `"></Properties>`

// stampInto returns the properties part with our stamp in it; props is the user's
// own part, or nil.
func stampInto(props *part, stamp string) []byte {
	if props == nil {
		data := []byte(noProps)
		root, _ := parse(data)
		props = &part{data: data, root: root}
	}
	pid, edits := 1, []edit(nil)
	for _, k := range props.root.kids {
		if k.attr("name") == stampKey {
			edits = append(edits, edit{at: k.start, cut: k.end - k.start})
			continue
		}
		if n, err := strconv.Atoi(k.attr("pid")); err == nil {
			pid = max(pid, n)
		}
	}
	text := fmt.Sprintf(`<property xmlns="%s" fmtid="%s" pid="%d" name="%s"><vt:lpwstr xmlns:vt="%s">1 %s</vt:lpwstr></property>`,
		propsNS, propsFmtID, pid+1, stampKey, variantNS, stamp)
	if props.root.prefix == "" {
		text = strings.Replace(text, ` xmlns="`+propsNS+`"`, "", 1)
	}
	return apply(props.data, append(edits, appendInto(props.root, text)))
}

// Stamped tells whether this tool wrote a workbook, and whether nobody has
// changed it since.
func Stamped(data []byte) (ours, unchanged bool) {
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return false, false
	}
	for i, f := range zr.File {
		if clean(f.Name) != clean(propsName) {
			continue
		}
		stamp := readStamp(f)
		if stamp == "" {
			return false, false
		}
		start, err := f.DataOffset()
		if err != nil || i != len(zr.File)-1 {
			return true, false
		}
		sum := sha256.Sum256(data[:start])
		return true, hex.EncodeToString(sum[:]) == stamp
	}
	return false, false
}

// readStamp returns the hash that the properties part holds.
func readStamp(f *zip.File) string {
	data, err := readSome(f, 1<<20)
	if err != nil {
		return ""
	}
	root, err := parse(data)
	if err != nil {
		return ""
	}
	for _, k := range root.kids {
		if k.attr("name") == stampKey && len(k.kids) == 1 {
			value := strings.TrimSpace(string(data[k.kids[0].open:k.kids[0].shut]))
			return strings.TrimPrefix(value, "1 ")
		}
	}
	return ""
}
