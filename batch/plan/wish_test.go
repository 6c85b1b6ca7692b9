package plan

import (
	"testing"

	"seamtally/batch/joint"
)

// A bare diameter asks for a wire of that diameter for the joint's own metal, in
// every position, and never for another metal.
func TestABareDiameterKeepsTheMetal(t *testing.T) {
	set, shop := world(t)
	metals := map[string]string{"S235": "carbon steel", "304L": "stainless", "5083": "aluminium"}
	for material, metal := range metals {
		for _, position := range []string{"PA", "PB", "PC", "PD", "PE", "PF", "PG"} {
			for _, dia := range []string{"0.8", "1.0", "1.2"} {
				j := joint.Joint{
					Mark: "W", Qty: 1, Length: 500,
					Detail: &joint.Detail{
						Kind: joint.Lap, Sides: 1, T1: 2, T2: 2, Material: material, Wire: dia, Position: position, Where: joint.Shop, Size: joint.Size{Means: joint.Leg, A: 2},
					},
				}
				p := Joints([]joint.Joint{j}, set, shop, Options{})[0]
				if !p.Settings {
					continue
				}
				for _, w := range set.Wires {
					if w.Filler == p.Filler && w.Metal != metal {
						t.Errorf("%s in %s with %s mm: planned with %s", material, position, dia, p.Filler)
						break
					}
				}
			}
		}
	}
}
