package tables

// Settings are the tables that the planner turns into settings.
type Settings struct {
	Windows    []Window
	Voltages   []VoltLine
	Anchors    []Anchor
	Travel     []Travel
	Beads      []Bead
	SinglePass []SinglePass
	Flows      []Flow
	Stickouts  []Stickout
	Technique  []Technique
	Planning   []Planning
	Processes  []ProcessWord
	CheckRules []CheckRule
}

func loadSettings(f *Files) (Settings, error) {
	var s Settings
	var errs [12]error
	s.Windows, errs[0] = Rows[Window](f, "windows")
	s.Voltages, errs[1] = Rows[VoltLine](f, "voltages")
	s.Anchors, errs[2] = Rows[Anchor](f, "anchors")
	s.Travel, errs[3] = Rows[Travel](f, "travel")
	s.SinglePass, errs[4] = Rows[SinglePass](f, "singlepass")
	s.Flows, errs[5] = Rows[Flow](f, "flows")
	s.Stickouts, errs[6] = Rows[Stickout](f, "stickouts")
	s.Technique, errs[7] = Rows[Technique](f, "technique")
	s.Planning, errs[8] = Rows[Planning](f, "planning")
	s.Processes, errs[9] = Rows[ProcessWord](f, "processes")
	s.CheckRules, errs[10] = Rows[CheckRule](f, "check_rules")
	s.Beads, errs[11] = Rows[Bead](f, "beads")
	for _, err := range errs {
		if err != nil {
			return Settings{}, err
		}
	}
	return s, nil
}
