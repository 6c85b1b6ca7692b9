package joint

import (
	"fmt"
	"slices"
	"strings"

	"seamtally/batch/list"
)

func inSheet(name string) string {
	if name == "" {
		return ""
	}
	return " on sheet " + name
}

// chooseSheet takes the sheet that was asked for, or the one whose header names
// most; hidden sheets only when asked for.
func (s *spellings) chooseSheet(src *list.Source, opt Options) (*list.Sheet, headerSpot, error) {
	var best *list.Sheet
	var spot headerSpot
	var names []string
	hidden := "" // a hidden sheet that reads like one
	for i := range src.Sheets {
		sheet := &src.Sheets[i]
		names = append(names, sheet.Name)
		if opt.Sheet == "" && s.dialect.welds && sheet.Hidden && hidden == "" && (opt.Skip == nil || !opt.Skip(sheet)) {
			if _, ok := s.findHeader(sheet); ok {
				hidden = sheet.Name
			}
		}
		if opt.Sheet != "" && !strings.EqualFold(sheet.Name, opt.Sheet) || opt.Sheet == "" && (sheet.Hidden || opt.Skip != nil && opt.Skip(sheet)) {
			continue
		}
		found, ok := s.findHeader(sheet)
		if opt.Sheet != "" && !ok {
			return nil, found, s.noHeader(src.File, "sheet "+sheet.Name)
		}
		if ok && (best == nil || found.score > spot.score) {
			best, spot = sheet, found
		}
	}
	switch {
	case best != nil:
		return best, spot, nil
	case opt.Sheet == "" && s.dialect.welds && slices.ContainsFunc(src.Sheets, holdsShopValues):
		return nil, spot, &list.Refusal{File: src.File, Text: "no header row of a " + s.dialect.list + " was found: this reads like a shop file",
			Hint: "give the joint list, and this file after --shop"}
	case opt.Sheet != "" && src.Format == list.CSV:
		return nil, spot, &list.Refusal{File: src.File, Text: "a text file has no sheets, and the sheet " + opt.Sheet + " was asked for", Hint: "leave out --sheet, or give the workbook"}
	case opt.Sheet != "":
		return nil, spot, &list.Refusal{File: src.File, Text: fmt.Sprintf("there is no sheet %q", opt.Sheet), Hint: "write one of these after --sheet: \"" + strings.Join(names, "\", \"") + "\""}
	case hidden != "":
		return nil, spot, &list.Refusal{File: src.File, Text: "the only " + s.dialect.list + " is on the hidden sheet \"" + hidden + "\", and hidden sheets are left aside", Hint: "show the sheet in your spreadsheet program and save, or name it after --sheet"}
	case len(names) > 1:
		return nil, spot, s.noHeader(src.File, "the sheets "+strings.Join(names, ", "))
	}
	return nil, spot, s.noHeader(src.File, "the list")
}

// holdsShopValues tells whether a sheet has the header of a shop file: people give one
// in place of the list, or a folder in which both stand.
func holdsShopValues(sheet list.Sheet) bool {
	for _, row := range sheet.Rows[:min(len(sheet.Rows), headerDepth)] {
		has := map[string]bool{}
		for _, text := range texts(row) {
			has[fold(text)] = true
		}
		if has["key"] && has["value"] {
			return true
		}
	}
	return false
}

func (s *spellings) noHeader(file, where string) error {
	return &list.Refusal{File: file, Text: "no header row of a " + s.dialect.list + " was found in " + where,
		Hint: s.dialect.hint}
}
