package tables

import "bytes"

// emptyRow returns the line of the first row that has cells and nothing in any of them; 0
// where there is none. A line without a comma is no row: text files may end in such lines.
func emptyRow(text []byte) int {
	number := 0
	for line := range bytes.Lines(text) {
		number++
		if bytes.ContainsRune(line, ',') && len(bytes.Trim(line, ", \t\r\n\"")) == 0 {
			return number
		}
	}
	return 0
}
