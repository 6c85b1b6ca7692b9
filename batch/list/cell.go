package list

import (
	"bytes"
	"math"
	"strconv"
	"time"

	"seamtally/batch/finding"
)

// cell reads the <c> element the scanner stands on. Its text goes to the row's
// bytes; spans gets one entry for each cell that is not blank.
func (r *sheetReader) cell(col int) (Cell, error) {
	c := Cell{Col: col}
	kind := string(r.attr("t"))
	style := 0
	if raw := r.attr("s"); raw != nil {
		style, _ = strconv.Atoi(string(raw))
	}
	r.value, r.inline = r.value[:0], ""
	hasValue, err := r.cellBody(&c)
	if err != nil {
		return c, err
	}
	s, err := r.content(&c, kind, r.lookOf(style), hasValue)
	if err == nil && c.Kind != Blank {
		r.spans = append(r.spans, s)
	}
	return c, err
}

func (r *sheetReader) lookOf(style int) look {
	if style >= 0 && style < len(r.styles) {
		return r.styles[style]
	}
	return general
}

// cellBody gathers value, inline text and the mark of a formula up to </c>.
func (r *sheetReader) cellBody(c *Cell) (hasValue bool, err error) {
	depth := r.depth()
	inValue := false
	for {
		tok, err := r.next()
		if err != nil {
			return hasValue, err
		}
		switch tok {
		case tokStart:
			switch string(r.name) {
			case "v":
				inValue, hasValue = true, true
			case "f":
				c.Formula = true
			case "is":
				if r.inline, err = richText(r.scanner); err != nil {
					return hasValue, err
				}
			}
		case tokText:
			if inValue {
				r.value = append(r.value, r.text...)
			}
		case tokEnd:
			if r.depth() < depth {
				return hasValue, nil
			}
			inValue = false
		}
	}
}

// content settles kind, value and text from the cell's type.
func (r *sheetReader) content(c *Cell, kind string, l look, hasValue bool) (span, error) {
	if c.Formula && !hasValue && kind != "inlineStr" {
		c.Kind = NoValue
		return span{}, nil
	}
	switch kind {
	case "s":
		if len(r.value) == 0 {
			return span{}, nil
		}
		i, err := strconv.Atoi(string(r.value))
		if err != nil || i < 0 || i >= len(r.strings) {
			return span{}, damaged("the text of cell %s%d is missing from the file (for whoever mends it: number %q of %d texts)", finding.ColumnName(c.Col), r.last, r.value, len(r.strings))
		}
		return r.asText(c, r.strings[i]), nil
	case "inlineStr":
		return r.asText(c, r.inline), nil
	case "str":
		return r.asText(c, unescapeX(string(r.value))), nil
	case "b":
		c.Kind = Bool
		if len(r.value) > 0 && (r.value[0] == '1' || r.value[0] == 't') {
			c.Value = 1
			return span{shared: "TRUE"}, nil
		}
		return span{shared: "FALSE"}, nil
	case "e":
		c.Kind = CellError
		return span{shared: string(r.value)}, nil
	case "d":
		c.Kind = Date
		return span{shared: string(r.value)}, nil
	}
	return r.number(c, l)
}

func (r *sheetReader) asText(c *Cell, text string) span {
	if text = tidy(text); text != "" {
		c.Kind = Text
	}
	return span{shared: text}
}

func (r *sheetReader) number(c *Cell, l look) (span, error) {
	raw := bytes.TrimSpace(r.value)
	if len(raw) == 0 {
		if c.Formula {
			c.Kind = NoValue
		}
		return span{}, nil
	}
	value, err := strconv.ParseFloat(string(raw), 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		c.Kind = CellError // what some programs write for a figure beyond all numbers
		return span{shared: string(raw)}, nil
	}
	c.Kind, c.Value, c.Percent = Number, value, l.percent
	text := ""
	switch {
	case l.date:
		c.Kind = Date
		text = dateText(value, r.src.Date1904)
	default:
		text = l.show(value, raw)
	}
	from := len(r.texts)
	r.texts = append(r.texts, text...)
	return span{from: from, to: len(r.texts)}, nil
}

// dateText writes a date serial as YYYY-MM-DD, or the time of day below one day.
func dateText(serial float64, from1904 bool) string {
	if serial < 0 || serial > 2958466 {
		return strconv.FormatFloat(serial, 'f', -1, 64)
	}
	day := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	if from1904 {
		day = time.Date(1904, 1, 1, 0, 0, 0, 0, time.UTC)
	} else if serial < 60 {
		day = day.AddDate(0, 0, 1) // the serials count a 29 February 1900 that never was
	}
	whole, part := math.Modf(serial)
	at := day.AddDate(0, 0, int(whole)).Add(time.Duration(math.Round(part*86400)) * time.Second)
	switch {
	case whole == 0 && part > 0 && !from1904:
		return at.Format("15:04:05")
	case part > 0:
		return at.Format("2006-01-02 15:04:05")
	}
	return at.Format("2006-01-02")
}
