package measure

import "regexp"

// IsDate tells whether a text is a date that a spreadsheet wrote in place of a fraction or
// of a range: 1/4 and 3-12 become days of a month.
func IsDate(text string) bool { return reDateText.MatchString(Plain(text)) }

var reDateText = regexp.MustCompile(`(?i)^(\d{1,2}[-. /](jan|feb|mar|mär|apr|may|mai|maj|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-zä]*\.?([-. /]\d{2,4})?|(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[-. /]\d{1,4}|\d{4}-\d{2}-\d{2}( .*)?|\d{1,2}[./]\d{1,2}[./]\d{4})$`)
