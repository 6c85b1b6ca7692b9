package joint

import (
	"math"
	"strings"
	"testing"

	"seamtally/batch/list"
)

// floorOf reads the floor's records of a CSV text.
func floorOf(t *testing.T, text string) (map[int]Floor, []string) {
	t.Helper()
	src, _, err := list.Read("floor.csv", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	records, problems := ReadFloor(src, "")
	var said []string
	for _, p := range problems {
		said = append(said, p.Place.String()+" "+p.Text)
	}
	return records, said
}

func TestFloorIsReadInItsUnits(t *testing.T) {
	got, said := floorOf(t, "mark,Floor: copies done,Floor: arc time h,FLOOR - Welder's time (min),Floor: wire used lb,Floor wire feed set in/min,Floor: note\n"+
		"W1,2,0.5,\"45,5\",2,200,late\nW2,,,,,,\nW3,,,12,,,\n")
	if len(said) > 0 {
		t.Fatal(said)
	}
	if len(got) != 2 {
		t.Fatalf("%d records: %v", len(got), got)
	}
	a := got[2]
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"copies", float64(a.Qty), 2}, {"arc", float64(a.Arc), 30}, {"labour", float64(a.Labour), 45.5},
		{"wire", float64(a.Wire), 0.90718474}, {"feed", float64(a.Feed), 5.08}, {"labour of W3", float64(got[4].Labour), 12},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.what, c.got, c.want)
		}
	}
	if a.Note != "late" || a.Empty() || !(Floor{Note: "late"}).Empty() {
		t.Errorf("note %q", a.Note)
	}
}

func TestFloorFaultsAreToldWithTheirPlace(t *testing.T) {
	got, said := floorOf(t, "mark,Floor: copies done,Floor: arc time min\nW1,1.5,ten\nW2,1,-3\nW3,1,4\n")
	if len(said) != 3 || !strings.Contains(said[0], "B2") && !strings.Contains(said[0], "line 2") {
		t.Errorf("said %q", said)
	}
	if got[4].Arc != 4 || got[3].Arc != 0 || got[3].Qty != 1 {
		t.Errorf("records %v", got)
	}
}

func TestListWithoutFloorColumnsHasNoRecords(t *testing.T) {
	if got, said := floorOf(t, "mark,length,size\nFloor plate,200,z4\n"); got != nil || said != nil {
		t.Errorf("%v %v", got, said)
	}
}
