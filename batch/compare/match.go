package compare

import "seamtally/batch/plan"

// name is what a joint is known by in both lists. The nth of several joints with
// one name is its own.
type name struct {
	assembly, mark string
	nth            int
}

// match finds for each joint of the new list the one of the old list that it was,
// -1 for none: first by assembly and mark, then by the mark alone among those
// left over, so that a joint moved to another assembly is still the same.
func match(old, new []plan.Plan) []int {
	pairs := make([]int, len(new))
	for k := range pairs {
		pairs[k] = -1
	}
	taken := make([]bool, len(old))
	for _, byAssembly := range []bool{true, false} {
		free := map[name]int{}
		count := map[name]int{}
		for i := range old {
			if !taken[i] {
				free[next(count, &old[i], byAssembly)] = i
			}
		}
		count = map[name]int{}
		for k := range new {
			if pairs[k] >= 0 {
				continue
			}
			if i, ok := free[next(count, &new[k], byAssembly)]; ok {
				pairs[k], taken[i] = i, true
			}
		}
	}
	return pairs
}

// next returns the name of the next joint so called.
func next(count map[name]int, p *plan.Plan, byAssembly bool) name {
	n := name{mark: p.Joint.Mark}
	if byAssembly {
		n.assembly = p.Joint.Assembly
	}
	count[n]++
	n.nth = count[n]
	return n
}
