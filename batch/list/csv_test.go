package list

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"

	"golang.org/x/text/encoding/charmap"
)

func dump(src *Source) string {
	var b strings.Builder
	for _, sheet := range src.Sheets {
		for _, row := range sheet.Rows {
			for _, c := range row.Cells {
				fmt.Fprintf(&b, "%d:%q ", c.Col, c.Text)
			}
			b.WriteByte('\n')
		}
	}
	return b.String()
}

func utf16Of(text string, order binary.ByteOrder, mark bool) []byte {
	var out bytes.Buffer
	units := utf16.Encode([]rune(text))
	if mark {
		units = append([]uint16{0xFEFF}, units...)
	}
	for _, u := range units {
		_ = binary.Write(&out, order, u)
	}
	return out.Bytes()
}

// The same list in other encodings, delimiters and line ends reads the same.
func TestTwinsReadLikeThePlainFile(t *testing.T) {
	enc := func(m *charmap.Charmap, s string) []byte {
		b, err := m.NewEncoder().Bytes([]byte(s))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for lang, plain := range map[string]string{
		"english": "Mark,Length,Leg,Note\nW1,500,z6,left\nW2,250,z5,right\n007,90,z4,\"a, b\"\n",
		"polish":  "Nr spoiny,Długość,Grubość,Uwaga\nS1,500,6,żebro lewe\nS2,250,5,środnik\nS3,90,4,ćwierć\n",
		"russian": "Номер шва,Длина,Катет,Примечание\nШ1,500,6,ребро жёсткости\nШ2,250,5,стенка балки\nШ3,90,4,опорная плита\n",
		"german":  "Nahtnummer,Länge,Maß,Bemerkung\nN1,500,6,für Träger\nN2,250,5,äußere Öse\nN3,90,4,Fußplatte\n",
	} {
		base, _, err := Read("plain.csv", []byte(plain))
		if err != nil {
			t.Fatal(lang, err)
		}
		want := dump(base)
		other := func(delimiter string) string {
			if delimiter == "," {
				return plain
			}
			return strings.ReplaceAll(strings.ReplaceAll(plain, `"a, b"`, "a\x00 b"), ",", delimiter)
		}
		twins := map[string][]byte{
			"bom":           append([]byte("\xef\xbb\xbf"), plain...),
			"utf16le mark":  utf16Of(plain, binary.LittleEndian, true),
			"utf16be mark":  utf16Of(plain, binary.BigEndian, true),
			"utf16le":       utf16Of(plain, binary.LittleEndian, false),
			"utf16be":       utf16Of(plain, binary.BigEndian, false),
			"crlf":          []byte(strings.ReplaceAll(plain, "\n", "\r\n")),
			"cr":            []byte(strings.ReplaceAll(plain, "\n", "\r")),
			"sep":           []byte("sep=,\n" + plain),
			"semicolon":     []byte(strings.ReplaceAll(other(";"), "\x00", ",")),
			"tab":           []byte(strings.ReplaceAll(other("\t"), "\x00", ",")),
			"pipe":          []byte(strings.ReplaceAll(other("|"), "\x00", ",")),
			"no last break": []byte(strings.TrimSuffix(plain, "\n")),
			"blank lines":   []byte(strings.ReplaceAll(plain, "\n", "\n\n")),
			"all quoted":    []byte(quoted(plain)),
		}
		switch lang {
		case "polish":
			twins["windows-1250"] = enc(charmap.Windows1250, plain)
		case "russian":
			twins["windows-1251"] = enc(charmap.Windows1251, plain)
		case "german":
			twins["windows-1252"] = enc(charmap.Windows1252, plain)
		}
		for name, data := range twins {
			src, _, err := Read("twin.csv", data)
			if err != nil {
				t.Errorf("%s %s: %v", lang, name, err)
				continue
			}
			if got := dump(src); got != want {
				t.Errorf("%s %s (read as %s, delimiter %q):\n%swant\n%s", lang, name, src.Encoding, src.Delimiter, got, want)
			}
		}
	}
}

func quoted(plain string) string {
	var b strings.Builder
	for _, line := range strings.Split(strings.TrimSuffix(plain, "\n"), "\n") {
		line = strings.ReplaceAll(line, `"a, b"`, "a\x00 b")
		b.WriteString(strings.ReplaceAll(`"`+strings.ReplaceAll(line, ",", `","`)+`"`, "\x00", ",") + "\n")
	}
	return b.String()
}

func TestCSVFaultsHaveALine(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"unterminated quote", "Mark,Length\nW1,\"500\nW2,300\n", "line 2"},
		{"nul", "Mark,Length\nW1,5\x0000\n", "line 2"},
	} {
		_, _, err := Read("x.csv", []byte(c.text))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want a refusal with %q", c.name, err, c.want)
		}
	}
}

func TestDecimalCommaIsDecidedFromTheWholeFile(t *testing.T) {
	for _, c := range []struct {
		text string
		want bool
	}{
		{"Mark;Length\nW1;500\nW2;12,5\n", true},
		{"Mark;Length\nW1;500\nW2;12.5\n", false},
		{"Mark,Length\nW1,500\n", false},
		{"Mark\tLength\nW1\t12,5\n", true},
	} {
		src, _, err := Read("x.csv", []byte(c.text))
		if err != nil || src.DecimalComma != c.want {
			t.Errorf("%q: %v %v", c.text, src, err)
		}
	}
}

func TestRowNumbersAreThoseOfAnEditor(t *testing.T) {
	src, _, err := Read("x.csv", []byte("Mark,Note\n\nW1,\"two\nlines\"\nW2,x\n"))
	if err != nil {
		t.Fatal(err)
	}
	var got []int
	for _, r := range src.Sheets[0].Rows {
		got = append(got, r.Number)
	}
	if fmt.Sprint(got) != "[1 3 5]" {
		t.Errorf("rows %v", got)
	}
}

func TestWhatIsNoListIsNamed(t *testing.T) {
	for name, c := range map[string]struct{ data, want string }{
		"old or encrypted": {"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1rest", "password"},
		"pdf":              {"%PDF-1.4\n...", "PDF"},
		"empty":            {"", "empty"},
		"blank":            {" \n\n", ""},
		"picture":          {"\x89PNG\r\n\x1a\n\x00\x00", ""},
		"cut zip":          {"PK\x03\x04abc", ""},
	} {
		_, _, err := Read("x.xlsx", []byte(c.data))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzCSV(f *testing.F) {
	for _, s := range []string{"Mark;Length\nW1;12,5\n", "a,b\n\"x\ny\",2\r\n", "\xef\xbb\xbfa\tb\n", "sep=|\na|b\n", "\xff\xfea\x00,\x00", "a\rb\r"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		src, _, err := Read("x.csv", data)
		if err != nil {
			plainWords(t, err)
			return
		}
		last := 0
		for _, row := range src.Sheets[0].Rows {
			if row.Number <= last && src.Format == CSV {
				t.Errorf("row %d after row %d", row.Number, last)
			}
			last = row.Number
		}
	})
}
