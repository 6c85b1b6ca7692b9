// Package traveller turns a priced job into the papers of the floor: a cover for
// each assembly and a sheet for each set-up. It lays pages out as a model first;
// drawing the model is another package's business.
package traveller

import (
	"cmp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"

	"seamtally/batch/price"
	"seamtally/batch/traveller/ink"
	"seamtally/batch/traveller/page"
	"seamtally/batch/traveller/picture"
	"seamtally/batch/traveller/setup"
	"seamtally/batch/traveller/show"
	"seamtally/batch/traveller/wrap"
	"seamtally/templates"
)

// Options are what a caller may ask of the traveller beyond the job's own options.
type Options struct {
	Job string // the job's name in the header; blank: the list's title or file name
}

// Build returns the traveller of a job as a PDF file.
func Build(job *price.Job, opt Options) ([]byte, error) {
	doc, err := Model(job, opt)
	if err != nil {
		return nil, err
	}
	return ink.PDF(doc)
}

// Model lays out the traveller of a job without drawing it.
func Model(job *price.Job, opt Options) (*page.Document, error) {
	words, err := wordsOf(job.Opts)
	if err != nil {
		return nil, err
	}
	b := newBuilder(job, opt, words)
	assemblies := setup.Group(job)
	papers := wrap.Of(job)
	if len(assemblies) == 0 && (b.sawSheets() == 0 || len(job.List.Columns) > 0) {
		b.nothing()
	}
	if len(assemblies) > 1 {
		b.index(assemblies, len(papers))
	}
	b.assemblies(assemblies)
	before := len(b.doc.Pages)
	b.wraps(papers)
	b.refs.entry(b.doc.Pages[before:])
	b.refs.fill(b.doc.Pages)
	b.numberPages()
	return b.doc, nil
}

// assemblies lays the assemblies out side by side, each on pages of its own, and
// puts the pages together in the order of the list. What is sawn first comes
// before: behind the cover of a single assembly, else before all of them.
func (b *builder) assemblies(all []setup.Assembly) {
	parts := make([]page.Document, len(all))
	covers := make([]int, len(all))
	var wait sync.WaitGroup
	free := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range all {
		wait.Go(func() {
			free <- struct{}{}
			defer func() { <-free }()
			own := *b
			own.doc = &parts[i]
			own.cover(&all[i])
			covers[i] = len(parts[i].Pages)
			own.sheets(&all[i])
		})
	}
	wait.Wait()
	lacking := false
	for i := range parts {
		lacking = lacking || len(all[i].Stages) > 0 && lacksCures(parts[i].Pages[:covers[i]], parts[i].Pages[covers[i]:])
	}
	level := 0
	if len(all) == 1 {
		level = 1
	}
	saw := b.cuts(level)
	if len(all) == 1 {
		parts[0].Pages = slices.Insert(parts[0].Pages, covers[0], saw...)
	} else {
		b.doc.Pages = append(b.doc.Pages, saw...)
	}
	b.refs.entry(saw)
	for i := range parts {
		b.refs.entry(parts[i].Pages)
		b.doc.Pages = append(b.doc.Pages, parts[i].Pages...)
	}
	if lacking {
		b.knobsPage()
	}
}

// builder carries what every page needs.
type builder struct {
	doc   *page.Document
	job   *price.Job
	words templates.Words
	show  show.Figures
	names price.Names
	pen   picture.Pen
	name  string // of the job
	// remedies are the wording's keys of what the planner says in inches.
	remedies map[string]string

	w, h      float64 // paper
	left      float64
	width     float64 // of the printed area
	top, foot float64 // first and last y of a page's body

	refs *refs // what names the page of something
	saw  saw   // what is cut, by sheets
}

const (
	marginLeft  = 15 // room for punched holes
	marginRight = 10
	marginEdge  = 8
	headHeight  = 15
	footHeight  = 6
)

