package joint

import "testing"

// Titles name the job and the revision, alone, in two cells, or among other words; a
// title that only speaks of a job names none.
func TestTitlesNameJobAndRevision(t *testing.T) {
	set := loadTables(t)
	for _, c := range []struct{ titles, job, rev string }{
		{"Job: 2614 Conveyor trestle\nRev: B\n", "2614 Conveyor trestle", "B"},
		{"Job 2614  Conveyor trestle TR-3 and pump skid\nEstimator: A. N.   Rev B   12.11.2026\n", "2614 Conveyor trestle TR-3 and pump skid", "B"},
		{"Auftrag,4711-2\nBühne; Rev. 2\n", "4711-2", "2"},
		{"Zlecenie nr: 18/26\nRew. C\n", "18/26", "C"},
		{"Проект,Площадка П-3\n(изм. 4)\n", "Площадка П-3", "4"},
		{"Kommission: Halle 7\n", "Halle 7", ""},
		{"Project No.,P-18\n", "P-18", ""},
		{"Obra: Pasarela 3, tramo 2\n", "Pasarela 3", ""},
		{"Job shop weld list\nReview of 3 frames\n", "", ""},
		{"Weld list for the mezzanine\n", "", ""},
	} {
		l, err := understand(t, set, c.titles+"Mark,Length,Size,t1\nA,700,z5,6\nB,800,z5,6\n", Options{})
		if err != nil || len(l.Joints) != 2 {
			t.Fatalf("%q: %v", c.titles, err)
		}
		if l.Job != c.job || l.Joints[0].Rev != c.rev {
			t.Errorf("%q: job %q, revision %q; want %q, %q", c.titles, l.Job, l.Joints[0].Rev, c.job, c.rev)
		}
	}
}
