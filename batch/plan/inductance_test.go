package plan

import (
	"strings"
	"testing"

	"seamtally/batch/joint"
)

// A root in short arc below passes in spray is where the inductance does its work: the
// sheet must not say that it has none.
func TestInductanceIsThatOfTheRootInShortArc(t *testing.T) {
	set, shop := world(t)
	j := buttJoint(joint.SingleV, 12, "PA")
	p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
	modes := map[Transfer]bool{}
	for _, r := range p.Runs {
		modes[r.Transfer] = true
	}
	if !modes[ShortArc] || !modes[Spray] {
		t.Fatalf("the joint is not welded in both: %v", modes)
	}
	if strings.HasPrefix(p.Inductance, "no effect") {
		t.Errorf("inductance: %q", p.Inductance)
	}
}
