package batch

import (
	"context"
	"path/filepath"
	"strings"

	"seamtally/batch/compare"
	"seamtally/batch/report"
	"seamtally/batch/save"
	"seamtally/batch/workbook"
)

// Comparison is what became of comparing two lists.
type Comparison struct {
	compare.Difference
	Document []byte   // the result document
	Written  string   // path of the workbook; empty under DryRun
	Said     []string // about the folder: sentences
	Code     int      // exit code
}

// Compare sets the job's two lists, an older and a newer one, side by side and
// saves a workbook of what they differ in. Both are worked with the shop values of
// the newer list, so that only the lists make the difference.
func Compare(ctx context.Context, job Job) (c Comparison, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = &Bug{List: strings.Join(job.Lists, ", "), Fault: fault}
		}
	}()
	t, err := job.tools()
	if err != nil {
		return c, err
	}
	places := []place{job.comparisonPlace()}
	defer job.open(ctx, places)()
	p := places[0]
	c.Said = p.said
	if err := job.checkComparison(p); err != nil {
		return c, err
	}
	if err := job.compare(ctx, t, &c); err != nil {
		return c, err
	}
	data, err := workbook.Compare(&c.Difference, workbook.PlainOptions{US: job.Looks.US, Version: job.Version, Paper: job.Looks.Paper, Date: job.Looks.Date})
	if err != nil {
		return c, &Bug{List: p.list, Fault: err}
	}
	if job.DryRun {
		return c, nil
	}
	if err := p.folder.Put(ctx, []save.File{{Name: p.names[Workbook], Data: data, Judge: judgeWorkbook}}); err != nil {
		return c, err
	}
	c.Written = filepath.Join(p.folder.Dir, p.names[Workbook])
	return c, nil
}

// compare works both lists and fills in what they differ in.
func (j *Job) compare(ctx context.Context, t *tools, c *Comparison) error {
	newer, problems, err := j.read(j.Lists[1])
	if err != nil {
		return err
	}
	older, before, err := j.read(j.Lists[0])
	if err != nil {
		return err
	}
	shop, shopProblems, err := t.shopOf(newer, j)
	if err != nil {
		return err
	}
	bare, own := workbook.Undress(newer)
	now, err := j.plan(ctx, t, j.Lists[1], bare, shop, said{file: append(problems, own...), shop: shopProblems, whole: newer})
	if err != nil {
		return err
	}
	bare, own = workbook.Undress(older)
	was, err := j.plan(ctx, t, j.Lists[0], bare, shop, said{file: append(before, own...), whole: older})
	if err != nil {
		return err
	}
	c.Difference = compare.Lists(was.job, now.job)
	c.Code = max(rowsCode(was.job, j.Strict), rowsCode(now.job, j.Strict))
	c.Document, err = report.CompareJSON(&c.Difference, j.Version, t.set.Edition)
	return err
}

// comparisonPlace names the workbook after the newer list.
func (j *Job) comparisonPlace() place {
	p := j.place(j.Lists[1])
	stem := strings.TrimSuffix(p.names[Results], "-joints.csv")
	p.folder.Inputs = j.inputs()
	p.names = map[Output]string{Workbook: stem + "-compared.xlsx"}
	return p
}

func (j *Job) checkComparison(p place) error {
	if j.DryRun || p.broken != nil {
		return p.broken
	}
	return p.folder.Check(save.Target{Name: p.names[Workbook], Judge: judgeWorkbook})
}
