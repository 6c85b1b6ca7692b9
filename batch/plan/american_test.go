package plan

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
)

// Under the American codes no sentence of a plan names a position or a wire as ISO does.
func TestAmericanNames(t *testing.T) {
	set, shop := world(t)
	for _, c := range []struct {
		j    joint.Joint
		says []string
	}{
		{filletJoint(8, 10, "PD"), []string{"4F", "ER70S-6"}},
		{changed(filletJoint(6, 10, "PB"), func(j *joint.Joint) { j.Wire = "ER308L 1.0" }), []string{"ER308LSi is asked for"}},
		{changed(buttJoint(joint.SingleV, 12, "PF"), func(j *joint.Joint) { j.Wire = "E71T-1 1.2" }), []string{"E71T-1M/-1C leaves a slag"}},
	} {
		plans := Joints([]joint.Joint{c.j}, set, shop, Options{Codes: "aws"})
		American(plans, set)
		var all []string
		for _, k := range plans[0].Checks {
			all = append(all, k.Text, k.Args)
		}
		text := strings.Join(all, "\n")
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in %s", c.j.Kind, want, text)
			}
		}
		for _, iso := range []string{"PD", "PF", "G3Si1", "T 46 2 P", "G 19 9"} {
			if strings.Contains(text, iso) {
				t.Errorf("%s: %q stands in %s", c.j.Kind, iso, text)
			}
		}
	}
}
