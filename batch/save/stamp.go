package save

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"iter"
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
	out := make([]byte, 0, len(text)+bytes.Count(text, []byte{'\n'})+len(csvColumn)+hashLen)
	i := -1
	for record := range csvRecords(text) {
		body, end := splitEnd(record)
		i++
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
	var rest []byte
	stamp, i := "", -1
	for record := range csvRecords(text) {
		i++
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
	switch i {
	case -1:
		return Foreign
	case 0:
		return Own
	}
	return match(stamp, rest)
}

// csvRecords yields the text in records, each up to the line end that stands outside
// quotes and with it.
func csvRecords(text []byte) iter.Seq[[]byte] {
	return func(yield func([]byte) bool) {
		for start := 0; start < len(text); {
			end := recordEnd(text, start)
			if !yield(text[start:end]) {
				return
			}
			start = end
		}
	}
}

// recordEnd is where the record that begins at start ends.
func recordEnd(text []byte, start int) int {
	end, quotes := start, 0
	for {
		n := bytes.IndexByte(text[end:], '\n')
		if n < 0 {
			return len(text)
		}
		quotes += bytes.Count(text[end:end+n], []byte{'"'})
		end += n + 1
		if quotes%2 == 0 {
			return end
		}
	}
}

func splitEnd(record []byte) (body, end []byte) {
	body = bytes.TrimRight(record, "\r\n")
	return body, record[len(body):]
}

// hashLen is the length of a stamp: 64 bits tell any change that is not an attack.
const hashLen = 16

func shortHash(data []byte) string {
	sum := sha256.New()
	sum.Write([]byte("seamtally output\n"))
	sum.Write(data)
	return hex.EncodeToString(sum.Sum(nil))[:hashLen]
}

func match(stamp string, rest []byte) Owner {
	if stamp == shortHash(rest) {
		return Own
	}
	return Changed
}

func join(pieces ...[]byte) []byte { return bytes.Join(pieces, nil) }
