package joint

import (
	"reflect"
	"testing"

	"seamtally/batch/units"
)

// Joints drawn alike hold one detail; a joint taken apart changes no other, and a detail
// that was handed in may change without changing what is kept.
func TestJointsDrawnAlikeShareOneDetail(t *testing.T) {
	l, err := understand(t, loadTables(t), "mark,kind,size,length,t1,t2,stitch\nA,fillet,z5,700,6,6,5x50(100)\nB,fillet,z5,800,6,6,5x50(100)\nC,fillet,z6,200,6,6,\n", Options{})
	if err != nil || len(l.Joints) != 3 {
		t.Fatalf("want three joints: %v %+v", err, l)
	}
	a, b, c := &l.Joints[0], &l.Joints[1], &l.Joints[2]
	if a.Detail != b.Detail || a.Detail == c.Detail || a.Stitch == nil {
		t.Fatalf("details at %p, %p, %p, stitch %v: want the first two at one place, with a stitch", a.Detail, b.Detail, c.Detail, a.Stitch)
	}
	before, own := *b.Detail, a.Apart()
	own.Size.A, own.Material = units.MM(9), "304L"
	if !reflect.DeepEqual(*b.Detail, before) || a.Size.A != 5 {
		t.Errorf("a joint taken apart changed another: %+v", *b.Detail)
	}
	known, d := details{}, Detail{Kind: Lap}
	kept := known.of(&d)
	if d.Kind = Edge; kept.Kind != Lap || known.of(&Detail{Kind: Lap}) != kept {
		t.Errorf("what is kept changed with what was handed in: %+v", *kept)
	}
}
