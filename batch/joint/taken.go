package joint

import (
	"iter"

	"seamtally/batch/finding"
)

// Taken is what was assumed alike for some joints.
type Taken struct {
	Assumption       // of the first of them; Value and Why are of all of them
	Joints     []int // as they were numbered
}

// fewValues is how many values of one kind are named.
const fewValues = 6

// TakenAlike gathers what was assumed for numbered joints, in the order in which it
// first turns up. Assumptions of one kin are told together, with their values.
func TakenAlike(all iter.Seq2[int, Assumption]) []Taken {
	type kin struct{ key, what, basis string }
	at := map[kin]int{}
	var out []Taken
	var values [][]string
	type told struct {
		group int
		value string
	}
	seen := map[told]bool{}
	for i, a := range all {
		k := kin{a.Key, a.Kin, a.Basis}
		if a.Kin == "" {
			k.what = a.Value + "\x00" + a.Why
		}
		n, there := at[k]
		if !there {
			n = len(out)
			at[k] = n
			out, values = append(out, Taken{Assumption: a}), append(values, nil)
		}
		out[n].Joints = append(out[n].Joints, i)
		if one := (told{n, a.Value}); !seen[one] {
			seen[one] = true
			values[n] = append(values[n], a.Value)
		}
		if a.Why != out[n].Why {
			out[n].Why = a.Kin
		}
	}
	for n := range out {
		out[n].Value = finding.Few(values[n], fewValues)
	}
	return out
}
