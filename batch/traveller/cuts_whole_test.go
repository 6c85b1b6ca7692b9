package traveller

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/list"
	"seamtally/batch/parts"
	"seamtally/batch/plan"
	"seamtally/batch/price"
	"seamtally/batch/rates"
	"seamtally/batch/traveller/wrap"
	"seamtally/templates"
)

// cutText and seamText are two lists of one invented platform.
const (
	cutText = `Mark,Section,Material,Length (mm),Qty,Assembly,Note
C1,SHS 100x100x5,S355J2H,2890,12,Column,
C2,UB 203x133x25,S275,4200,8,Deck,
C3,HE 160 A,S235,3150,6,Deck,holes 4x18
D1,CHS 60.3x3.2,S355,1184,8,Brace,
D2,CHS 114.3x5,S355,2500,4,Brace,
B1,PL 12x220,S355,220,12,Column,
B2,PL 8x90,S355,160,36,Deck,
E1,L 50x50x5,S235,640,40,Stair,
E2,FL 60x8,S235,190,60,Stair,
E3,Ø16,S235,880,50,Rail,
E4,W12X26,A992,3000,3,Deck,
E5,HSS4X4X1/4,A500,1500,5,Deck,
E6,IPE 500,S355,14500,1,Deck,
E7,SHS 40x40x3,S235,37,300,Rail,
`
	seamText = `mark,assembly,qty,kind,length (mm),size,part1,part2,angle
K1,Brace,8,fillet,all round,a4,D1,D2,60
K2,Brace,8,fillet,all round,a4,D1,CHS 168.3x6,90
W1,Column,12,fillet,all round,a5,C1,B1,
W2,Deck,6,single V,130,,B1,B1,60
`
)

// bothLists takes two lists all the way to a priced job.
func bothLists(t testing.TB, cut, seams string, opts price.Options) *price.Job {
	t.Helper()
	set, err := builtIn()
	must(t, err)
	shop, err := rates.Default(set)
	must(t, err)
	src, _, err := list.Read("cut.csv", []byte(cut))
	must(t, err)
	cutList, err := parts.NewReader(set).Understand(src, parts.Options{})
	must(t, err)
	var joints joint.List
	if seams != "" {
		src, _, err = list.Read("frame.csv", []byte(seams))
		must(t, err)
		read, err := joint.Understand(src, joint.Options{SizeMeans: shop.SizeMeans, MissingSize: shop.MissingSize}, set)
		must(t, err)
		joints = *read
		joints.Joints = parts.NewIndex(cutList).Lend(joints.Joints)
	}
	plans := plan.Joints(joints.Joints, set, &shop, plan.Options{Codes: opts.Codes})
	job := price.Price(joints, plans, shop, nil, opts)
	job.Version, job.TablesEdition = "0.1", "0123abcd"
	job.Parts, _ = parts.Work(cutList, plans, set, &shop)
	return &job
}

// TestTwoListsOnPaper: lists as people write them, all the way to faultless pages;
// each part of the cut list stands in one row of them.
func TestTwoListsOnPaper(t *testing.T) {
	for name, opts := range looks() {
		for _, seams := range []string{"", seamText} {
			doc := faultless(t, bothLists(t, cutText, seams, opts))
			rows := map[string]int{}
			for _, p := range doc.Pages {
				for id, box := range p.Boxes {
					if box.Name != "pieces row" && box.Name != "plates row" {
						continue
					}
					for _, text := range p.Texts {
						if int(text.Box) == id {
							rows[text.S]++
							break
						}
					}
				}
			}
			for _, line := range strings.Split(strings.TrimSpace(cutText), "\n")[1:] {
				mark, _, _ := strings.Cut(line, ",")
				if rows[mark] != 1 {
					t.Errorf("%s: %s stands in %d rows", name, mark, rows[mark])
				}
			}
			if seams != "" && (count(doc, "saddle Ø") == 0 || count(doc, "bevel") == 0) {
				t.Errorf("%s: the pages tell no saddle or no bevel", name)
			}
		}
	}
}

// TestLookAtTwoLists writes the pages of two lists into the folder named by
// SEAMTALLY_LOOK.
func TestLookAtTwoLists(t *testing.T) {
	dir := os.Getenv("SEAMTALLY_LOOK")
	if dir == "" {
		t.Skip("set SEAMTALLY_LOOK to a folder to look at the pages")
	}
	for _, lang := range templates.Languages() {
		opts := metric
		opts.Lang = lang
		if lang == "en" {
			opts.US, opts.Paper = true, "letter"
		}
		pdf, err := Build(bothLists(t, cutText, seamText, opts), Options{})
		must(t, err)
		must(t, os.WriteFile(filepath.Join(dir, "two-"+lang+".pdf"), pdf, 0o644))
	}
}

// TestSaddlesNameTheirTemplates: each end that is cut by a template names the one that
// bears the mark of its joint, in its row and on the cutting page.
func TestSaddlesNameTheirTemplates(t *testing.T) {
	job := bothLists(t, cutText, seamText, price.Options{})
	all, named := wrap.Of(job), 0
	for i := range job.Parts.Results {
		for _, e := range job.Parts.Results[i].Ends {
			if e.Template == 0 {
				continue
			}
			named++
			if e.Template > len(all) || !slices.Contains(all[e.Template-1].Marks, e.Joint) {
				t.Errorf("%s names template %d of %d", e.Joint, e.Template, len(all))
			}
		}
	}
	if named != 2 || len(all) != 2 {
		t.Errorf("%d ends named, %d templates, want 2 and 2", named, len(all))
	}
	doc, text := faultless(t, job), ""
	for _, p := range doc.Pages {
		for _, item := range p.Texts {
			text += item.S + "\n"
		}
	}
	for _, want := range []string{"saddle Ø114.3, 60°, template 1", "template 2"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q stands on no page", want)
		}
	}
}

// TestMitredCornersAreCut: a frame of two tubes each way has both ends of all four cut
// aslant, whichever of the two a joint names first; round ones by a template.
func TestMitredCornersAreCut(t *testing.T) {
	for section, round := range map[string]bool{"RHS 100x50x4": false, "CHS 60.3x4": true} {
		job := bothLists(t, "Mark,Section,Material,Length (mm),Qty\nA,"+section+",S355,1200,2\nB,"+section+",S355,800,2\n",
			"mark,qty,kind,length (mm),part1,part2\nK,4,square butt,all round mitre 45,A,B\n", price.Options{})
		for i := range job.Parts.Results {
			ends := job.Parts.Results[i].Ends
			if len(ends) != 1 || ends[0].Count != 4 || ends[0].Angle != 45 || ends[0].Copes || (ends[0].Template == 1) != round {
				t.Errorf("%s: ends %+v", section, ends)
			}
		}
		if all := wrap.Of(job); round != (len(all) == 1) || round && all[0].Pieces != 8 {
			t.Errorf("%s: templates %+v", section, all)
		}
		want, found := "both ends mitre 45°", 0
		if round {
			want += ", template 1"
		}
		for _, p := range faultless(t, job).Pages {
			for _, item := range p.Texts {
				if item.S == want {
					found++
				}
			}
		}
		if found != 2 {
			t.Errorf("%s: %q stands %d times, want 2", section, want, found)
		}
	}
}
