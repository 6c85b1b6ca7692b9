package joint

import "strings"

// Words that a header may carry without a change of what its other words mean. Which
// they are depends on the meaning: "plate" beside a thickness, "each" beside a length.
var (
	weldWords = wordSet("weld welds welded welding seam seams joint joints nähte złączy naht schweißnaht schweissnaht nähte kehlnaht spoiny spoina spoin spawu złącza шва шов сварных зварних швов швів стыков стиків сварного сварной соединения соединение стыка зварного зварний з'єднання стику cordón cordon cordone cordoni cordones cordons cordão cordões uniones unión soldadura soldaduras saldatura saldature giunto soudure soudures joint solda soldas junta juntas giunti")
	linkWords = wordSet("of the a der de la del des du por al della do da")
	// markWords beside a word for a weld make a mark of it.
	markWords = wordSet("no nr n number num numer nummer numero número numéro номер id i.d. ident identifier ref réf rif № n° nº mark tag name label bezeichnung kennung kennzeichen kennzeichnung oznaczenie sigla marca identifiant identification identificação identificación identificativo código codice code kod код nome marquage маркировка маркування позиция позиція")
	// eachWords say that a length is that of one joint.
	eachWords = wordSet("each ea per piece pc pcs one single unit unitaire unitaria unitario unitário einzeln einzel je stück jedn jednostkowa jedna jednej одного одной 1 шт")
	// manyWords in the place of a word for a weld make a count of "number".
	manyWords = wordSet("welds seams joints nähte spoin złączy швов стыков соединений швів стиків з'єднань soldaduras cordones uniones saldature cordoni giunti soudures cordons soldas cordões juntas")
	// filletWords say of a size what the list is about anyway.
	filletWords = wordSet("fillet kehlnaht kehlnähte углового угловых кутового кутових d'angle d'angolo de ángulo di angolo pachwinowej pachwiny min minimum мин мін calc расчётная")
	// kindLinks stand between the words of a kind.
	kindLinks = wordSet("of the de la del en em in a au al na mit with con com avec ad z з с on")
	// looseWords stand in a phrase around the words that count.
	looseWords = wordSet("the of on at in from weld welded the der die das den dem von an auf im am geschweißt naht de du des d'un la le les sur tout toute en por a al todo el los solo un da dal il lo in tutto lungo na o os todo z ze po cały całym całej w з зі по на всьому з весь с со всему в во при")
	// buttWords say that parts lie edge to edge, and that their edges are prepared.
	buttWords = wordSet("butt groove prep preparation joint stumpf stumpfnaht stumpfstoß bout à tope topo testa czołowa czołowy czołowe czołowej doczołowa стыковой стыковое стыковая стиковий стикове стикова шов соединение chanfrein chanfreiné bisel chaflán cianfrino chanfro ukosowana ukosowanie скос скосом розробка розробкою розробки разделка разделкой разделки кромок fuge fugenform unión giunto junta")
	// partWords name the part whose thickness is given.
	partWords = wordSet("plate plates sheet metal material mat base wall part member element blech blechs bleches wand material tôle tole pièce chapa chapas pieza base lamiera lamiere pezzo blachy materiału elementu ścianki peça elemento элемента основного металла листа детали стенки металу листа деталі стінки елемента основного")
)

// ofWelds are the columns that may name a weld beside what they say. A thickness is
// none: that of a weld is its size.
const ofWelds = "mark length size qty kind sides stitch position where process wire gas machine quality wps ndt drawing rev note angle gap root_face depth backing"

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		set[fold(w)] = true
	}
	return set
}

// composed reads a header of several words that the table does not have as a whole.
func (s *spellings) composed(text string) []meaning {
	words := strings.Fields(fold(text))
	bare := without(words, weldWords)
	rest := without(bare, linkWords)
	if len(bare) < len(words) && len(rest) > 0 && len(without(rest, markWords)) == 0 {
		if markWords[words[0]] && len(without(words, manyWords)) < len(words) {
			return []meaning{{key: "qty"}} // "No. of welds" counts them; "Weld no." names one
		}
		return []meaning{{key: "mark"}}
	}
	rest = countLast(rest)
	if len(rest) < len(words) || len(rest) > 1 {
		m := s.headers[strings.Join(rest, " ")]
		if len(bare) < len(words) {
			m = only(m, ofWelds)
		}
		if m != nil {
			return m
		}
	}
	for _, try := range []struct {
		drop map[string]bool
		keys string
	}{{eachWords, "length"}, {partWords, "t1 t2"}, {filletWords, "size"}} {
		if left := without(rest, try.drop); len(left) > 0 && len(left) < len(rest) {
			if m := only(s.headers[strings.Join(left, " ")], try.keys); m != nil {
				return m
			}
		}
	}
	return s.twice(rest)
}

// countLast puts the number of a part behind the other words: "Part 1 thickness".
func countLast(words []string) []string {
	for i, w := range words[:max(len(words)-1, 0)] {
		if w == "1" || w == "2" {
			return append(append(append([]string{}, words[:i]...), words[i+1:]...), w)
		}
	}
	return words
}

// twice reads a header that says the same in a word and in a symbol: "Throat a",
// "Катет k", "Dicke t2". The symbol is the closer of the two.
func (s *spellings) twice(words []string) []meaning {
	n := len(words) - 1
	if n < 1 || len([]rune(words[n])) > 2 {
		return nil
	}
	symbol := s.headers[words[n]]
	for _, m := range s.headers[strings.Join(words[:n], " ")] {
		for _, other := range symbol {
			same := m.key == other.key || m.key == "t1" && other.key == "t2"
			if same && (m.means == other.means || m.means == "either" || other.means == "") {
				return []meaning{other}
			}
		}
	}
	return nil
}

func without(words []string, drop map[string]bool) []string {
	var left []string
	for _, w := range words {
		if !drop[w] {
			left = append(left, w)
		}
	}
	return left
}

// only returns the meanings whose key is among keys.
func only(all []meaning, keys string) []meaning {
	var out []meaning
	for _, m := range all {
		if strings.Contains(" "+keys+" ", " "+m.key+" ") {
			out = append(out, m)
		}
	}
	return out
}
