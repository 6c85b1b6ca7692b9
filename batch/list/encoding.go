package list

import (
	"bytes"
	"encoding/binary"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// decode turns the bytes of a text file into UTF-8 and names the encoding.
// guessed is true where the bytes leave a choice.
func decode(data []byte) (text, encoding string, guessed bool) {
	switch {
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		return string(data[3:]), "UTF-8", !utf8.Valid(data[3:])
	case bytes.HasPrefix(data, []byte("\xff\xfe\x00\x00")):
		return utf32(data[4:], binary.LittleEndian), "UTF-32LE", false
	case bytes.HasPrefix(data, []byte("\x00\x00\xfe\xff")):
		return utf32(data[4:], binary.BigEndian), "UTF-32BE", false
	case bytes.HasPrefix(data, []byte("\xff\xfe")):
		return wide(data[2:], binary.LittleEndian), "UTF-16LE", false
	case bytes.HasPrefix(data, []byte("\xfe\xff")):
		return wide(data[2:], binary.BigEndian), "UTF-16BE", false
	}
	if order, name := bareWide(data); order != nil {
		if name == "UTF-32LE" || name == "UTF-32BE" {
			return utf32(data, order), name, true
		}
		return wide(data, order), name, true
	}
	if utf8.Valid(data) {
		return string(data), "UTF-8", false
	}
	return codePage(data)
}

// bareWide recognises UTF-16 and UTF-32 without a byte order mark: text in any
// European language has a zero in nearly every second byte of its line ends,
// digits and delimiters.
func bareWide(data []byte) (binary.ByteOrder, string) {
	if len(data) < 4 || len(data)%2 != 0 {
		return nil, ""
	}
	head := data[:min(len(data), 4096)]
	var zeros [4]int
	for i, b := range head {
		if b == 0 {
			zeros[i%4]++
		}
	}
	quarter := len(head) / 4
	few, many := quarter/20, quarter/4
	switch {
	case len(data)%4 == 0 && zeros[1] > many && zeros[2] > quarter*9/10 && zeros[3] > quarter*9/10 && zeros[0] <= few:
		return binary.LittleEndian, "UTF-32LE"
	case len(data)%4 == 0 && zeros[2] > many && zeros[0] > quarter*9/10 && zeros[1] > quarter*9/10 && zeros[3] <= few:
		return binary.BigEndian, "UTF-32BE"
	case zeros[1]+zeros[3] > 2*many && zeros[0]+zeros[2] <= 2*few:
		return binary.LittleEndian, "UTF-16LE"
	case zeros[0]+zeros[2] > 2*many && zeros[1]+zeros[3] <= 2*few:
		return binary.BigEndian, "UTF-16BE"
	}
	return nil, ""
}

func wide(data []byte, order binary.ByteOrder) string {
	units := make([]uint16, 0, len(data)/2)
	for i := 0; i+1 < len(data); i += 2 {
		units = append(units, order.Uint16(data[i:]))
	}
	return string(utf16.Decode(units))
}

func utf32(data []byte, order binary.ByteOrder) string {
	var out []byte
	for i := 0; i+3 < len(data); i += 4 {
		r := order.Uint32(data[i:])
		if r > utf8.MaxRune {
			r = utf8.RuneError
		}
		out = utf8.AppendRune(out, rune(r))
	}
	return string(out)
}

// codePage guesses between the three Windows pages of Europe. Cyrillic words are
// runs of high bytes; in the Latin pages a high byte stands alone between plain
// letters. Central European is told by letters that Western Europe has as signs.
func codePage(data []byte) (text, encoding string, guessed bool) {
	high, paired, central := 0, 0, 0
	for i, b := range data {
		if b < 0x80 {
			continue
		}
		high++
		before, after := byte(' '), byte(' ')
		if i > 0 {
			before = data[i-1]
		}
		if i+1 < len(data) {
			after = data[i+1]
		}
		if before >= 0xc0 || after >= 0xc0 {
			paired++
		}
		if centralLetter[b] && letter(after) && (letter(before) || before == ' ' || i == 0) {
			central++
		}
		if centralLetter[b] && letter(before) && b != 0xb3 && b != 0xb9 {
			central++
		}
	}
	page, name := charmap.Windows1252, "Windows-1252"
	switch {
	case paired*2 > high:
		page, name = charmap.Windows1251, "Windows-1251"
	case central > 0:
		page, name = charmap.Windows1250, "Windows-1250"
	}
	out, err := page.NewDecoder().Bytes(data)
	if err != nil {
		return string(data), name, true
	}
	return string(out), name, true
}

// centralLetter holds the bytes that are letters in Windows-1250 (ą ł ż ś ź Ł Ą
// Ś Ż Ź ť ž Ť Ž š Š ľ Ľ) and signs in Windows-1252, š and ž aside.
var centralLetter = func() (set [256]bool) {
	for _, b := range []byte{0xb9, 0xb3, 0xbf, 0x9c, 0x9f, 0xa3, 0xa5, 0x8c, 0xaf, 0x8f, 0x9d, 0x8d, 0xbe, 0xbc} {
		set[b] = true
	}
	return set
}()

func letter(b byte) bool {
	return b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= 0xc0
}
