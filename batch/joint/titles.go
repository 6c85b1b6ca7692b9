package joint

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"seamtally/batch/list"
)

// titles keeps job, drawing and revision from the rows above the header.
func (r *reader) titles(rows []list.Row) {
	for _, row := range rows {
		r.other(row, TitleRow)
		for i, c := range row.Cells {
			label, value, split := strings.Cut(c.Text, ":")
			if (!split || strings.TrimSpace(value) == "") && i+1 < len(row.Cells) {
				value = row.Cells[i+1].Text
			}
			label, value = strings.TrimSpace(label), strings.TrimSpace(value)
			for _, m := range r.header(label) {
				switch {
				case m.key == "drawing" && r.drawing == "":
					r.drawing = value
				case m.key == "rev" && r.rev == "":
					r.rev = value
				}
			}
			r.jobTitle(c.Text, label, value)
		}
	}
	for _, row := range rows {
		for _, c := range row.Cells {
			if m := reRevision.FindStringSubmatch(c.Text); m != nil && r.rev == "" {
				r.rev = m[1]
			}
		}
	}
}

// reRevision finds a revision among other words of a title: "TR-3, Rev. B, 12.11.".
var reRevision = regexp.MustCompile(`(?:^|[\s,;(])(?i:rev(?:ision|isión|\.)?|rew\.?|изм\.?|зм\.?)[\s:.]*([A-Z]\d?|\d{1,2})(?:$|[\s,;)])`)

// jobWords are what people call the job, folded.
var jobWords = foldAll("job", "job name", "project", "contract", "Auftrag", "Auftrags", "Auftragsnummer", "Projekt", "Kommission",
	"zlecenie", "nr zlecenia", "zamówienie", "kontrakt", "obra", "proyecto", "pedido", "заказ", "проект", "объект", "замовлення", "об'єкт", "commessa", "progetto", "affaire", "projet",
	"chantier", "projeto")

// longestJob is how long a name of a job may be: the head of a sheet has no room for a
// sentence.
const longestJob = 40

// jobTitle takes the job's name where a title names it: "Job: 2614", or the word before
// the name in one cell.
func (r *reader) jobTitle(text, label, value string) {
	if r.list.Job != "" {
		return
	}
	name := ""
	for _, w := range jobWords {
		switch rest, ok := strings.CutPrefix(fold(text), w+" "); {
		case withoutNumberSign(fold(label)) == w && value != "":
			name = value
		case ok && !strings.Contains(text, ":") && strings.ContainsAny(rest, "0123456789"): // a word of the trade alone names no job
			name = afterWords(text, len(strings.Fields(w)))
		}
	}
	name, _, _ = strings.Cut(name, ",")
	if name = strings.Join(strings.Fields(name), " "); name != "" && utf8.RuneCountInString(name) <= longestJob {
		r.list.Job = name
	}
}

// withoutNumberSign returns a folded label without the "no" behind it.
func withoutNumberSign(label string) string {
	for _, sign := range []string{" no", " nr", " n", " num", " number", " numer", " nummer"} {
		if short, ok := strings.CutSuffix(label, sign); ok {
			return short
		}
	}
	return label
}

// afterWords returns a text without its first n words.
func afterWords(text string, n int) string {
	fields := strings.Fields(text)
	if n >= len(fields) {
		return ""
	}
	return strings.TrimLeft(strings.Join(fields[n:], " "), "-:–. ")
}
