package pack

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"hash"
	"io"
	"sort"
	"strings"
	"time"

	"github.com/klauspost/compress/flate"
)

// epoch is the time of every part we write: the same input gives the same bytes.
var epoch = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// level is how hard parts are packed: half the time of the usual level for files
// a sixth larger, a fifth of all the time that a long list takes.
const level = 1

// packer writes the final package: parts in the order given, the stamped part last.
type packer struct {
	sum  hash.Hash
	zip  *zip.Writer
	pack *flate.Writer
}

func newPacker(to io.Writer) *packer {
	p := &packer{sum: sha256.New()}
	p.zip = zip.NewWriter(io.MultiWriter(to, p.sum))
	p.zip.RegisterCompressor(zip.Deflate, p.compressor)
	return p
}

// compressor packs one part. Parts are written one after the other, so one packing
// machine, which is large, serves all.
func (p *packer) compressor(w io.Writer) (io.WriteCloser, error) {
	if p.pack == nil {
		var err error
		p.pack, err = flate.NewWriter(w, level)
		return p.pack, err
	}
	p.pack.Reset(w)
	return p.pack, nil
}

// create opens a part for writing.
func (p *packer) create(name string) (io.Writer, error) {
	return p.zip.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: epoch})
}

func (p *packer) put(name string, data []byte) error {
	w, err := p.create(name)
	if err == nil {
		_, err = w.Write(data)
	}
	return err
}

// add writes a part of ours.
func (p *packer) add(part freshPart) error {
	if part.write == nil {
		return p.put(part.name, part.data)
	}
	w, err := p.create(part.name)
	if err == nil {
		err = part.write(w)
	}
	return err
}

// finish writes the properties part with the stamp and closes the package. The
// stamp covers everything up to the first byte of the part it stands in.
func (p *packer) finish(props *part) error {
	w, err := p.create(propsName)
	if err != nil {
		return err
	}
	if err := p.zip.Flush(); err != nil {
		return err
	}
	stamp := hex.EncodeToString(p.sum.Sum(nil))
	if _, err := w.Write(stampInto(props, stamp)); err != nil {
		return err
	}
	return p.zip.Close()
}

// Writer writes a whole workbook.
type Writer func(io.Writer) error

// Bytes returns the workbook as one piece.
func (w Writer) Bytes() ([]byte, error) {
	var out bytes.Buffer
	err := w(&out)
	return out.Bytes(), err
}

// Fresh makes a workbook of our own: the donor with the rows of its sheets.
func Fresh(donorBytes []byte, sheets []Sheet, charts map[string]Cache) (Writer, error) {
	d, err := openDonor(donorBytes, sheets, charts)
	if err != nil {
		return nil, err
	}
	drawn := map[string]*donorSheet{}
	for i := range d.sheets {
		drawn[d.sheets[i].path] = &d.sheets[i]
	}
	if err := d.sortTypes(); err != nil {
		return nil, err
	}
	if err := d.addProps(); err != nil {
		return nil, err
	}
	d.hideNames()
	return func(to io.Writer) error {
		p := newPacker(to)
		for _, name := range freshOrder(d.names) {
			part := freshPart{name: name, data: d.parts[name]}
			if s := drawn[name]; s != nil {
				part.write = func(w io.Writer) error { return s.write(w, nil, 0) }
			}
			if err := p.add(part); err != nil {
				return err
			}
		}
		return p.finish(nil)
	}, nil
}

// hideNames keeps the names that mark what is ours out of the user's sight.
func (d *donor) hideNames() {
	var edits []edit
	for _, n := range d.definedNames() {
		if strings.HasPrefix(n.attr("name"), oursName) {
			edits = append(edits, setAttr(d.book.data, n, "hidden", "1"))
		}
	}
	d.parts["xl/workbook.xml"] = apply(d.book.data, edits)
}

// freshOrder puts the content types first, as readers of streams expect.
func freshOrder(names []string) []string {
	out := []string{typesName}
	for _, n := range names {
		if n != typesName && n != propsName {
			out = append(out, n)
		}
	}
	return out
}

const typesName = "[Content_Types].xml"

// sortTypes puts the content types in a fixed order: the library that made the
// donor writes them in a random one.
func (d *donor) sortTypes() error {
	types, err := d.open(typesName)
	if err != nil {
		return err
	}
	var lines []string
	for _, k := range types.root.kids {
		lines = append(lines, string(types.data[k.start:k.end]))
	}
	sort.Strings(lines)
	root := types.root
	d.parts[typesName] = apply(types.data, []edit{{at: root.open, cut: root.shut - root.open, text: strings.Join(lines, "")}})
	return nil
}

// addProps declares the part that holds the stamp.
func (d *donor) addProps() error {
	types, err := d.open(typesName)
	if err != nil {
		return err
	}
	rels, err := d.open("_rels/.rels")
	if err != nil {
		return err
	}
	d.parts[typesName] = apply(types.data, []edit{appendInto(types.root, override(types.root, "/"+propsName, propsType))})
	d.parts["_rels/.rels"] = apply(rels.data, []edit{appendInto(rels.root, relation(rels.root, "rIdStamp", "custom-properties", "/"+propsName))})
	return nil
}

func override(root *node, name, kind string) string {
	return "<" + root.qname("Override") + ` PartName="` + escape(name) + `" ContentType="` + kind + `"/>`
}

func relation(root *node, id, kind, target string) string {
	return "<" + root.qname("Relationship") + ` Id="` + id + `" Type="` + relTypes + kind + `" Target="` + escape(target) + `"/>`
}
