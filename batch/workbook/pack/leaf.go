package pack

import (
	"archive/zip"
	"strconv"
	"strings"
)

// Leaf is one of the user's sheets, opened for annotation.
type Leaf struct {
	u      *User
	file   *zip.File
	listed *node // the sheet as the workbook lists it
	shape  Shape
}

// Leaf opens the sheet of that name and looks at it once from end to end. The error
// is a *Strange where the sheet cannot be annotated.
func (u *User) Leaf(sheet string) (*Leaf, error) {
	l, err := u.findLeaf(sheet)
	if err != nil {
		return nil, err
	}
	l.shape, err = l.measure()
	return l, err
}

func (u *User) findLeaf(sheet string) (*Leaf, error) {
	for _, s := range u.book.root.child("sheets").all("sheet") {
		if s.attr("name") != sheet {
			continue
		}
		for _, r := range u.bookRels.root.all("Relationship") {
			if r.attr("Id") != s.attr("id") || !strings.HasSuffix(r.attr("Type"), "/worksheet") {
				continue
			}
			if f := u.files[clean(resolve(u.bookName(), r.attr("Target")))]; f != nil {
				return &Leaf{u: u, file: f, listed: s}, nil
			}
		}
	}
	return nil, strange("the sheet %q is not found in the package", sheet)
}

// Shape returns what the sheet looks like.
func (l *Leaf) Shape() Shape { return l.shape }

// at is the place of the sheet among the workbook's sheets.
func (l *Leaf) at() int {
	for i, s := range l.u.book.root.child("sheets").all("sheet") {
		if s == l.listed {
			return i
		}
	}
	return 0
}

// hasLocal tells whether the sheet has a name of its own, such as a print area.
func (l *Leaf) hasLocal(name string) bool {
	names := l.u.book.root.child("definedNames")
	if names == nil {
		return false
	}
	for _, n := range names.all("definedName") {
		if strings.EqualFold(n.attr("name"), name) && n.attr("localSheetId") == strconv.Itoa(l.at()) {
			return true
		}
	}
	return false
}

// printsItself tells whether the user has set anything about the print of the sheet.
func (l *Leaf) printsItself() bool { return l.shape.Printed || l.namesPrint() }

// namesPrint tells whether the user has named what is printed of the sheet.
func (l *Leaf) namesPrint() bool {
	return l.hasLocal("_xlnm.Print_Area") || l.hasLocal("_xlnm.Print_Titles")
}
