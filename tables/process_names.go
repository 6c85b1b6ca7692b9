package tables

// ProcessName is the American letters of a process beside its ISO 4063 number.
type ProcessName struct {
	Process string `csv:"process"`
	AWS     string `csv:"aws"`
	Origin
}

// AWSProcess returns the American letters of a process, "" where the table has none.
func (f *Facts) AWSProcess(process string) string {
	for _, n := range f.ProcessNames {
		if n.Process == process {
			return n.AWS
		}
	}
	return ""
}
