package traveller

import (
	"os"
	"path/filepath"
	"testing"

	"seamtally/batch/price"
	"seamtally/templates"
)

// TestLook writes the travellers of every sample and of every kind of joint, in
// every language, on both papers and with both ways of symbols, into the folder
// named by SEAMTALLY_LOOK, for people to look at.
func TestLook(t *testing.T) {
	dir := os.Getenv("SEAMTALLY_LOOK")
	if dir == "" {
		t.Skip("set SEAMTALLY_LOOK to a folder to look at the travellers")
	}
	for _, lang := range templates.Languages() {
		iso, aws := metric, metric
		iso.Lang, aws.Lang = lang, lang
		aws.US, aws.Paper, aws.Symbols = true, "letter", "aws"
		for look, opts := range map[string]price.Options{"a4-iso": iso, "letter-aws": aws} {
			jobs := map[string]*price.Job{"kinds": jobOf(t, everyKind(), opts)}
			for _, path := range samples {
				jobs[filepath.Base(filepath.Dir(path))] = sample(t, path, opts)
			}
			for name, job := range jobs {
				pdf, err := Build(job, Options{})
				must(t, err)
				must(t, os.WriteFile(filepath.Join(dir, name+"-"+lang+"-"+look+".pdf"), pdf, 0o644))
			}
		}
	}
}
