package joint

import (
	"regexp"
	"strconv"
	"strings"

	"seamtally/batch/finding"
	"seamtally/batch/units"
)

// squareCorner is the mitre of two tubes that meet at a right angle, in degrees off a
// square cut, as a saw is set.
const squareCorner = 45

// widestMitre is the mitre above which a tube is cut and welded otherwise.
const widestMitre = 60

var reDegrees = regexp.MustCompile(`(\d+(?:[.,]\d+)?) ?(?:°|deg\w*)?`)

// mitred reads a length that says that the seam goes all round the mitred end of a
// tube: "all round mitre 45", "mitred 30°", "mitre". False: it says nothing of a mitre.
func (w *row) mitred(text string, c *column) bool {
	words, degrees := text, ""
	if m := reDegrees.FindStringSubmatch(text); m != nil {
		words, degrees = strings.Replace(text, m[0], " ", 1), strings.Replace(m[1], ",", ".", 1)
	}
	if !w.saysMitre(strings.Fields(strings.NewReplacer(",", " ", ";", " ", "-", " ").Replace(words))) {
		return false
	}
	w.joint.AllRound, w.joint.Mitre = true, squareCorner
	if degrees == "" {
		w.assume("mitre", "45°", "blank: the two tubes meet at a right angle", "common-practice")
		return true
	}
	v, err := strconv.ParseFloat(degrees, 64)
	if err != nil || v <= 0 || v > widestMitre {
		w.say(finding.Error, c, "bad-mitre", text, "no saw cuts this mitre: the angle counts from a square cut, as the saw is set", "more than 0 and at most 60 degrees, such as mitre 45", "correct the angle, or write the length of the seam")
		return true
	}
	w.joint.Mitre = units.Degree(v)
	return true
}

// saysMitre tells whether words say "mitre", alone or with those for all round.
func (w *row) saysMitre(words []string) bool {
	is := func(use string, part []string) bool {
		_, ok := w.word(use, strings.Join(part, " "))
		return ok
	}
	for i := range words {
		for k := i + 1; k <= len(words); k++ {
			others := append(words[:i:i], words[k:]...)
			if is("mitre", words[i:k]) && (len(others) == 0 || is("allround", others)) {
				return true
			}
		}
	}
	return false
}
