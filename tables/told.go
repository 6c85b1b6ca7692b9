package tables

import (
	"encoding/csv"
	"errors"
	"fmt"
	"strconv"
)

// told says what is wrong with a table that a person has edited: the line, the column,
// what stands there and what to do.
func told(where, name string, header []string, err error) error {
	return fmt.Errorf("%s: %s; correct it, or compare it with the table that `seamtally tables %s` prints", where, inWords(header, err), name)
}

func inWords(header []string, err error) string {
	var at *csv.ParseError
	if !errors.As(err, &at) {
		return err.Error()
	}
	place := fmt.Sprintf("line %d", at.Line)
	var number *strconv.NumError
	switch {
	case errors.As(at.Err, &number):
		column := fmt.Sprintf("column %d", at.Column)
		if at.Column >= 1 && at.Column <= len(header) {
			column = fmt.Sprintf("column %q", header[at.Column-1])
		}
		return fmt.Sprintf("%s, %s: %q is not a number that fits there; expected: digits with a point as decimal sign, such as 2.5", place, column, number.Num)
	case errors.Is(at.Err, csv.ErrFieldCount):
		return fmt.Sprintf("%s has more or fewer cells than the header has (a text with a comma in it needs quotation marks around it)", place)
	case errors.Is(at.Err, csv.ErrQuote), errors.Is(at.Err, csv.ErrBareQuote):
		return fmt.Sprintf("%s: a quotation mark stands where none may, or one is missing at the end of a cell", place)
	}
	return fmt.Sprintf("%s cannot be read as comma-separated values", place)
}
