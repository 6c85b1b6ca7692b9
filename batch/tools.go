package batch

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"syscall"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/procedure"
	"seamtally/batch/rates"
	"seamtally/batch/workbook"
	"seamtally/tables"
)

// tools are what all lists of a job share.
type tools struct {
	set  *tables.Set
	shop rates.Shop   // built in
	file *list.Source // the shop file; nil: none

	reader     *procedure.Reader // of sheets of procedures
	procedures bool              // the shop file holds some
	stated     []rates.Value     // they, in words
	said       []finding.Problem // about procedures
}

func (j *Job) tools() (*tools, error) {
	files, err := tables.Open(j.Tables)
	if err != nil {
		return nil, err
	}
	t := &tools{}
	if t.set, err = tables.Load(files); err != nil {
		return nil, err
	}
	if t.shop, err = rates.Default(t.set); err != nil {
		return nil, err
	}
	if j.Shop != "" {
		if t.file, err = readShop(j.Shop); err != nil {
			return nil, err
		}
	}
	if err := t.readProcedures(files, j); err != nil {
		return nil, err
	}
	_, _, err = t.shopOf(&list.Source{Format: list.CSV}, j)
	return t, err
}

func readShop(path string) (*list.Source, error) {
	data, err := readFile("shop file", path)
	if err != nil {
		return nil, err
	}
	src, _, err := list.Read(path, data)
	return src, err
}

// shopOf states the shop for one list: the built-in values, then the list's own
// sheet of rates, then the shop file, then --set; the later beats the earlier. A
// price with a value that could not be read would be a wrong price, so an error
// here stops the list.
func (t *tools) shopOf(src *list.Source, j *Job) (rates.Shop, []finding.Problem, error) {
	shop := t.shop.Clone()
	problems := shop.ReadSheet(src, workbook.RatesSheet(src))
	stock, wrong := workbook.StockTyped(src, t.set)
	problems = append(append(problems, wrong...), shop.ReadStated(stock)...)
	if t.file != nil {
		problems = append(problems, shop.ReadFile(t.file, workbook.RatesSheet(t.file))...)
	}
	problems = append(t.withProcedures(&shop, problems), t.strayProcedures(src)...)
	if bad := errorsIn(problems); len(bad) > 0 {
		return shop, nil, errors.New(Lines(bad))
	}
	set := shop.Set(j.Set)
	if bad := errorsIn(set); len(bad) > 0 {
		return shop, nil, &Usage{Lines(bad)}
	}
	return shop, append(problems, set...), nil
}

// Lines words problems, one a line.
func Lines(problems []finding.Problem) string {
	lines := make([]string, len(problems))
	for i, p := range problems {
		lines[i] = p.Line()
	}
	return strings.Join(lines, "\n")
}

// readFile reads a file that the user named, or says in plain words why it cannot.
func readFile(what, path string) ([]byte, error) {
	data, err := os.ReadFile(path)
	if err == nil {
		return data, nil
	}
	return nil, unreadable(what, path, err)
}

// unreadable words an error of the system about a file or folder that the user named.
func unreadable(what, path string, err error) error {
	why := "the system refused; copy it to another folder and try that copy (for whoever looks into it: " + bare(err).Error() + ")"
	switch {
	case errors.Is(err, fs.ErrNotExist):
		why = "there is no such file; check the name and the folder"
	case errors.Is(err, fs.ErrPermission):
		why = "there is no permission to read it, or another program holds it; close it where it is open, or ask its owner to let you read it"
	case errors.Is(err, syscall.EISDIR):
		why = "it is a folder; name a file in it"
	case errors.Is(err, syscall.ENOTDIR):
		why = "a part of its path is a file and no folder; check the name and the folder"
	case errors.Is(err, syscall.ELOOP):
		why = "it is a link that leads back to itself; name the file that was meant"
	case errors.Is(err, syscall.ENAMETOOLONG):
		why = "the name is too long for the file system; give it a shorter name"
	case errors.Is(err, syscall.EIO):
		why = "the disk reports a fault; ask for the file again, or take it from another copy"
	}
	return fmt.Errorf("the %s %q cannot be read: %s", what, path, why)
}

// bare takes the name of the call and the path off an error of the system: the
// sentence around it names the path already.
func bare(err error) error {
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		return p.Err
	}
	return err
}

// errorsIn keeps the problems that are errors.
func errorsIn(problems []finding.Problem) []finding.Problem {
	var out []finding.Problem
	for _, p := range problems {
		if p.Level == finding.Error {
			out = append(out, p)
		}
	}
	return out
}
