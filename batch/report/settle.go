package report

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"

	"seamtally/batch/price"
	"seamtally/batch/settle"
)

// settlement is the document of `settle`. The order of its fields is the order printed.
type settlement struct {
	Schema  string         `json:"schema"`
	Version string         `json:"version"`
	Tables  string         `json:"tables"`
	List    source         `json:"list"`
	Joints  []settledJoint `json:"joints"`
	Factors []factor       `json:"factors"`
	LeftOut []leftOut      `json:"left_out"`
}

type settledJoint struct {
	Mark string `json:"mark"`
	Row  int    `json:"row"`
	Done number `json:"done_share"`
	amounts
}

// amounts are planned and actual; null: not recorded, or not planned.
type amounts struct {
	ArcPlanned    number `json:"arc_planned_min"`
	Arc           number `json:"arc_min"`
	LabourPlanned number `json:"labour_planned_min"`
	Labour        number `json:"labour_min"`
	WirePlanned   number `json:"wire_planned_kg"`
	Wire          number `json:"wire_kg"`
}

type factor struct {
	Key      string `json:"key"` // shop value; "wire_ratio": not a shop value
	Unit     string `json:"unit"`
	Planned  number `json:"planned"`
	Value    number `json:"value"` // null: no fit
	Low      number `json:"low"`   // 95 % interval
	High     number `json:"high"`
	Records  int    `json:"records"`
	Sentence string `json:"sentence"`
}

type leftOut struct {
	Mark string `json:"mark"`
	Row  int    `json:"row"`
	Why  string `json:"why"`
}

// factorDecimals is how finely fitted values are given.
const factorDecimals = 4

// SettleJSON returns planned against actual on one line.
func SettleJSON(job *price.Job, s *settle.Settled) ([]byte, error) {
	doc := settlement{Schema: Schema, Version: job.Version, Tables: job.TablesEdition,
		List: source{job.List.File, job.List.Sheet, job.List.SHA256}, Joints: []settledJoint{}, Factors: []factor{}, LeftOut: []leftOut{}}
	for i := range s.Joints {
		doc.Joints = append(doc.Joints, settledOf(&s.Joints[i]))
	}
	for _, f := range s.Factors {
		d := of(f.Value, factorDecimals)
		out := factor{Key: f.Key, Unit: f.Unit, Planned: of(f.Planned, factorDecimals), Records: f.Records, Sentence: f.Sentence,
			Value: when(f.Fitted, d), Low: when(f.Fitted, of(f.Low, factorDecimals)), High: when(f.Fitted, of(f.High, factorDecimals))}
		if f.Key == "" {
			out.Key = "wire_ratio"
		}
		doc.Factors = append(doc.Factors, out)
	}
	for _, o := range s.Left {
		doc.LeftOut = append(doc.LeftOut, leftOut(o))
	}
	return line(doc)
}

func settledOf(j *settle.Joint) settledJoint {
	arc, labour, wire := j.Planned()
	r := j.Record
	known := j.Plan.Settings
	return settledJoint{Mark: j.Mark, Row: r.Row, Done: of(j.Done, 3), amounts: amounts{
		when(known, of(arc, price.MinuteDecimals)), when(r.Arc > 0, of(r.Arc, price.MinuteDecimals)),
		when(known, of(labour, price.MinuteDecimals)), when(r.Labour > 0, of(r.Labour, price.MinuteDecimals)),
		when(known, of(wire, price.KgDecimals)), when(r.Wire > 0, of(r.Wire, price.KgDecimals)),
	}}
}

// SettledShop returns a shop file, as CSV, with the shop's own values and those
// that the records gave in place of theirs: value, 95 % interval, basis and how
// many records of which list they come from.
func SettledShop(job *price.Job, s *settle.Settled) ([]byte, error) {
	var out bytes.Buffer
	out.WriteString("\ufeff") // spreadsheets take a CSV without it for another alphabet
	w := csv.NewWriter(&out)
	w.Write([]string{"# Shop file with the values that the floor's records gave. Lines beginning with # are not read."})
	w.Write([]string{"key", "value", "unit", "low", "high", "basis", "source", "note"})
	fitted := map[string]bool{}
	for _, f := range s.Factors {
		if f.Key == "" || !f.Fitted {
			continue
		}
		fitted[f.Key] = true
		digits := func(v float64) string { return strconv.FormatFloat(v, 'f', decimalsOf(f.Unit), 64) }
		value := max(f.Value, least(f.Key))
		w.Write([]string{f.Key, digits(value), f.Unit, digits(max(f.Low, least(f.Key))), digits(f.High), "shop",
			Guard(fmt.Sprintf("%d records of %s, 95 %% interval", f.Records, job.List.File)), "was " + strconv.FormatFloat(f.Planned, 'g', 4, 64)})
	}
	for _, v := range job.Shop.Values {
		if v.Own() && !fitted[v.Key] {
			low, high := "", ""
			if v.Low != 0 || v.High != 0 {
				low, high = strconv.FormatFloat(v.Low, 'g', -1, 64), strconv.FormatFloat(v.High, 'g', -1, 64)
			}
			w.Write([]string{Guard(v.Key), Guard(v.Text), Guard(v.Unit), low, high, Guard(v.Basis), Guard(v.Source), Guard(v.Note)})
		}
	}
	w.Flush()
	return out.Bytes(), w.Error()
}

// least is the smallest value that a shop value may take.
func least(key string) float64 {
	if key == "operating_factor" {
		return 0.01
	}
	return 0
}

func decimalsOf(unit string) int {
	switch unit {
	case "mm":
		return 2
	case "%":
		return 1
	}
	return 3
}
