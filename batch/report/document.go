package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"

	"seamtally/batch/finding"
	"seamtally/batch/price"
	"seamtally/batch/rates"
)

// Schema is the version of the JSON documents. It changes when a name in them does.
const Schema = "seamtally/1"

// document is the result document. The order of its fields is the order printed.
type document struct {
	Schema   string    `json:"schema"`
	Version  string    `json:"version"`
	Tables   string    `json:"tables"`
	List     source    `json:"list"`
	Shop     shop      `json:"shop"`
	Joints   []row     `json:"joints"`
	*cuts              // where there is a cut list
	Totals   totals    `json:"totals"`
	Buy      []buyLine `json:"buy"`
	Problems []problem `json:"problems"`
}

type source struct {
	File   string `json:"file"`
	Sheet  string `json:"sheet"`
	SHA256 string `json:"sha256"`
}

// JSON returns the result document on one line.
func JSON(job *price.Job) ([]byte, error) {
	doc := document{
		Schema: Schema, Version: job.Version, Tables: job.TablesEdition,
		List: source{job.List.File, job.List.Sheet, job.List.SHA256},
		Shop: job.Shop.Values, Joints: []row{}, Totals: newTotals(&job.Totals), Buy: newBuy(job.Buy), Problems: newProblems(job.Problems),
	}
	doc.cuts, doc.Totals.partTotals = newCuts(job.Parts), newPartTotals(job.Parts)
	for i := range job.Plans {
		r := newRow(&job.Plans[i])
		r.Runs = newRuns(&job.Plans[i])
		doc.Joints = append(doc.Joints, r)
	}
	return line(doc)
}

// line encodes a value on one line and leaves < > & as they are. The second set of
// control characters is escaped as the first is: a terminal obeys both.
func line(value any) ([]byte, error) {
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(value); err != nil {
		return nil, err
	}
	return highControls.ReplaceAllFunc(out.Bytes(), func(c []byte) []byte { return fmt.Appendf(nil, `\u00%02x`, c[1]) }), nil
}

// highControls are U+0080 to U+009F in UTF-8; in a document of ours they stand in
// texts only.
var highControls = regexp.MustCompile(`[\x{80}-\x{9f}]`)

// shop is every shop value by its key, in the order of the shop table.
type shop []rates.Value

type shopValue struct {
	Value  any    `json:"value"`
	Unit   string `json:"unit"`
	Basis  string `json:"basis"`
	Source string `json:"source"`
	From   string `json:"from"`
}

// MarshalJSON keeps the order, which a map would lose.
func (s shop) MarshalJSON() ([]byte, error) {
	var out bytes.Buffer
	for i, v := range s {
		out.WriteByte("{,"[min(i, 1)])
		key, err := json.Marshal(v.Key)
		if err != nil {
			return nil, err
		}
		value := shopValue{v.Text, v.Unit, v.Basis, v.Source, v.From}
		if v.IsNum {
			value.Value = of(v.Num, 9)
		}
		text, err := json.Marshal(value)
		if err != nil {
			return nil, err
		}
		out.Write(key)
		out.WriteByte(':')
		out.Write(text)
	}
	if len(s) == 0 {
		out.WriteByte('{')
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}

type problem struct {
	File   string        `json:"file"`
	Sheet  string        `json:"sheet"`
	Row    number        `json:"row"`
	Column string        `json:"column"`
	Header string        `json:"header"`
	Level  finding.Level `json:"level"`
	Code   string        `json:"code"`
	Text   string        `json:"text"`
	Read   string        `json:"read"`
	Want   string        `json:"want"`
	Hint   string        `json:"hint"`
}

func newProblems(list []finding.Problem) []problem {
	out := []problem{}
	for _, p := range list {
		column := ""
		if p.Place.Col > 0 {
			column = finding.ColumnName(p.Place.Col)
		}
		out = append(out, problem{File: p.Place.File, Sheet: p.Place.Sheet, Row: when(p.Place.Row > 0, count(p.Place.Row)), Column: column, Header: p.Place.Header,
			Level: p.Level, Code: p.Code, Text: p.Text, Read: p.Read, Want: p.Want, Hint: p.Hint})
	}
	return out
}

type buyLine struct {
	What      string `json:"what"`
	Name      string `json:"name"`
	Need      number `json:"need"`
	Unit      string `json:"unit"`
	OnHand    number `json:"on_hand"`
	Pack      number `json:"pack"`
	Packs     int    `json:"packs"`
	Remains   number `json:"remains"`
	PackPrice number `json:"pack_price"`
	Cost      number `json:"cost"`
	UsedCost  number `json:"used_cost"`
}

func newBuy(list []price.BuyLine) []buyLine {
	out := []buyLine{}
	for _, b := range list {
		out = append(out, buyLine{What: b.What, Name: b.Name, Need: of(b.Need, price.KgDecimals), Unit: b.Unit, OnHand: of(b.OnHand, price.KgDecimals),
			Pack: positive(b.Pack, price.KgDecimals), Packs: b.Packs, Remains: of(b.Remains, price.KgDecimals),
			PackPrice: of(b.PackPrice, price.MoneyDecimals), Cost: of(b.Cost, price.MoneyDecimals), UsedCost: of(b.UsedCost, price.MoneyDecimals)})
	}
	return out
}
