package ink

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"testing"
)

// A packed stream unpacks to what it was, every object lies where the table says, and
// an object without a bare stream stays as it is.
func TestPackedFileSaysTheSame(t *testing.T) {
	stream := bytes.Repeat([]byte("0 0 m 10 10 l S\n"), 50)
	other := "2 0 obj\n<</Type /Font>>\nendobj\n"
	var file bytes.Buffer
	file.WriteString("%PDF-1.3\n")
	second := file.Len()
	file.WriteString(other)
	first := file.Len()
	fmt.Fprintf(&file, "1 0 obj\n<</Length %d>>\nstream\n%s\nendstream\nendobj\n", len(stream), stream)
	xref := file.Len()
	fmt.Fprintf(&file, "xref\n0 3\n0000000000 65535 f \n%010d 00000 n \n%010d 00000 n \ntrailer\n<<\n/Size 3\n>>\nstartxref\n%d\n%%%%EOF\n", first, second, xref)
	got, err := pack(file.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if len(got) >= file.Len() || !bytes.Contains(got, []byte(other)) {
		t.Fatalf("%d bytes became %d", file.Len(), len(got))
	}
	from := bytes.Index(got, []byte("1 0 obj"))
	if !bytes.Contains(got, fmt.Appendf(nil, "\n%010d 00000 n \n%010d 00000 n \ntrailer", from, second)) {
		t.Errorf("the table does not say where the objects lie:\n%s", got[bytes.Index(got, []byte("xref")):])
	}
	body := got[from+bytes.Index(got[from:], []byte("stream\n"))+len("stream\n"):]
	z, err := zlib.NewReader(bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	if text, err := io.ReadAll(z); err != nil || !bytes.Equal(text, stream) {
		t.Errorf("the stream unpacks to %d bytes (%v), want %d", len(text), err, len(stream))
	}
	for _, bad := range []string{"", "%PDF", "\nxref\n\ntrailer\n\nstartxref\n", "\nxref\n9999999999 00000 n \n\ntrailer\n\nstartxref\n"} {
		if _, err := pack([]byte(bad)); err == nil {
			t.Errorf("%q was packed", bad)
		}
	}
}
