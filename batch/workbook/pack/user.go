package pack

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"

	"github.com/klauspost/compress/flate"
)

// Strange says why a workbook is not annotated: it is read well enough, but we
// could not promise to leave everything in it as it was.
type Strange struct{ Why string }

func (s *Strange) Error() string { return s.Why }

func strange(format string, args ...any) error {
	return &Strange{Why: fmt.Sprintf(format, args...)}
}

const (
	mainNS   = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
	relNS    = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	relTypes = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/"
	strictNS = "purl.oclc.org/ooxml"
)

// part is a small part of the user's package, parsed for surgery.
type part struct {
	file *zip.File
	data []byte
	root *node
}

// User is the user's package, opened for annotation. Nothing of it is changed:
// what we add stands in edits until the package is written.
type User struct {
	zip      *zip.Reader
	files    map[string]*zip.File // by clean name in lower case
	types    *part
	rootRels *part
	book     *part
	bookRels *part
	styles   *part // nil where the package has none
}

// clean turns a part name, as zip members and relationships spell it, into the
// one form under which it is looked up.
func clean(name string) string {
	name = strings.ReplaceAll(name, `\`, "/")
	return strings.ToLower(strings.TrimPrefix(path.Clean("/"+name), "/"))
}

// OpenUser opens the user's workbook. The error is a *Strange where the file cannot
// be annotated.
func OpenUser(data []byte) (*User, error) { return openBook(data) }

// openBook opens the package and its small parts.
func openBook(data []byte) (*User, error) {
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, strange("the package cannot be opened: %v", err)
	}
	zr.RegisterDecompressor(zip.Deflate, flate.NewReader)
	u := &User{zip: zr, files: map[string]*zip.File{}}
	for _, f := range zr.File {
		if strings.HasSuffix(f.Name, "/") {
			continue
		}
		if u.files[clean(f.Name)] != nil {
			return nil, strange("two parts of the package are both named %q", f.Name)
		}
		u.files[clean(f.Name)] = f
	}
	return u, u.openParts()
}

func (u *User) openParts() error {
	var err error
	if u.types, err = u.open("[Content_Types].xml"); err != nil {
		return err
	}
	if u.rootRels, err = u.open("_rels/.rels"); err != nil {
		return err
	}
	if u.book, err = u.open(u.bookName()); err != nil {
		return err
	}
	if strings.Contains(string(u.book.data), strictNS) {
		return strange("the workbook is of the strict variant of the format")
	}
	if u.book.root.name != "workbook" || u.book.root.child("sheets") == nil {
		return strange("the main part is a %s that lists no sheets", u.book.root.name)
	}
	if u.bookRels, err = u.open(relsOf(u.bookName())); err != nil {
		return err
	}
	if name := u.target(u.bookRels, u.bookName(), "styles"); name != "" && u.files[clean(name)] != nil {
		u.styles, err = u.open(name)
	}
	return err
}

// bookName is the name of the workbook part.
func (u *User) bookName() string { return u.target(u.rootRels, "", "officeDocument") }

// maxSmall bounds the parts that are read whole.
const maxSmall = 64 << 20

func (u *User) open(name string) (*part, error) {
	f := u.files[clean(name)]
	if f == nil {
		return nil, strange("the part %q is missing", name)
	}
	data, err := readSome(f, maxSmall)
	if err != nil {
		return nil, strange("the part %q cannot be unpacked or is too large", f.Name)
	}
	root, err := parse(data)
	if errors.Is(err, errTooMany) {
		return nil, strange("the part %q holds more than any spreadsheet program puts there", f.Name)
	}
	if err != nil {
		return nil, strange("the part %q is damaged: %s", f.Name, plainly(err))
	}
	return &part{file: f, data: data, root: root}, nil
}

func readSome(f *zip.File, limit int64) ([]byte, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, limit+1))
	if err == nil && int64(len(data)) > limit {
		err = errors.New("it is too large")
	}
	return data, err
}

// relsOf returns the name of the part that holds another part's relationships.
func relsOf(name string) string {
	dir, base := path.Split(strings.ReplaceAll(name, `\`, "/"))
	return dir + "_rels/" + base + ".rels"
}

// target returns the part that the first relationship of a type points to.
func (u *User) target(rels *part, owner, kind string) string {
	for _, r := range rels.root.all("Relationship") {
		if strings.HasSuffix(r.attr("Type"), "/relationships/"+kind) && r.attr("TargetMode") != "External" {
			return resolve(owner, r.attr("Target"))
		}
	}
	return ""
}

func resolve(owner, target string) string {
	target = strings.ReplaceAll(target, `\`, "/")
	if strings.HasPrefix(target, "/") {
		return path.Clean(target)[1:]
	}
	return path.Join(path.Dir(owner), target)
}

// SheetNames returns the names of all the user's sheets.
func (u *User) SheetNames() []string {
	var out []string
	for _, s := range u.book.root.child("sheets").all("sheet") {
		out = append(out, s.attr("name"))
	}
	return out
}

// DefinedNames returns the user's defined names.
func (u *User) DefinedNames() []string {
	var out []string
	if names := u.book.root.child("definedNames"); names != nil {
		for _, n := range names.all("definedName") {
			out = append(out, n.attr("name"))
		}
	}
	return out
}

// Signed tells whether a digital signature lies in the package: any change of
// the file breaks it.
func (u *User) Signed() bool {
	for name := range u.files {
		if strings.HasPrefix(name, "_xmlsignatures/") {
			return true
		}
	}
	return false
}

// Font is the name and size of the user's default font.
func (u *User) Font() (name string, size string) {
	if u.styles == nil {
		return "", ""
	}
	fonts := u.styles.root.child("fonts")
	if fonts == nil || len(fonts.kids) == 0 {
		return "", ""
	}
	for _, k := range fonts.kids[0].kids {
		switch k.name {
		case "name":
			name = k.attr("val")
		case "sz":
			size = k.attr("val")
		}
	}
	return name, size
}
