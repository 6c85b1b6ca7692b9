package joint

import "seamtally/tables"

// dialect is what makes one kind of list different from another where rows and
// headers are sorted: a joint list and a cut list are read by the same machinery.
type dialect struct {
	headers  []tables.Header
	name     string   // key of the column that names the rows
	core     []string // a header names at least two of these
	figures  []string // columns of which a row with none filled is a title
	looks    []string // columns that say that a row without a name is one all the same
	measures []string // columns whose texts show how the list writes numbers
	lacks    []string // columns that every row needs
	one, all string   // "joint", "joints"
	list     string   // "joint list"
	hint     string   // where no header is found
	enough   string   // which columns are enough
	welds    bool     // a header may name a weld beside what it says: "weld length"
	fits     func(key, text string) (fits, known bool)
}

func jointDialect(set *tables.Set) dialect {
	return dialect{
		headers: set.Headers, name: "mark",
		core:     []string{"mark", "length", "size", "t1", "kind"},
		figures:  []string{"length", "size", "t1", "t2", "qty", "stitch", "kind"},
		looks:    []string{"size", "t1", "kind", "position", "material"},
		measures: []string{"length", "size", "t1", "t2", "gap", "root_face", "depth", "radius", "angle"},
		lacks:    []string{"mark", "length"},
		enough:   "four columns are enough: mark, length, size, thickness",
		one:      "joint", all: "joints", list: "joint list", welds: true,
		hint: `put a row with the words mark, length, size and thickness above the joints; the command "seamtally starter" writes a list to begin from`,
	}
}
