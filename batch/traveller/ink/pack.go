package ink

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strconv"
	"sync"
)

// The library packs each page with a packer made for it alone, which takes most of the
// time and nearly all of the memory of a large file. It is told to leave the pages as
// they are; they are packed here, side by side, with packers that are used again.

var errTable = errors.New("the file has no table of its objects")

// object is one object of a file: its number, where it lies, and its bytes as they
// are written out.
type object struct {
	number, at int
	text       []byte
}

// pack returns the file with the streams of its pages packed, and the table of where
// its objects lie written anew.
func pack(file []byte) ([]byte, error) {
	table, trailer, end := bytes.LastIndex(file, []byte("\nxref\n")), bytes.LastIndex(file, []byte("\ntrailer\n")), bytes.LastIndex(file, []byte("\nstartxref\n"))
	if table < 0 || trailer < table || end < trailer {
		return nil, errTable
	}
	objects, err := cut(file[:table+1], file[table+1:trailer])
	if err != nil {
		return nil, err
	}
	head := file[:objects[0].at]
	packAll(objects)
	size := len(head) + 20*len(objects) + 1024
	for i := range objects {
		size += len(objects[i].text)
	}
	out := bytes.NewBuffer(make([]byte, 0, size))
	out.Write(head)
	for i := range objects {
		objects[i].at = out.Len()
		out.Write(objects[i].text)
	}
	xref := out.Len()
	slices.SortFunc(objects, func(a, b object) int { return a.number - b.number })
	fmt.Fprintf(out, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, o := range objects {
		fmt.Fprintf(out, "%010d 00000 n \n", o.at)
	}
	out.Write(file[trailer+1 : end+1])
	fmt.Fprintf(out, "startxref\n%d\n%%%%EOF\n", xref)
	return out.Bytes(), nil
}

// cut cuts a file into its objects, in the order in which they lie, by the lines of its
// table.
func cut(file, table []byte) ([]object, error) {
	var out []object
	for line := range bytes.Lines(table) {
		if f := bytes.Fields(line); len(f) == 3 && string(f[2]) == "n" {
			at, err := strconv.Atoi(string(f[0]))
			if err != nil || at <= 0 || at >= len(file) {
				return nil, errTable
			}
			out = append(out, object{number: len(out) + 1, at: at})
		}
	}
	if len(out) == 0 {
		return nil, errTable
	}
	slices.SortFunc(out, func(a, b object) int { return a.at - b.at })
	for i := range out {
		to := len(file)
		if i+1 < len(out) {
			to = out[i+1].at
		}
		out[i].text = file[out[i].at:to]
	}
	return out, nil
}

// packAll packs the bare streams among the objects, as many at once as there are
// processors.
func packAll(objects []object) {
	var wait sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		wait.Go(func() {
			var p packer
			for i := w; i < len(objects); i += workers {
				objects[i].text = p.object(objects[i].text)
			}
		})
	}
	wait.Wait()
}

// packer packs one stream after another.
type packer struct {
	z   *zlib.Writer
	out bytes.Buffer
}

var (
	bare   = []byte("<</Length ")
	begins = []byte(">>\nstream\n")
	ends   = []byte("\nendstream\nendobj\n")
)

// object returns an object with its stream packed, or as it is where it holds no bare
// stream.
func (p *packer) object(text []byte) []byte {
	lead := bytes.Index(text, bare)
	if lead < 0 || lead > 24 || !bytes.HasSuffix(text, ends) {
		return text
	}
	from := bytes.Index(text, begins)
	if from < 0 || from > lead+24 {
		return text
	}
	p.out.Reset()
	if p.z == nil {
		p.z, _ = zlib.NewWriterLevel(&p.out, zlib.BestSpeed) // the level is a good one
	} else {
		p.z.Reset(&p.out)
	}
	_, _ = p.z.Write(text[from+len(begins) : len(text)-len(ends)]) // a buffer takes all
	_ = p.z.Close()
	out := make([]byte, 0, lead+p.out.Len()+80)
	out = append(out, text[:lead]...)
	out = append(out, "<</Filter /FlateDecode /Length "...)
	out = strconv.AppendInt(out, int64(p.out.Len()), 10)
	out = append(out, begins...)
	out = append(out, p.out.Bytes()...)
	return append(out, ends...)
}
