package batch

import (
	"context"
	"path/filepath"

	"seamtally/batch/price"
	"seamtally/batch/save"
	"seamtally/batch/workbook"
)

// summaryName is the workbook of all lists of one run.
const summaryName = "lists-summary.xlsx"

// summary gathers what the summary of several lists shows, and lets each job go.
type summary struct {
	job   Job
	place place
	rows  []workbook.SummaryRow
}

// newSummary starts a summary where one is wanted: for two lists and more whose
// workbooks go to one folder, there; nil: none.
func newSummary(job Job, places []place) *summary {
	wanted := false
	for _, out := range job.wanted() {
		wanted = wanted || out == Workbook
	}
	if !wanted || len(places) < 2 {
		return nil
	}
	dir, one := commonDir(places)
	if !one {
		return nil
	}
	return &summary{job: job, place: place{list: summaryName, names: map[Output]string{Workbook: summaryName},
		folder: save.Folder{Dir: dir, Disk: job.disk(), Force: job.Force, Inputs: job.inputs()}}}
}

// commonDir is the folder of all outputs; false where they go to several.
func commonDir(places []place) (string, bool) {
	key := func(p place) string { return pathKey(filepath.Join(p.folder.Dir, summaryName)) }
	for _, p := range places {
		if key(p) != key(places[0]) {
			return "", false
		}
	}
	return places[0].folder.Dir, true
}

// listen hands every result on after its figures have been taken over.
func (s *summary) listen(next func(Result)) func(Result) {
	return func(r Result) {
		s.add(r)
		if next != nil {
			next(r)
		}
	}
}

// add takes over the figures of one list.
func (s *summary) add(r Result) {
	row := workbook.SummaryRow{File: shownName(r.List)}
	if r.Err != nil {
		row.Failed = r.Err.Error()
	} else if r.Job != nil {
		row.Sheet, row.Joints, row.Totals, row.Currency = r.Job.List.Sheet, len(r.Job.Plans), r.Job.Totals, r.Job.Shop.Currency
		row.Buy = append([]price.BuyLine(nil), r.Job.Buy...)
	}
	s.rows = append(s.rows, row)
}

// save writes the summary and returns its path.
func (s *summary) save(ctx context.Context) (string, error) {
	looks := s.job.Looks
	data, err := workbook.Summary(s.rows, workbook.PlainOptions{US: looks.US, Version: s.job.Version, Paper: looks.Paper, Date: looks.Date})
	if err != nil {
		return "", &Bug{List: summaryName, Fault: err}
	}
	if err := s.place.folder.Put(ctx, []save.File{{Name: summaryName, Data: data, Judge: judgeWorkbook}}); err != nil {
		return "", err
	}
	return filepath.Join(s.place.folder.Dir, summaryName), nil
}
