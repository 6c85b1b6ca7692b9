package save

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
)

// Owner says whose a file is.
type Owner int

// The owners.
const (
	Foreign Owner = iota // nothing in it says that this tool wrote it
	Changed              // this tool wrote it, somebody changed it since
	Own                  // as this tool wrote it
)

// Judge tells the owner of a file from its content.
type Judge func(data []byte) Owner

// A PDF carries its stamp as a comment in front of the last "startxref": no
// offset in the file moves, and no reader looks at it.
const (
	pdfMark  = "%seamtally "
	pdfStart = "\nstartxref"
)

// StampPDF returns the PDF with the hash of its other bytes kept inside.
func StampPDF(pdf []byte) []byte {
	at := bytes.LastIndex(pdf, []byte(pdfStart))
	if at < 0 {
		return pdf
	}
	line := "\n" + pdfMark + shortHash(pdf)
	return join(pdf[:at], []byte(line), pdf[at:])
}

// JudgePDF tells the owner of a PDF.
func JudgePDF(pdf []byte) Owner {
	at := bytes.LastIndex(pdf, []byte("\n"+pdfMark))
	if at < 0 {
		return Foreign
	}
	from := at + 1 + len(pdfMark)
	if len(pdf) < from+hashLen {
		return Changed
	}
	return match(string(pdf[from:from+hashLen]), join(pdf[:at], pdf[from+hashLen:]))
}

// A results CSV carries its stamp in its last column, in the first row under
// the header: one file, no companion, and a change of one joint changes one
// line and this cell.
const csvColumn = ",stamp"

// StampCSV returns the CSV with one more column that holds the hash of the rest.
func StampCSV(text []byte) []byte {
	stamp := shortHash(text)
	out := make([]byte, 0, len(text)+len(text)/8)
	for i, record := range csvRecords(text) {
		body, end := splitEnd(record)
		out = append(out, body...)
		switch i {
		case 0:
			out = append(out, csvColumn...)
		case 1:
			out = append(out, ","+stamp...)
		default:
			out = append(out, ',')
		}
		out = append(out, end...)
	}
	return out
}

// JudgeCSV tells the owner of a results CSV. A header without a single row holds
// nothing that could be lost.
func JudgeCSV(text []byte) Owner {
	records := csvRecords(text)
	if len(records) == 0 {
		return Foreign
	}
	var rest []byte
	stamp := ""
	for i, record := range records {
		body, end := splitEnd(record)
		last := bytes.LastIndexByte(body, ',')
		if last < 0 {
			return Foreign
		}
		switch value := string(body[last:]); {
		case i == 0 && value != csvColumn:
			return Foreign
		case i == 1:
			stamp = value[1:]
		case i > 1 && value != ",":
			return Changed
		}
		rest = append(append(rest, body[:last]...), end...)
	}
	if len(records) == 1 {
		return Own
	}
	return match(stamp, rest)
}

// csvRecords cuts the text behind every line end that stands outside quotes.
func csvRecords(text []byte) [][]byte {
	var out [][]byte
	start, quoted := 0, false
	for i, c := range text {
		switch {
		case c == '"':
			quoted = !quoted
		case c == '\n' && !quoted:
			out = append(out, text[start:i+1])
			start = i + 1
		}
	}
	if start < len(text) {
		out = append(out, text[start:])
	}
	return out
}

func splitEnd(record []byte) (body, end []byte) {
	body = bytes.TrimRight(record, "\r\n")
	return body, record[len(body):]
}

// hashLen is the length of a stamp: 64 bits tell any change that is not an attack.
const hashLen = 16

func shortHash(data []byte) string {
	sum := sha256.Sum256(append([]byte("seamtally output\n"), data...))
	return hex.EncodeToString(sum[:])[:hashLen]
}

func match(stamp string, rest []byte) Owner {
	if stamp == shortHash(rest) {
		return Own
	}
	return Changed
}

func join(pieces ...[]byte) []byte { return bytes.Join(pieces, nil) }
