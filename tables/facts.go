package tables

// Facts are the tables of things that are so whatever the shop prefers: metals,
// wires, gases, melting, preparations, machines, rules.
type Facts struct {
	Densities     []Density
	Wires         []Wire
	Gases         []Gas
	Efficiencies  []Efficiency
	Meltings      []Melting
	MeltingPoints []MeltingPoint
	Materials     []Material
	spelt         [][]spelling // of each material
	FillerChoices []FillerChoice
	HeatKs        []HeatK
	Preps         []Prep
	Machines      []Machine
	Preheats      []PreheatRow
	ShapeFactors  []ShapeFactor
	Hydrogens     []Hydrogen
	HeatLimits    []HeatLimit
	Limits        []SteelLimit
	Combined      []CombinedRow
	Shades        []Shade
	Cautions      []Caution
	Positions     []Position
	ProcessNames  []ProcessName
	Plausibles    []Plausible
	Cleanings     []Cleaning
	GasGroups     []GasGroup
	GasReasons    []GasReason
	FillerNevers  []FillerNever
	Nozzles       []Nozzle
	WireWords     []WireWord
	Qualities     []QualityLimit
	Procedures    []Procedure
	// ProcedureHeaders and ProcedureLimits are for reading the shop's own sheet.
	ProcedureHeaders []ProcedureHeader
	ProcedureLimits  []ProcedureLimit
	Sections         []Section
	HollowSizes      []HollowSize
}

func loadFacts(f *Files) (Facts, error) {
	var facts Facts
	err := firstError(
		into(f, "densities", &facts.Densities),
		into(f, "wires", &facts.Wires),
		into(f, "gases", &facts.Gases),
		into(f, "efficiencies", &facts.Efficiencies),
		into(f, "melting", &facts.Meltings),
		into(f, "melting_points", &facts.MeltingPoints),
		into(f, "materials", &facts.Materials),
		into(f, "filler_choice", &facts.FillerChoices),
		into(f, "heat_k", &facts.HeatKs),
		into(f, "preps", &facts.Preps),
		into(f, "machines", &facts.Machines),
		into(f, "preheat_categories", &facts.Preheats),
		into(f, "shape_factors", &facts.ShapeFactors),
		into(f, "hydrogen", &facts.Hydrogens),
		into(f, "heat_limits", &facts.HeatLimits),
		into(f, "steel_limits", &facts.Limits),
		into(f, "combined_thickness", &facts.Combined),
		into(f, "filter_shades", &facts.Shades),
		into(f, "cautions", &facts.Cautions),
		into(f, "positions", &facts.Positions),
		into(f, "process_names", &facts.ProcessNames),
		into(f, "plausible", &facts.Plausibles),
		into(f, "cleaning", &facts.Cleanings),
		into(f, "gas_groups", &facts.GasGroups),
		into(f, "gas_reasons", &facts.GasReasons),
		into(f, "filler_never", &facts.FillerNevers),
		into(f, "nozzles", &facts.Nozzles),
		into(f, "wire_words", &facts.WireWords),
		into(f, "quality", &facts.Qualities),
		into(f, "procedures", &facts.Procedures),
		into(f, "procedure_headers", &facts.ProcedureHeaders),
		into(f, "procedure_limits", &facts.ProcedureLimits),
		into(f, "sections", &facts.Sections),
		into(f, "hollow_sizes", &facts.HollowSizes),
	)
	facts.spelt = spellings(facts.Materials)
	return facts, err
}

// into loads one table into rows.
func into[T any](f *Files, name string, rows *[]T) error {
	var err error
	*rows, err = Rows[T](f, name)
	return err
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
