package tables

import "strings"

// ProcessWord is a trade's word for a process: the ISO 4063 numbers it may mean
// and the transfer mode, where it names one.
type ProcessWord struct {
	Spellings string `csv:"spellings"` // joined by ";"
	Processes string `csv:"processes"` // joined by blanks
	Transfer  string `csv:"transfer"`
	Wire      string `csv:"wire_process"` // yes, or no for a process that this tool does not plan
	Origin
}

// FindProcess returns the process that a person's words mean.
func (s *Settings) FindProcess(text string) (ProcessWord, bool) {
	key := squeeze(text)
	for _, p := range s.Processes {
		for word := range strings.SplitSeq(p.Spellings, ";") {
			if key != "" && squeeze(word) == key {
				return p, true
			}
		}
	}
	return ProcessWord{}, false
}
