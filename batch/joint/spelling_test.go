package joint

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// unread are headers of testdata/spellings.txt that are passed through as not known,
// or read otherwise, and why. One that is understood after all fails too.
var unread = map[string]string{
	"Symbol złącza":    "read as the kind: a symbol says what the weld is like more often than which it is",
	"Times":            "a time as well as a count",
	"Conjunto montado": "an assembly that is put together: nobody was sure",
	"Weld seq.":        "an order of welding as well as a number",
	"Node / weld":      "two things in one column",
	"Marke":            "a make as well as a mark",
	"Montage":          "yes or no under it, or a stage of the work",
	"En obra":          "yes or no under it",
	"Cantiere":         "the name of a site, or yes or no",
	"Montaż":           "yes or no under it, or a stage of the work",
	"Монтаж":           "yes or no under it, or a stage of the work",
	"Fillet length":    "the leg of a fillet as well as its length",
	"Lage":             "a layer as well as a position",
	"Сварка":           "a process, a kind or a yes",
}

// TestSpellingsAreUnderstood reads headers as shops in nine languages may write them:
// most of them are not in the table as they stand, some were never looked at while
// the rules were made.
func TestSpellingsAreUnderstood(t *testing.T) {
	s := newSpellings(loadTables(t))
	data, err := os.ReadFile(filepath.Join("testdata", "spellings.txt"))
	if err != nil {
		t.Fatal(err)
	}
	understood, lines := 0, 0
	for line := range strings.Lines(string(data)) {
		key, text, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "|")
		lines++
		all := s.header(text)
		if all == nil {
			all = s.headers[s.near(text)]
		}
		good := slices.ContainsFunc(all, func(m meaning) bool { return m.key == key })
		if why := unread[text]; good == (why != "") {
			t.Errorf("%q: understood as %s: %v, want otherwise (%s): %v", text, key, good, why, all)
		}
		if good {
			understood++
		}
	}
	t.Logf("%d of %d headers", understood, lines)
}

// TestCollectedSpellings reads the headers that were collected beside this
// repository: all but the three that this tool gives a key of their own.
func TestCollectedSpellings(t *testing.T) {
	file, err := os.Open(filepath.Join("..", "..", "..", "shared", "headers.csv"))
	if err != nil {
		if os.Getenv("SEAMTALLY_NEED_ALL") == "1" {
			t.Fatal(err)
		}
		t.Skip("the collected headers are absent")
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]string{"quantity": "qty", "joint_type": "kind", "thickness_1": "t1", "thickness_2": "t2", "leg": "size", "throat": "size", "revision": "rev", "level": "quality", "shop_site": "where"}
	own := map[string]string{"Mat. 2": "material2", "WPS": "wps", "NDT %": "ndt"}
	s := newSpellings(loadTables(t))
	for _, row := range rows[1:] {
		key := row[0]
		if name := names[key]; name != "" {
			key = name
		}
		if name := own[row[1]]; name != "" {
			key = name
		}
		if !slices.ContainsFunc(s.header(row[1]), func(m meaning) bool { return m.key == key }) {
			t.Errorf("%q is not understood as %s: %v", row[1], key, s.header(row[1]))
		}
	}
	t.Logf("%d headers", len(rows)-1)
}

// TestNoHeaderIsReadByItsPart: words that a list has beside its welds are not taken
// for what one of their words means.
func TestNoHeaderIsReadByItsPart(t *testing.T) {
	s := newSpellings(loadTables(t))
	for _, text := range []string{"Welder", "Welder ID", "Weld date", "Weld inspector", "Weld cost", "Weld map", "Joint efficiency", "Plate area", "Plate weight", "Total weight", "Bolt length x", "Date welded", "Welding time", "Length code x",
		"Paint", "Datum", "Schweißer", "Schweißer Nr.", "Prüfer", "Soudeur", "Soldador", "Saldatore", "Spawacz", "Сварщик", "Зварник", "Масса", "Вес, кг", "Poids", "Peso (kg)", "Gewicht", "Preis", "Price", "Heat no.", "Charge", "Customer", "Status", "Checked by", "%", "1", "2", "of the"} {
		for _, m := range s.header(text) {
			if m.key != "note" {
				t.Errorf("%q is read as %s", text, m.key)
			}
		}
	}
}
