package parts

import (
	"strings"
	"testing"

	"seamtally/batch/finding"
)

// A material without a price is told at the cell that names it, once, with the other rows
// of it; one that the section names is told at its row.
func TestAMaterialWithoutAPriceIsTold(t *testing.T) {
	_, _, problems := worked(t, "part,section,material,length,qty\nA,SHS 60x60x4,S235,500,1\nB,SHS 60x60x4,cheese,500,1\nC,SHS 60x60x4,Cheese,500,1\nD,SHS 60x60x4,wood,500,1\n")
	var lines []string
	for _, p := range problems {
		if p.Code == "material-price" && p.Level == finding.Warning {
			lines = append(lines, p.Line())
		}
	}
	if len(lines) != 2 || !strings.HasPrefix(lines[0], `cut.csv, cell C3 (material): there is no price for the material "cheese": this part and row 4 are left out of the material cost`) ||
		!strings.HasPrefix(lines[1], `cut.csv, cell C5 (material): there is no price for the material "wood": this part is left out`) || strings.Contains(lines[0], "(read ") {
		t.Errorf("%q", lines)
	}
}
