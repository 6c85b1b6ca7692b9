// Package tables holds the tool's data as CSV files with a source and a basis in
// every row, and loads them into typed rows. A folder given by the user replaces
// tables by name. The order to read: this file, then one file per table.
package tables

import (
	"bytes"
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"sort"
	"strings"

	"github.com/gocarina/gocsv"

	"seamtally/batch/finding"
)

//go:embed *.csv
var embedded embed.FS

// Origin is embedded in every typed row: where the row's figures come from.
type Origin struct {
	Basis  string `csv:"basis"`  // published, common-practice, derived or memory
	Source string `csv:"source"` // title, edition, table or page; empty only for common-practice
}

// Files reads tables from the embedded set, or from the user's folder where a
// file of the same name stands there.
type Files struct{ dir string }

// Open returns the table files; dir is the user's folder or empty.
func Open(dir string) (*Files, error) {
	if dir == "" {
		return &Files{}, nil
	}
	info, err := os.Stat(dir)
	if err != nil || !info.IsDir() {
		why := "there is no such folder"
		if err == nil {
			why = "it is a file, not a folder"
		}
		return nil, fmt.Errorf("the tables folder %q cannot be read: "+why+"; correct the name behind --tables; `seamtally tables --out my-tables` makes such a folder", dir)
	}
	return &Files{dir: dir}, misnamed(dir)
}

// misnamed finds a folder without a table of its own, and a file whose name is hardly
// that of a table: either way somebody reckons with figures that nobody reads.
func misnamed(dir string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return fmt.Errorf("the tables folder %q cannot be read: there is no permission; choose a folder that you may read", dir)
	}
	names, own := Names(), 0
	for _, e := range entries {
		name, isCSV := strings.CutSuffix(e.Name(), ".csv")
		if isCSV && slices.Contains(names, name) {
			own++
			continue
		}
		name, isCSV = strings.CutSuffix(strings.ToLower(e.Name()), ".csv")
		if near := finding.Nearest(name, names); isCSV && near != "" {
			return fmt.Errorf("the tables folder %q holds %q, which is no table and would not be read; name it %s.csv if that is meant, or take it away", dir, e.Name(), near)
		}
	}
	if own == 0 {
		return fmt.Errorf("the tables folder %q holds no table; give --tables another; `seamtally tables --out my-tables` makes one with every table in it", dir)
	}
	return nil
}

// Names returns the names of all tables, sorted, without ".csv".
func Names() []string {
	entries, _ := fs.ReadDir(embedded, ".")
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), ".csv"))
	}
	sort.Strings(names)
	return names
}

// Bytes returns a table's CSV text and whether it is the user's own.
func (f *Files) Bytes(name string) (text []byte, own bool, err error) {
	if f.dir != "" {
		text, err = os.ReadFile(filepath.Join(f.dir, name+".csv"))
		if err == nil {
			return bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")), true, nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return nil, false, fmt.Errorf("table %s.csv in %q cannot be read: there is no permission, or something that is no file stands in its place; put a file there that can be read, or take it away: the built-in table is used then", name, f.dir)
		}
	}
	text, err = embedded.ReadFile(name + ".csv")
	if err != nil {
		return nil, false, fmt.Errorf("there is no table %q; the tables are: %s", name, strings.Join(Names(), ", "))
	}
	return text, false, nil
}

// Rows loads one table into typed rows. Every header of the row type must stand
// in the file. Numbers that are not finite are refused.
func Rows[T any](f *Files, name string) ([]T, error) {
	text, own, err := f.Bytes(name)
	if err != nil {
		return nil, err
	}
	where := "built-in table " + name + ".csv"
	if own {
		where = "table " + filepath.Join(f.dir, name+".csv")
	}
	header, err := sameHeaders[T](text)
	if err != nil {
		return nil, told(where, name, nil, err)
	}
	if line := emptyRow(text); own && line > 0 {
		return nil, told(where, name, header, fmt.Errorf("line %d: every cell of the row is empty (delete the row if nothing is missing)", line))
	}
	var rows []T
	reader := csv.NewReader(bytes.NewReader(text))
	if err := gocsv.UnmarshalCSV(reader, &rows); err != nil {
		return nil, told(where, name, header, err)
	}
	if err := finite(rows); err != nil {
		return nil, told(where, name, header, err)
	}
	return rows, nil
}

// sameHeaders returns the header of a table, which has every column of the row type.
func sameHeaders[T any](text []byte) ([]string, error) {
	got, err := csv.NewReader(bytes.NewReader(text)).Read()
	if err == io.EOF {
		return nil, errors.New("the file is empty")
	}
	if err != nil {
		return nil, err
	}
	have := map[string]bool{}
	for _, h := range got {
		have[h] = true
	}
	for _, want := range headers(reflect.TypeFor[T]()) {
		if !have[want] {
			return nil, fmt.Errorf("column %q is missing from the header", want)
		}
	}
	return got, nil
}

// mayLack ends the tag of a column that a table of somebody's own may do without.
const mayLack = ",omitempty"

// headers are the columns that a table must have.
func headers(t reflect.Type) []string {
	var out []string
	for i := range t.NumField() {
		field := t.Field(i)
		if field.Anonymous {
			out = append(out, headers(field.Type)...)
			continue
		}
		if name := field.Tag.Get("csv"); name != "" && name != "-" && !strings.HasSuffix(name, mayLack) {
			out = append(out, name)
		}
	}
	return out
}

func finite[T any](rows []T) error {
	for i := range rows {
		v := reflect.ValueOf(rows[i])
		for j := range v.NumField() {
			if f := v.Field(j); f.Kind() == reflect.Float64 && (math.IsNaN(f.Float()) || math.IsInf(f.Float(), 0)) {
				return fmt.Errorf("line %d, column %q: it is not a finite number", i+2, v.Type().Field(j).Tag.Get("csv"))
			}
		}
	}
	return nil
}