func newBuilder(job *price.Job, opt Options, words templates.Words) *builder {
	w, h := page.Size(job.Opts.Paper)
	b := &builder{job: job, words: words, show: figuresOf(job.Opts), names: job.Names(), w: w, h: h}
	b.pen = picture.Pen{Words: words, Show: b.show, AWS: job.Opts.Symbols == "aws"}
	b.left, b.width = marginLeft, w-marginLeft-marginRight
	b.top, b.foot = marginEdge+headHeight+3, h-marginEdge-footHeight-1
	b.refs = newRefs()
	if b.show.US {
		b.remedies = imperialRemedies(words)
	}
	if b.name = cmp.Or(opt.Job, job.Opts.Job); b.name == "" {
		file, _ := b.source(nil)
		b.name = stem(file)
	}
	b.doc = &page.Document{
		Title:   page.Clean(words.Say("title", b.name)),
		Subject: page.Clean(words.Say("subject")),
		Date:    job.Opts.Date,
	}
	b.saw = b.dealSaw()
	return b
}

// wordsOf returns the words of the sheets: English on sheets in inches is American.
func wordsOf(o price.Options) (templates.Words, error) {
	words, err := templates.Wording(o.Lang)
	if err != nil || !o.US {
		return words, err
	}
	return words.American()
}

// comma are the languages in whose countries decimals stand behind a comma.
var comma = []string{"de", "es", "pl", "uk"}

// figuresOf chooses how numbers are written: with a comma where the language does, but not
// in inches, because such a sheet lies beside American drawings and dials.
func figuresOf(o price.Options) show.Figures {
	return show.Figures{US: o.US, Comma: !o.US && slices.Contains(comma, o.Lang)}
}

// stem returns a file's name without folders and ending.
func stem(file string) string {
	if i := strings.LastIndexAny(file, `/\`); i >= 0 {
		file = file[i+1:]
	}
	if i := strings.LastIndexByte(file, '.'); i > 0 {
		file = file[:i]
	}
	return file
}

func (b *builder) say(key string, args ...any) string { return b.words.Say(key, args...) }

// phrase returns a sentence of the planner's tables in the language of the sheet;
// one that the wording does not hold stays as it is.
func (b *builder) phrase(text string) string {
	if key := "say." + text; b.words.Has(key) {
		return b.words.Say(key)
	}
	return text
}

// The styles. Labels are grey but dark enough for a poor printer.
var (
	label  = page.Style{Face: page.Regular, Size: 8, Grey: 0.25}
	small  = page.Style{Face: page.Regular, Size: 8}
	body   = page.Style{Face: page.Regular, Size: 9.5}
	strong = page.Style{Face: page.Bold, Size: 9.5}
	title  = page.Style{Face: page.Bold, Size: 11}
)

// numberPages writes the footer of every page.
func (b *builder) numberPages() {
	for i, p := range b.doc.Pages {
		r := page.Rect{X: b.left, Y: p.H - marginEdge - footHeight, W: p.W - marginLeft - marginRight, H: footHeight}
		box := p.Box("footer", r)
		file, hash := b.source(p)
		p.Line(box, r.X, r.Y, r.Right(), r.Y, 0.3, 0)
		p.Write(box, r.X, r.Y+4.2, r.W-32, page.Left, small,
			b.say("foot.from", dash(hash), dash(file), dash(b.job.Version), dash(b.job.TablesEdition)))
		p.Write(box, r.Right()-30, r.Y+4.2, 30, page.Right, small.At(9),
			b.say("foot.page", strconv.Itoa(i+1), strconv.Itoa(len(b.doc.Pages))))
	}
}

// source returns the list that a page was made from, and the start of its hash.
func (b *builder) source(p *page.Page) (file, hash string) {
	file, hash = b.job.List.File, b.job.List.SHA256
	if l := b.job.Parts; l != nil && l.List.File != "" && (b.refs.cuts[p] || file == "") {
		file, hash = l.List.File, l.List.SHA256
	}
	return file, hashPrefix(hash)
}

// nothing makes the one page of a list in which no row could be worked.
func (b *builder) nothing() {
	p := b.newPage(head{sheet: b.say("head.cover")})
	p.Mark(0, b.name)
	box := p.Box("nothing", page.Rect{X: b.left, Y: b.top, W: b.width, H: 40})
	p.Write(box, b.left, b.top+12, b.width, page.Left, title.At(18), b.say("nothing.title"))
	lines := page.Wrap(body, b.say("nothing.text", strconv.Itoa(len(b.job.Problems))), b.width, 4)
	p.Lines(box, b.left, b.top+22, b.width, body, lines)
}
