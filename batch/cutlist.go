package batch

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/rates"
	"seamtally/batch/workbook"
	"seamtally/tables"
)

// both is what a list's file holds: joints, the parts that they join, or either.
type both struct {
	joints *joint.List
	cut    *parts.List // nil: there is no cut list
	// other is the file of the cut list where it is a workbook of its own, so that it
	// can be given back as well; else nil.
	other *list.Source
	// whole is that file with what was typed beside the parts, where it is a workbook of
	// ours; nil where the cut list stands in the list's own file.
	whole *list.Source
}

// cutFile is where a cut list may stand.
type cutFile struct {
	from     *list.Source // without anything of ours
	whole    *list.Source // as it was read; nil: the list's own file
	sheets   []string     // that read like one
	problems []finding.Problem
}

// understand reads the joints of a list and the cut list beside them. A file in
// which the cut list is the only list is worked for what follows from parts alone.
func (j *Job) understand(src *list.Source, name string, shop *rates.Shop, set *tables.Set) (both, error) {
	reader := parts.NewReader(set)
	file, err := j.cutSheets(src, name, reader)
	if err != nil {
		return both{}, err
	}
	from, sheets := file.from, file.sheets
	opt := parts.Options{Inches: j.Inches, Material: shop.DefaultMaterial}
	var beside []string
	if from == src {
		beside = sheets
	}
	joints, err := j.joints(src, beside, shop, set)
	if own, ok := j.ownList(src, from, sheets, joints, err); ok && (j.Sheet == "" || err == nil) {
		opt.Sheet = own
		cut, wrong := reader.Understand(src, opt)
		if wrong != nil && err != nil && j.Parts == "" {
			return both{joints: joints}, err // It is no cut list either: a list is joints before it is parts.
		}
		if wrong != nil {
			return both{}, wrong
		}
		if j.Parts == "" && len(cut.Parts) == 0 && err == nil && len(joints.Joints) > 0 {
			return both{joints: joints}, nil // "Size" heads sections too, but 1/4 in is none: no row is a part
		}
		return both{joints: &joint.List{File: cut.File, Sheet: cut.Sheet, SHA256: cut.SHA256}, cut: cut}, nil
	}
	if err != nil {
		return both{joints: joints}, err
	}
	for _, sheet := range sheets {
		if from == src && strings.EqualFold(sheet, joints.Sheet) {
			return both{}, Usagef("--parts %q names the sheet with the joints: name the sheet of the cut list, or leave --parts away", j.Parts)
		}
		opt.Sheet = sheet
		cut, err := reader.Understand(from, opt)
		if j.Parts == "" && (err != nil || !meant(cut, joints, set)) {
			continue
		}
		if err != nil {
			return both{}, err
		}
		cut.Problems = append(file.problems, cut.Problems...)
		joints.Joints = parts.NewIndex(cut).Lend(joints.Joints)
		read := both{joints: joints, cut: cut, whole: file.whole}
		if from != src && from.Format != list.CSV {
			read.other = from
		}
		return read, nil
	}
	return both{joints: joints}, nil
}

// ownList tells whether the file's list is a cut list and nothing else, and on which
// sheet: the sheet that reads best as joints is one, or none reads as joints.
func (j *Job) ownList(src, from *list.Source, sheets []string, joints *joint.List, err error) (sheet string, ok bool) {
	if from != src || len(sheets) == 0 {
		return "", false
	}
	for _, s := range sheets {
		if err == nil && strings.EqualFold(s, joints.Sheet) {
			return s, j.Parts == "" || len(src.Sheets) == 1
		}
	}
	return sheets[0], err != nil
}

// meant tells whether a sheet that reads like a cut list and that nobody named is
// one: a joint names one of its parts, or it names a grade, or its name says so. A
// sheet of paint areas, say, has sections and lengths too.
func meant(cut *parts.List, joints *joint.List, set *tables.Set) bool {
	for _, c := range cut.Columns {
		if c.Key == "material" || c.Key == "standard" {
			return true
		}
	}
	name := strings.ToLower(cut.Sheet)
	for _, word := range set.Words {
		if word.Use == cutSheetWord && strings.Contains(name, strings.ToLower(word.Spelling)) {
			return true
		}
	}
	index := parts.NewIndex(cut)
	for i := range joints.Joints {
		p := &joints.Joints[i]
		for _, mark := range []string{p.Part1, p.Part2} {
			if _, ok := index.Find(mark, p.Assembly); ok {
				return true
			}
		}
	}
	return false
}

// cutSheetWord is the use, in the table of words, of those that name a cut list where
// they stand in the name of a sheet.
const cutSheetWord = "cutsheet"

// fileName is what the file of a cut list is called where its places are named: with
// its folder where the list has the same name.
func fileName(cut, of string) string {
	base := filepath.Base(cut)
	if !strings.EqualFold(base, filepath.Base(of)) {
		return base
	}
	full, err := filepath.Abs(cut)
	if err != nil {
		full = cut
	}
	return filepath.Base(filepath.Dir(full)) + "/" + base
}

// joints reads the joints of a file; beside are its sheets that read like a cut list.
func (j *Job) joints(src *list.Source, beside []string, shop *rates.Shop, set *tables.Set) (*joint.List, error) {
	return joint.Understand(src, joint.Options{Sheet: j.Sheet, CutSheets: beside, Inches: j.Inches, SizeMeans: shop.SizeMeans, MissingSize: shop.MissingSize, Material: shop.DefaultMaterial}, set)
}

// cutSheets finds the cut list: the sheet or the file that --parts names, else the
// sheets of the list's own file that read like one. The problems are those of
// reading the other file.
func (j *Job) cutSheets(src *list.Source, name string, reader *parts.Reader) (cutFile, error) {
	if j.Parts == "" {
		var sheets []string
		for _, sheet := range reader.Sheets(src) {
			if j.Sheet == "" || !strings.EqualFold(sheet, j.Sheet) || len(src.Sheets) == 1 {
				sheets = append(sheets, sheet)
			}
		}
		return cutFile{from: src, sheets: sheets}, nil
	}
	for i := range src.Sheets {
		if strings.EqualFold(src.Sheets[i].Name, j.Parts) {
			return cutFile{from: src, sheets: []string{src.Sheets[i].Name}}, nil
		}
	}
	if _, err := os.Stat(j.Parts); err != nil {
		return cutFile{}, Usagef("--parts %q is neither a sheet of %s%s nor a file that can be read; check the name and the folder", j.Parts, filepath.Base(name), sheetsOf(src))
	}
	data, err := readFile("cut list", j.Parts)
	if err != nil {
		return cutFile{}, err
	}
	whole, problems, err := list.Read(fileName(j.Parts, name), data)
	if err != nil {
		return cutFile{}, fullName(err, j.Parts)
	}
	from, own := workbook.Undress(whole)
	return cutFile{from: from, whole: whole, sheets: []string{""}, problems: append(problems, own...)}, nil
}

// sheetsOf names the sheets of a file, for a person who looks for one.
func sheetsOf(src *list.Source) string {
	if src.Format == list.CSV || len(src.Sheets) == 0 {
		return ""
	}
	var names []string
	for i := range src.Sheets {
		names = append(names, fmt.Sprintf("%q", src.Sheets[i].Name))
	}
	return " (it has " + strings.Join(names, ", ") + ")"
}
