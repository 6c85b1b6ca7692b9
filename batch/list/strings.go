package list

import (
	"strconv"
	"strings"
)

// maxStrings caps the shared strings of a workbook.
const maxStrings = 8000000

// readStrings reads the shared strings; a workbook without them has none.
func (p *pkg) readStrings(part string) ([]string, error) {
	if part == "" || p.parts[partName(part)] == nil {
		if part = "xl/sharedStrings.xml"; p.parts[partName(part)] == nil {
			return nil, nil
		}
	}
	s, closer, err := p.scan(part)
	if err != nil {
		return nil, err
	}
	defer closer.Close()
	var all []string
	for {
		tok, err := s.next()
		if err != nil {
			return nil, inPart(err, part)
		}
		if tok == tokEOF {
			return all, nil
		}
		if tok != tokStart || string(s.name) != "si" {
			continue
		}
		text, err := richText(s)
		if err != nil {
			return nil, inPart(err, part)
		}
		if all = append(all, text); len(all) > maxStrings {
			return nil, refuse("save the list alone in a new workbook", "the workbook has more than %d texts", maxStrings)
		}
	}
}

// richText gathers the <t> texts of the element the scanner stands in, leaving
// out phonetic readings, up to that element's end.
func richText(s *scanner) (string, error) {
	depth := s.depth()
	var text []byte
	phonetic, inText := 0, false
	for {
		tok, err := s.next()
		if err != nil {
			return "", err
		}
		switch tok {
		case tokEOF:
			return "", s.fault("the text is cut off")
		case tokStart:
			switch string(s.name) {
			case "rPh":
				phonetic++
			case "t":
				inText = true
			}
		case tokText:
			if inText && phonetic == 0 {
				text = append(text, s.text...)
			}
		case tokEnd:
			switch {
			case s.depth() < depth:
				return unescapeX(string(text)), nil
			case string(s.name) == "rPh":
				phonetic--
			case string(s.name) == "t":
				inText = false
			}
		}
	}
}

// unescapeX resolves the _x000D_ form in which spreadsheets store characters
// that XML cannot hold.
func unescapeX(s string) string {
	if !strings.Contains(s, "_x") {
		return s
	}
	var out strings.Builder
	for {
		i := strings.Index(s, "_x")
		if i < 0 || i+7 > len(s) {
			out.WriteString(s)
			return out.String()
		}
		code, err := strconv.ParseUint(s[i+2:i+6], 16, 32)
		if err != nil || s[i+6] != '_' || code == 0 {
			out.WriteString(s[:i+2])
			s = s[i+2:]
			continue
		}
		out.WriteString(s[:i])
		out.WriteRune(rune(code))
		s = s[i+7:]
	}
}
