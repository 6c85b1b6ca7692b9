package ink

import (
	"bytes"
	"math"
	"testing"

	"seamtally/batch/traveller/page"
)

func document() *page.Document {
	doc := &page.Document{Title: "Traveller: Łuk", Subject: "sheets", Date: "2026-02-03"}
	p := doc.Add(210, 297)
	p.Mark(0, "Рама А")
	box := p.Box("b", page.Rect{X: 20, Y: 20, W: 100, H: 100})
	for i, f := range page.Faces {
		p.Write(box, 21, 30+float64(i)*10, 90, page.Left, page.Style{Face: f, Size: 12}, "Łódź Лестница ≤ 3 mm² ø12 60°")
	}
	p.Frame(box, page.Rect{X: 30, Y: 70, W: 20, H: 10}, 0.3, 0.9)
	p.Draw(box, page.Shape{Points: []page.Point{{X: 30, Y: 90}, {X: 60, Y: 95}}, Line: 0.2, Fill: page.None, Dash: 1})
	return doc
}

func TestSameDocumentSameBytes(t *testing.T) {
	first, err := PDF(document())
	if err != nil {
		t.Fatal(err)
	}
	for range 5 {
		again, err := PDF(document())
		if err != nil || !bytes.Equal(first, again) {
			t.Fatalf("the same document gave other bytes (%v)", err)
		}
	}
	if !bytes.Contains(first, []byte("(D:20260203000000)")) {
		t.Error("the document's date is not the file's date")
	}
}

// The model measures texts itself; what it measures must be what is drawn.
func TestWidthsAreThoseOfThePDF(t *testing.T) {
	c := newPDF(document())
	c.Page(210, 297)
	for _, f := range page.Faces {
		for _, text := range []string{"W-014", "Лестница №3", "Łuk ≤ 3 mm", "1.2 mm · G3Si1 / ER70S-6", "□…–"} {
			c.font(f, 14)
			want := c.pdf.GetStringWidth(text)
			if got := (page.Style{Face: f, Size: 14}).Width(text); math.Abs(got-want) > 0.02 {
				t.Errorf("%s %q: measured %.3f mm, drawn %.3f", f, text, got, want)
			}
		}
	}
}

// recorder is a canvas that notes the order of what it is given.
type recorder struct{ calls []string }

func (r *recorder) Page(float64, float64) { r.calls = append(r.calls, "page") }
func (r *recorder) Mark(page.Mark)        { r.calls = append(r.calls, "mark") }
func (r *recorder) Shape(page.Shape)      { r.calls = append(r.calls, "shape") }
func (r *recorder) Text(page.Text)        { r.calls = append(r.calls, "text") }

func TestDrawGivesShapesBeforeTexts(t *testing.T) {
	var r recorder
	Draw(document(), &r)
	want := []string{"page", "mark", "shape", "shape", "text", "text", "text"}
	if len(r.calls) != len(want) {
		t.Fatalf("calls: %v", r.calls)
	}
	for i := range want {
		if r.calls[i] != want[i] {
			t.Fatalf("calls: %v", r.calls)
		}
	}
}
