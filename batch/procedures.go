package batch

import (
	"path/filepath"
	"slices"

	"seamtally/batch/finding"
	"seamtally/batch/list"
	"seamtally/batch/plan"
	"seamtally/batch/procedure"
	"seamtally/batch/rates"
	"seamtally/tables"
)

// readProcedures takes the shop's procedures from the tables folder and from the
// shop file. A mistake among them stops the job like one among the shop values:
// a joint must not be planned as if its procedure did not bind it.
func (t *tools) readProcedures(files *tables.Files, j *Job) error {
	text, own, err := files.Bytes("procedures")
	if err != nil {
		return err
	}
	var sources [][]procedure.Row
	t.reader = procedure.NewReader(t.set)
	if own {
		name := filepath.Join(j.Tables, "procedures.csv")
		src, _, err := list.Read(name, text)
		if err != nil {
			return err
		}
		rows, _, problems := t.reader.Read(src, procedure.Options{From: "table procedures.csv", Table: true, Always: true})
		sources, t.said = append(sources, rows), append(t.said, problems...)
		t.stated = statedOf(rows, "table procedures.csv")
	}
	if t.file != nil {
		from := "shop file " + filepath.Base(t.file.File)
		rows, found, problems := t.reader.Read(t.file, procedure.Options{From: from, Inches: j.Inches, ArcEnergy: j.Looks.Codes == "aws"})
		sources, t.said, t.procedures = append(sources, rows), append(t.said, problems...), found
		t.stated = append(t.stated, statedOf(rows, from)...)
	}
	var twice []finding.Problem
	t.set.Procedures, twice = procedure.Join(sources...)
	t.said = append(t.said, twice...)
	return nil
}

// statedOf words procedures as shop values, so that every output that shows what
// the shop states shows them too.
func statedOf(rows []procedure.Row, from string) []rates.Value {
	var out []rates.Value
	for _, row := range rows {
		if row.Wrong {
			continue
		}
		p := &row.Procedure
		out = append(out, rates.Value{Key: tables.ProcedureValue + p.Number, Text: plan.ProcedureText(p), Basis: p.Basis, Source: p.Source, Note: p.Note, From: from})
	}
	return out
}

// withProcedures adds what is known of procedures to a shop and to what reading it
// had to say. A shop file that holds procedures need not hold values.
func (t *tools) withProcedures(shop *rates.Shop, problems []finding.Problem) []finding.Problem {
	if t.procedures {
		problems = slices.DeleteFunc(problems, func(p finding.Problem) bool {
			return p.Code == rates.NoColumns && p.Level == finding.Error
		})
	}
	shop.Values = append(shop.Values, t.stated...)
	return append(problems, t.said...)
}

// strayProcedures says that a sheet of procedures in a list's own workbook is not
// read: a joint must not seem to be bound by it.
func (t *tools) strayProcedures(src *list.Source) []finding.Problem {
	if src.Format == list.CSV || t.file != nil && t.file.SHA256 == src.SHA256 {
		return nil
	}
	for i := range src.Sheets {
		if t.reader.Holds(&src.Sheets[i]) {
			return []finding.Problem{{Place: finding.Place{File: src.File, Sheet: src.Sheets[i].Name}, Level: finding.Warning, Code: "procedures-not-read",
				Text: "procedures in the workbook of a list are not read, and bind nothing", Hint: "give the workbook that holds them as --shop; it may be this one"}}
		}
	}
	return nil
}
