package list

import (
	"bytes"
	"unicode/utf8"
)

// sniff says whether the bytes are a workbook (XLSX, settled later between XLSX
// and XLSM) or text, or refuses them with a sentence that names what they are.
func sniff(data []byte) (Format, *Refusal) {
	if len(bytes.TrimSpace(data)) == 0 {
		return "", nothing()
	}
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) || bytes.HasPrefix(data, []byte("PK\x05\x06")) {
		return XLSX, nil
	}
	for _, m := range magics {
		if bytes.HasPrefix(data, []byte(m.start)) {
			return "", refuse(m.hint, "%s", m.text)
		}
	}
	if r := markup(data); r != nil {
		return "", r
	}
	return CSV, nil
}

// magics are the first bytes of the types that people give by mistake.
var magics = []struct{ start, text, hint string }{
	{"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "the file is a password-protected workbook or an old .xls workbook", "remove the password, or save it as .xlsx"},
	{"\x09\x08", "the file is a very old .xls workbook", "save it as .xlsx"},
	{"%PDF-", "the file is a PDF document", "ask for the list as a spreadsheet, or export it as .xlsx or CSV"},
	{"\x1f\x8b", "the file is a gzip archive", "unpack it first with a program for archives and give the list inside, or ask for the list as .xlsx or CSV"},
	{"7z\xbc\xaf\x27\x1c", "the file is a 7z archive", "unpack it first with a program for archives and give the list inside, or ask for the list as .xlsx or CSV"},
	{"Rar!", "the file is a RAR archive", "unpack it first with a program for archives and give the list inside, or ask for the list as .xlsx or CSV"},
	{"\x89PNG", "the file is a picture", "ask for the list as a spreadsheet"},
	{"\xff\xd8\xff", "the file is a picture", "ask for the list as a spreadsheet"},
	{"GIF8", "the file is a picture", "ask for the list as a spreadsheet"},
	{"{\\rtf", "the file is a rich-text document", "copy the table into a spreadsheet and save it as .xlsx"},
}

// markup recognises web pages and XML spreadsheets, often named .xls.
func markup(data []byte) *Refusal {
	head := data[:min(len(data), 1024)]
	head = bytes.ToLower(bytes.TrimSpace(bytes.TrimPrefix(head, []byte("\xef\xbb\xbf"))))
	switch {
	case bytes.HasPrefix(head, []byte("<!doctype html")), bytes.HasPrefix(head, []byte("<html")), bytes.HasPrefix(head, []byte("<table")):
		return refuse(saveAsXLSX, "the file is a web page, whatever its name says")
	case bytes.HasPrefix(head, []byte("<?xml")), bytes.HasPrefix(head, []byte("<workbook")):
		return refuse(saveAsXLSX, "the file is an XML document, not an .xlsx workbook or CSV")
	}
	return nil
}

// notText tells whether decoded text is no text at all: many control characters.
func notText(text string) bool {
	head := text[:min(len(text), 1<<16)]
	control, total := 0, 0
	for _, r := range head {
		total++
		if r < ' ' && r != '\t' && r != '\n' && r != '\r' && r != '\f' || r == 0x7f || r == utf8.RuneError {
			control++
		}
	}
	return control*10 > total
}
