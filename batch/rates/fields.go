package rates

import (
	"slices"
	"strings"

	"seamtally/batch/units"
)

// field is a shop value that is one number: the range in which it can be meant,
// and where it is kept. The range is ours and wide: it catches slips such as 30
// for 0.30, it does not judge the shop.
type field struct {
	key      string
	min, max float64
	put      func(*Shop, float64)
}

// fields are all single numbers, in the order of the shop table.
var fields = []field{
	{"overweld_mm", 0, 10, func(s *Shop, v float64) { s.Overweld = units.MM(v) }},
	{"convexity", 0, 0.5, func(s *Shop, v float64) { s.Convexity = v }},
	{"cap_height_mm", 0, 10, func(s *Shop, v float64) { s.CapHeight = units.MM(v) }},
	{"root_height_mm", 0, 10, func(s *Shop, v float64) { s.RootHeight = units.MM(v) }},
	{"cap_share", 0, 10, func(s *Shop, v float64) { s.CapShare = v }},
	{"root_share", 0, 10, func(s *Shop, v float64) { s.RootShare = v }},
	{"gap_mm", 0, 10, func(s *Shop, v float64) { s.FitGap = units.MM(v) }},
	{"waste_pct", 0, 50, func(s *Shop, v float64) { s.WastePct = v }},
	{"preflow_s", 0, 60, func(s *Shop, v float64) { s.Preflow = units.Second(v) }},
	{"postflow_s", 0, 60, func(s *Shop, v float64) { s.Postflow = units.Second(v) }},
	{"seam_starts_per_m", 0, 100, func(s *Shop, v float64) { s.SeamStartsPerM = v }},
	{"operating_factor", 0.02, 1, func(s *Shop, v float64) { s.OperatingFactor = v }},
	{"joint_min", 0, 10000, func(s *Shop, v float64) { s.JointMin = units.Minute(v) }},
	{"fitup_min_m", 0, 1000, func(s *Shop, v float64) { s.FitupMinM = v }},
	{"clean_min_m", 0, 1000, func(s *Shop, v float64) { s.CleanMinM = v }},
	{"slag_min_m", 0, 60, func(s *Shop, v float64) { s.SlagMinM = v }},
	{"between_pass_min", 0, 1000, func(s *Shop, v float64) { s.BetweenPassMin = units.Minute(v) }},
	{"change_min", 0, 1000, func(s *Shop, v float64) { s.ChangeMin = units.Minute(v) }},
	{"site_factor", 0.5, 20, func(s *Shop, v float64) { s.SiteFactor = v }},
	{"rework_pct", 0, 100, func(s *Shop, v float64) { s.ReworkPct = v }},
	{"labour_rate", 0, 1e7, func(s *Shop, v float64) { s.LabourRate = units.Money(v) }},
	{"overhead_pct", 0, 1000, func(s *Shop, v float64) { s.OverheadPct = v }},
	{"margin_pct", 0, 95, func(s *Shop, v float64) { s.MarginPct = v }},
	{"power_price", 0, 1e5, func(s *Shop, v float64) { s.PowerPrice = units.Money(v) }},
	{"source_efficiency", 0.2, 1, func(s *Shop, v float64) { s.SourceEfficiency = v }},
	{"idle_w", 0, 5000, func(s *Shop, v float64) { s.IdleW = v }},
	{"tip_price", 0, 1e6, func(s *Shop, v float64) { s.TipPrice = units.Money(v) }},
	{"saw_kerf_mm", 0, 20, func(s *Shop, v float64) { s.SawKerf = units.MM(v) }},
	{"end_loss_mm", 0, 1500, func(s *Shop, v float64) { s.EndLoss = units.MM(v) }},
	{"plate_waste_pct", 0, 200, func(s *Shop, v float64) { s.PlateWastePct = v }},
	{"tip_life_h", 0.05, 1000, func(s *Shop, v float64) { s.TipLifeH = v }},
}

// family is a shop value of which there is one for each wire, gas, transfer
// mode or steel: the key is the family, a dot and the name.
type family struct {
	name     string
	unit     string
	min, max float64
	of       string // "wire", "gas", "transfer", "steel", "machine" or "metal"
}

var families = []family{
	{"wire_price", "money/kg", 0, 1e7, "wire"},
	{"spool_kg", "kg", 0.1, 2000, "wire"},
	{"on_hand_kg", "kg", 0, 1e6, "wire"},
	{"cylinder_price", "money", 0, 1e8, "gas"},
	{"cylinder_l", "l", 50, 2e6, "gas"},
	{"on_hand_l", "l", 0, 1e9, "gas"},
	{"spatter_min_m", "min/m", 0, 60, "transfer"},
	{"cet", "", 0.05, 1, "steel"},
	{"cev", "", 0.05, 1.5, "steel"},
	{"hydrogen", "ml/100 g", 1, 20, "wire"},
	{"machine_price", "money", 0, 1e8, "machine"},
	{"material_price", "money/kg", 0, 1e7, "metal"},
}

// words are the shop values that are words.
var words = []string{"currency", "size_means", "missing_size", "default_material", "choose", "preheat_method", "stock_wires", "stock_gases", "machines",
	"stock_hollow", "stock_beam", "stock_channel", "stock_angle", "stock_flat", "stock_bar"}

// transfers are the modes of metal transfer as keys spell them.
var transfers = []string{"short_arc", "globular", "spray", "pulse"}

func fieldOf(key string) (field, bool) {
	for _, f := range fields {
		if f.key == key {
			return f, true
		}
	}
	return field{}, false
}

func familyOf(key string) (f family, name string, ok bool) {
	head, name, found := strings.Cut(key, ".")
	if !found {
		return family{}, "", false
	}
	for _, f := range families {
		if f.name == strings.ToLower(strings.TrimSpace(head)) {
			return f, strings.TrimSpace(name), true
		}
	}
	return family{}, "", false
}

func isFamily(key string) bool {
	return slices.ContainsFunc(families, func(f family) bool { return f.name == key })
}

func isWord(key string) bool {
	for _, w := range words {
		if w == key {
			return true
		}
	}
	return false
}
