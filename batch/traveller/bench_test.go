package traveller

import (
	"fmt"
	"testing"

	"seamtally/batch/joint"
	"seamtally/batch/units"
)

// manySetups is a job whose every joint has a sheet of its own.
func manySetups(n int) []joint.Joint {
	joints := make([]joint.Joint, n)
	for i := range joints {
		joints[i] = leg(fmt.Sprintf("W-%05d", i), 5+units.MM(i%7)+units.MM(i)/1e4, 12, 12+units.MM(i)/1e3, 500, "PB")
		joints[i].Assembly = fmt.Sprintf("A-%02d", i%20)
	}
	return joints
}

func BenchmarkBuild1000(b *testing.B) {
	job := jobOf(b, manySetups(1000), metric)
	doc, err := Model(job, Options{})
	must(b, err)
	for b.Loop() {
		_, err = Build(job, Options{})
		must(b, err)
	}
	b.ReportMetric(float64(len(doc.Pages)*b.N)/b.Elapsed().Seconds(), "pages/s")
}
