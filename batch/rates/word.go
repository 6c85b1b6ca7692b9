package rates

import (
	"regexp"
	"slices"
	"strings"

	"seamtally/batch/finding"
)

// choices are the words a shop value may be.
var choices = map[string][]string{
	"size_means": {"leg", "throat"},
	"choose":     {"list", "joint"},

	"preheat_method": {"codes", "cet", "cet-sew", "combined", "category", "none"},
}

// sizeRule is a rule for a missing size: a share of the thinner part.
var sizeRule = regexp.MustCompile(`^(\d+(?:[.,]\d+)?|[.,]\d+)\s*[x*]?\s*t_?min$`)

// takeWord reads a value that is a word or a list of names.
func (s *Shop) takeWord(e entry, key string) []finding.Problem {
	text := strings.Join(strings.Fields(e.text), " ")
	switch key {
	case "currency":
		if len([]rune(text)) > 5 || strings.ContainsAny(text, "0123456789/;,.") {
			return e.problem("shop-word", "the currency is not a short word", "letters such as EUR, or a sign", "write the letters of one currency")
		}
	case "missing_size":
		text = strings.ToLower(text)
		m := sizeRule.FindStringSubmatch(text)
		if m != nil {
			text = strings.Replace(m[1], ",", ".", 1) + " t_min"
		} else if text != "ask" {
			return e.problem("shop-word", "the rule for a missing size is not understood", "ask, or a share of the thinner part such as 0.7 t_min", e.ruleHint())
		}
	case "default_material":
		if text != "ask" && !s.names.metal(text) {
			return e.problem("shop-word", key+" names no metal of the tables", "a grade such as S235 or 304L, or the word ask for none", "write a grade that `seamtally tables materials` names")
		}
	case "stock_wires", "stock_gases", "machines":
		var problems []finding.Problem
		if text, problems = s.stockText(e, key); len(problems) > 0 {
			return problems
		}
	case "stock_hollow", "stock_beam", "stock_channel", "stock_angle", "stock_flat", "stock_bar":
		lengths, bad := barLengths(text)
		if bad != "" {
			return e.problem("shop-word", "the stock lengths are not understood: "+bad, "lengths such as 6000; 12000 or 20 ft; 40 ft", "write each length without a sign between thousands and with its unit (mm, m or ft), parted by ;, such as 1234 mm")
		}
		text = lengthsText(lengths)
	default:
		text = strings.ToLower(text)
		if !slices.Contains(choices[key], text) {
			return e.problem("shop-word", key+" cannot be that word", strings.Join(choices[key], " or "), "write "+strings.Join(choices[key], " or "))
		}
	}
	s.put(e, Value{Key: key, Text: text})
	return nil
}

// stockText reads a list of wires, gases or machines and writes it as the tables
// spell them. Every name that is not known is a problem of its own.
func (s *Shop) stockText(e entry, key string) (string, []finding.Problem) {
	var known []string
	var problems []finding.Problem
	for _, item := range splitStock(e.text) {
		name, problem := s.stockName(e, key, item)
		if problem != nil {
			problems = append(problems, *problem)
		} else if !slices.Contains(known, name) {
			known = append(known, name)
		}
	}
	return strings.Join(known, "; "), problems
}

func splitStock(text string) []string {
	var items []string
	for _, item := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '\n' }) {
		if item = strings.TrimSpace(item); item != "" {
			items = append(items, item)
		}
	}
	return items
}

func (s *Shop) stockName(e entry, key, item string) (string, *finding.Problem) {
	switch key {
	case "stock_gases":
		if gas, ok := s.names.gases[fold(item)]; ok {
			return gas, nil
		}
		return "", unknownName(e.place, "gas", item, s.names.all.gases)
	case "machines":
		if machine, ok := s.names.machines[fold(item)]; ok {
			return machine, nil
		}
		return "", unknownName(e.place, "machine", item, s.names.all.machines)
	}
	filler, dia, ok := s.names.wire(item)
	if !ok {
		return "", unknownName(e.place, "wire", item, s.names.all.fillers)
	}
	if dia == 0 || !s.names.has(filler, dia) {
		var dias []string
		for _, d := range s.names.dias[filler] {
			dias = append(dias, diaText(d))
		}
		text := "the wire " + item + " of the stock is not in the tables with that diameter"
		if dia == 0 {
			text = "the wire " + item + " of the stock is written without its diameter"
		}
		p := e.problem("shop-name", text,
			"class and diameter, such as "+filler+" "+dias[0], "write one of the diameters of "+filler+": "+strings.Join(dias, ", "))
		return "", &p[0]
	}
	return WireName(filler, dia), nil
}
