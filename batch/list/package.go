package list

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"maps"
	"path"
	"slices"
	"strings"

	"github.com/klauspost/compress/flate"
)

// Limits of a workbook's package.
const (
	maxUnpacked = 512 << 20
	maxParts    = 10000
)

// pkg is a workbook's zip package: parts by their tidied, lower-case names.
type pkg struct {
	parts map[string]*zip.File
	left  int64 // bytes that may still be unpacked
}

// openPackage opens the zip and refuses what is no .xlsx before reading a part.
func openPackage(data []byte) (*pkg, error) {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, refuse("ask for the file again; it was probably cut off on its way", "the file begins like a workbook but is damaged or cut off")
	}
	archive.RegisterDecompressor(zip.Deflate, func(r io.Reader) io.ReadCloser { return flate.NewReader(r) })
	if len(archive.File) > maxParts {
		return nil, refuse("save the list alone in a new workbook", "the workbook has more than %d parts", maxParts)
	}
	p := &pkg{parts: map[string]*zip.File{}, left: maxUnpacked}
	var total uint64
	for _, f := range archive.File {
		name := partName(f.Name)
		if strings.HasSuffix(name, "/") {
			continue
		}
		if slices.Contains(strings.Split(name, "/"), "..") {
			return nil, damaged("the name of its part %q leads out of it", f.Name)
		}
		if p.parts[name] != nil {
			return nil, damaged("its part %q stands in it twice", f.Name)
		}
		p.parts[name] = f
		total += f.UncompressedSize64
	}
	if total > maxUnpacked {
		return nil, refuse("save the list alone, without pictures, in a new workbook", "unpacked, the workbook is larger than the %d megabytes that are read", maxUnpacked>>20)
	}
	if err := p.refuseOthers(); err != nil {
		return nil, err
	}
	return p, p.refuseDoctypes()
}

// partName makes the names that different programs write comparable.
func partName(name string) string {
	return strings.ToLower(strings.TrimLeft(strings.ReplaceAll(name, `\`, "/"), "/"))
}

// refuseOthers names the other things that come as zip packages.
func (p *pkg) refuseOthers() error {
	if p.parts["mimetype"] != nil {
		if kind, err := p.bytes("mimetype"); err == nil && bytes.Contains(kind, []byte("opendocument")) {
			return refuse(saveAsXLSX, "the file is an OpenDocument file (.ods), not .xlsx")
		}
	}
	for name := range p.parts {
		if strings.HasSuffix(name, "workbook.bin") {
			return refuse(saveAsXLSX, "the file is a binary workbook (.xlsb)")
		}
	}
	switch {
	case p.parts["word/document.xml"] != nil:
		return refuse("copy the table into a spreadsheet and save it as .xlsx", "the file is a text document (.docx)")
	case p.parts["ppt/presentation.xml"] != nil:
		return refuse("copy the table into a spreadsheet and save it as .xlsx", "the file is a presentation (.pptx)")
	case p.parts["[content_types].xml"] == nil && p.parts["_rels/.rels"] == nil && p.parts["xl/workbook.xml"] == nil:
		return refuse("unpack it first with a program for archives and give the list inside, or ask for the list as .xlsx or CSV", "the file is a zip archive, not a workbook")
	}
	return nil
}

// refuseDoctypes looks at how every XML part begins, also those that are only passed
// on: a document type stands before the first element.
func (p *pkg) refuseDoctypes() error {
	defer func(left int64) { p.left = left }(p.left) // the beginnings are unpacked once more later
	for _, name := range slices.Sorted(maps.Keys(p.parts)) {
		if !slices.Contains([]string{".xml", ".rels", ".vml"}, path.Ext(name)) {
			continue
		}
		s, in, err := p.scan(name)
		if err != nil {
			continue // whoever needs the part says what is wrong with it
		}
		_, err = s.next()
		in.Close()
		var r *Refusal
		if errors.As(err, &r) && r.Text == doctype {
			return refuse(r.Hint, "%s (part %s)", r.Text, p.parts[name].Name)
		}
	}
	return nil
}

// open returns the content of a part as UTF-8.
func (p *pkg) open(name string) (io.ReadCloser, error) {
	f := p.parts[partName(name)]
	if f == nil {
		return nil, damaged("its part %q is missing", name)
	}
	if f.Flags&1 != 0 {
		return nil, refuse("remove the password and save it again", "the workbook is password-protected")
	}
	in, err := f.Open()
	if err != nil {
		return nil, readFault(err)
	}
	return &partReader{in: in, left: &p.left}, nil
}

// scan returns a scanner over a part, whatever Unicode form it is stored in.
func (p *pkg) scan(name string) (*scanner, io.Closer, error) {
	in, err := p.open(name)
	if err != nil {
		return nil, nil, err
	}
	var head [4]byte
	n, err := io.ReadFull(in, head[:])
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		in.Close()
		return nil, nil, readFault(err)
	}
	whole := io.MultiReader(bytes.NewReader(head[:n]), in)
	if order := wideOrder(head[:n]); order != nil {
		raw, err := io.ReadAll(whole)
		in.Close()
		if err != nil {
			return nil, nil, readFault(err)
		}
		text := strings.TrimPrefix(wide(raw, order), "\ufeff")
		return newScanner(strings.NewReader(text)), io.NopCloser(nil), nil
	}
	return newScanner(whole), in, nil
}

func wideOrder(head []byte) binary.ByteOrder {
	switch {
	case bytes.HasPrefix(head, []byte("\xff\xfe")), bytes.HasPrefix(head, []byte("<\x00")):
		return binary.LittleEndian
	case bytes.HasPrefix(head, []byte("\xfe\xff")), bytes.HasPrefix(head, []byte("\x00<")):
		return binary.BigEndian
	}
	return nil
}

// bytes reads a small part whole.
func (p *pkg) bytes(name string) ([]byte, error) {
	in, err := p.open(name)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	return io.ReadAll(io.LimitReader(in, maxToken))
}

// partReader counts what is unpacked: the sizes in the directory may lie.
type partReader struct {
	in   io.ReadCloser
	left *int64
}

func (r *partReader) Read(b []byte) (int, error) {
	n, err := r.in.Read(b)
	if *r.left -= int64(n); *r.left < 0 {
		return n, refuse("save the list alone, without pictures, in a new workbook", "unpacked, the workbook is larger than the %d megabytes that are read", maxUnpacked>>20)
	}
	return n, err
}

func (r *partReader) Close() error { return r.in.Close() }

// readFault turns a library's error into a refusal in plain words.
func readFault(err error) error {
	var r *Refusal
	if errors.As(err, &r) {
		return r
	}
	if errors.Is(err, zip.ErrAlgorithm) {
		return refuse("save it again from your spreadsheet program", "the workbook is packed with a method that is not read")
	}
	return damaged("a part of it cannot be unpacked")
}

// resolve returns the part that a relationship target names.
func resolve(from, target string) string {
	target = strings.ReplaceAll(target, `\`, "/")
	if strings.HasPrefix(target, "/") {
		return strings.TrimLeft(path.Clean(target), "/")
	}
	return strings.TrimLeft(path.Join("/", path.Dir(from), target), "/")
}
