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
	"seamtally/tables"
)

// both is what a list's file holds: joints, the parts that they join, or either.
type both struct {
	joints *joint.List
	cut    *parts.List // nil: there is no cut list
}

// understand reads the joints of a list and the cut list beside them. A file in
// which the cut list is the only list is worked for what follows from parts alone.
func (j *Job) understand(src *list.Source, name string, shop *rates.Shop, set *tables.Set) (both, error) {
	reader := parts.NewReader(set)
	cutFrom, cutOpt, found, err := j.cutList(src, name, reader)
	if err != nil {
		return both{}, err
	}
	cutOpt.Inches, cutOpt.Material = j.Inches, shop.DefaultMaterial
	own := found && cutFrom == src
	joints, err := j.joints(src, shop, set)
	switch {
	case own && (err != nil || strings.EqualFold(joints.Sheet, cutOpt.Sheet)):
		if j.Parts == "" || len(src.Sheets) == 1 {
			cut, err := reader.Understand(src, cutOpt)
			if err != nil {
				return both{}, err
			}
			return both{joints: &joint.List{File: cut.File, Sheet: cut.Sheet, SHA256: cut.SHA256}, cut: cut}, nil
		}
		if err == nil {
			err = Usagef("--parts %q names the sheet with the joints: name the sheet of the cut list, or leave --parts away", j.Parts)
		}
		return both{}, err
	case err != nil || !found:
		return both{joints: joints}, err
	}
	cut, err := reader.Understand(cutFrom, cutOpt)
	if err == nil && j.Parts == "" && !meant(cut, joints) {
		return both{joints: joints}, nil
	}
	if err != nil {
		return both{}, err
	}
	joints.Joints = parts.NewIndex(cut).Lend(joints.Joints)
	return both{joints, cut}, nil
}

// meant tells whether a sheet that reads like a cut list and that nobody named is
// one: a joint names one of its parts, or it names a grade, or its name says so. A
// sheet of paint areas, say, has sections and lengths too.
func meant(cut *parts.List, joints *joint.List) bool {
	for _, c := range cut.Columns {
		if c.Key == "material" || c.Key == "standard" {
			return true
		}
	}
	name := strings.ToLower(cut.Sheet)
	for _, word := range cutWords {
		if strings.Contains(name, word) {
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

// cutWords are the words for a cut list in the names of sheets, in the languages
// whose headers are known.
var cutWords = []string{"cut", "part", "piece", "saw", "bom", "teil", "stückl", "zuschnitt", "säge", "piez", "despiece", "corte", "débit", "pièce",
	"pezzi", "distinta", "peça", "detal", "element", "cięci", "детал", "розкр", "специф", "раскр", "díl", "dil", "řez"}

func (j *Job) joints(src *list.Source, shop *rates.Shop, set *tables.Set) (*joint.List, error) {
	return joint.Understand(src, joint.Options{Sheet: j.Sheet, Inches: j.Inches, SizeMeans: shop.SizeMeans, MissingSize: shop.MissingSize, Material: shop.DefaultMaterial}, set)
}

// cutList finds the cut list: the sheet or the file that --parts names, else a sheet
// of the list's own file that reads like one.
func (j *Job) cutList(src *list.Source, name string, reader *parts.Reader) (from *list.Source, opt parts.Options, ok bool, err error) {
	if j.Parts == "" {
		sheet, ok := reader.Find(src)
		if !ok || j.Sheet != "" && strings.EqualFold(sheet.Name, j.Sheet) && len(src.Sheets) > 1 {
			return nil, opt, false, nil
		}
		opt.Sheet = sheet.Name
		return src, opt, true, nil
	}
	for i := range src.Sheets {
		if strings.EqualFold(src.Sheets[i].Name, j.Parts) {
			opt.Sheet = src.Sheets[i].Name
			return src, opt, true, nil
		}
	}
	if _, err := os.Stat(j.Parts); err != nil {
		return nil, opt, false, Usagef("--parts %q is neither a sheet of %s%s nor a file that can be read", j.Parts, filepath.Base(name), sheetsOf(src))
	}
	data, err := readFile("cut list", j.Parts)
	if err != nil {
		return nil, opt, false, err
	}
	from, _, err = list.Read(filepath.Base(j.Parts), data)
	return from, opt, err == nil, fullName(err, j.Parts)
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

// told are the findings of a cut list: of reading it, and of comparing it.
func (b both) told(compared []finding.Problem) []finding.Problem {
	if b.cut == nil {
		return nil
	}
	return append(append([]finding.Problem{}, b.cut.Problems...), compared...)
}
