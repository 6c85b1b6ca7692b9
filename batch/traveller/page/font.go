package page

import (
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the embedded fonts.
type Face uint8

// The faces.
const (
	Regular Face = iota
	Bold
	Mono
)

// Faces lists all faces.
var Faces = []Face{Regular, Bold, Mono}

// String returns the name that the document uses for the face.
func (f Face) String() string { return [...]string{"regular", "bold", "mono"}[f] }

// TTF returns the bytes of the face's font file.
func (f Face) TTF() []byte {
	return [...][]byte{goregular.TTF, gobold.TTF, gomono.TTF}[f]
}

// lastRune bounds the part of Unicode whose widths are read. Beyond it the
// fonts have only the replacement character and ligatures.
const lastRune = 0x2fff

// MMPerPoint converts type sizes: 72 points are one inch.
const MMPerPoint = 25.4 / 72

// widths holds the advance of every rune a face has, in thousandths of the
// type size, rounded as the PDF will state them; -1 where the face has no glyph.
var widths = sync.OnceValue(func() (all [3][]int16) {
	for _, f := range Faces {
		all[f] = readWidths(f.TTF())
	}
	return all
})

func readWidths(ttf []byte) []int16 {
	out := make([]int16, lastRune+1)
	for i := range out {
		out[i] = -1
	}
	parsed, err := sfnt.Parse(ttf)
	if err != nil {
		return out
	}
	var buf sfnt.Buffer
	upem := fixed.Int26_6(parsed.UnitsPerEm())
	for r := rune(0x20); r <= lastRune; r++ {
		glyph, err := parsed.GlyphIndex(&buf, r)
		if err != nil || glyph == 0 {
			continue
		}
		adv, err := parsed.GlyphAdvance(&buf, glyph, upem<<6, font.HintingNone)
		if err != nil {
			continue
		}
		out[r] = int16(math.Round(float64(adv) / 64 * 1000 / float64(upem)))
	}
	return out
}

// Has tells whether the face has a glyph for the rune.
func (f Face) Has(r rune) bool {
	return r >= 0x20 && r <= lastRune && widths()[f][r] >= 0
}

// Width returns the width of a text in millimetres. The text must be clean.
func (s Style) Width(text string) float64 {
	table, sum := widths()[s.Face], 0
	for _, r := range text {
		if r <= lastRune && table[r] >= 0 {
			sum += int(table[r])
		} else {
			sum += 1000
		}
	}
	return float64(sum) / 1000 * s.Size * MMPerPoint
}

// Ascent and Descent are the extent of a line above and below its baseline, in
// millimetres: capitals with accents, and the tails of g and p.
func (s Style) Ascent() float64 { return 0.76 * s.Size * MMPerPoint }

// Descent is the extent below the baseline.
func (s Style) Descent() float64 { return 0.21 * s.Size * MMPerPoint }

// Leading is the distance between two baselines.
func (s Style) Leading() float64 { return 1.2 * s.Size * MMPerPoint }

// At returns the style in another size.
func (s Style) At(size float64) Style { s.Size = size; return s }
