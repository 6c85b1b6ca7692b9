package joint

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// order is what a remark says is to be done with the whole row.
type order int

const (
	takenOut   order = iota + 1 // "DELETED"
	byOthers                    // "by others"
	otherHand                   // "also opp. hand"
	preheating                  // "preheat 100"
)

// The words of orders, folded, in the nine languages. A star ends the beginning of a word;
// words with blanks stand one behind the other.
var (
	// Of an order to leave a weld out, and of one that others do, a part of the remark
	// holds nothing else in front: "bolt holes deleted" and "painted by others" say
	// nothing of the weld.
	weldFillers = wordSet("the this these all now is was are were has have been to be weld welds welding welded seam joint row item line pos position mark site field on shop " +
		"die der das diese dieser dieses naht nahte schweissnaht zeile wird wurde ist sind jetzt nun stoss geschweisst " +
		"spoina spoiny spoine ta pozycja wiersz zlacze jest zostala zostalo spawane spawa spawanie " +
		"la el este esta cordon soldadura soldado soldada fila union queda es esta ha sido se " +
		"il lo questa questo saldatura giunto riga e stata stato saldato saldata " +
		"le cette ce soudure cordon joint ligne est a ete soude soudee " +
		"o a esta este solda junta linha foi fica " +
		foldSet("шов сварной соединение позиция строка этот сварка варится сваривается зварний шво зварювання з'єднання позиція рядок цей зварюється"))
	takenOutWords = foldAll("deleted", "delete", "void", "voided", "cancelled", "canceled", "cancel", "omit", "omitted", "not required", "no longer required", "do not weld", "removed from scope",
		"entfällt", "entfallen", "gestrichen", "gelöscht", "storniert", "nicht schweißen",
		"supprimé", "supprimée", "annulé", "annulée", "ne pas souder",
		"eliminado", "eliminada", "anulado", "anulada", "cancelado", "cancelada", "suprimido", "suprimida", "no soldar",
		"eliminato", "eliminata", "annullato", "annullata", "soppresso", "soppressa", "non saldare",
		"excluído", "excluída", "não soldar",
		"usunięto", "usunięta", "usunięte", "anulowano", "anulowana", "anulowane", "skreślono", "skreślona", "nie spawać",
		"удалён", "удален", "удалено", "удалена", "аннулирован", "аннулировано", "аннулирована", "отменён", "отменено", "отменена", "исключён", "исключено", "исключена", "не варить", "не сваривать",
		"вилучено", "видалено", "скасовано", "анульовано", "виключено", "не варити", "не зварювати")
	othersWords = foldAll("by others", "by other", "by client", "by customer", "out of scope", "not in scope", "not in our scope", "not our scope",
		"bauseits", "durch andere", "durch dritte", "fremdleistung", "bauseitig",
		"par d'autres", "par autrui", "par le client", "hors lot", "hors fourniture",
		"por otros", "por terceros", "por el cliente", "fuera de alcance",
		"da altri", "a cura di altri", "da terzi", "a cura del cliente",
		"por outros", "pelo cliente", "fora do escopo",
		"przez innych", "przez inną firmę", "po stronie klienta", "poza zakresem",
		"другими", "силами других", "силами заказчика", "заказчиком", "вне объёма",
		"іншими", "силами інших", "силами замовника", "замовником", "поза обсягом")
	// What needs no weld may be a test or a coat; what others do may be the paint.
	noNeedWords   = foldAll("not required", "no longer required")
	revisionWords = foldAll("rev", "revision", "rev.", "index", "ecn", "dcn", "note")
	whyWords      = wordSet("per see rev revision as by in from at and acc ecn dcn eco nach siehe gem laut in auf selon voir segun ver come vedi conforme wg wedlug patrz zgodnie w " +
		foldSet("согласно см по згідно див за"))
	handWords = foldAll("opp hand", "opposite hand", "opposite handed", "opposite hands", "other hand", "other handed", "mirrored", "mirror image",
		"spiegelbildlich", "gespiegelt", "spiegelgleich", "spiegelbild", "symétrique", "en miroir", "simétrico", "simétrica", "espejo", "mano contraria", "espejado", "espejada",
		"speculare", "simmetrico", "simmetrica", "specchiato", "specchiata", "espelhado", "espelhada", "odbicie lustrzane", "lustrzane odbicie", "lustrzane", "lustrzana", "lustrzanie",
		"зеркально", "зеркальная", "зеркальный", "зеркальное", "дзеркально", "дзеркальна", "дзеркальний", "дзеркальне")
	alsoFront = append(foldAll("also", "and", "plus", "+", "plus one", "and one", "and 1", "plus 1", "+ 1", "auch", "und", "ebenso", "zusätzlich", "aussi", "et", "également", "también", "y", "y su",
		"anche", "e", "também", "także", "również", "też", "oraz", "i", "также", "тоже", "и", "також", "теж", "і", "та", "й"), "plus 1 off", "and 1 off")
	alsoBehind = foldAll("as well", "too", "also", "auch", "aussi", "également", "también", "anche", "também", "także", "również", "też", "также", "тоже", "також", "теж")
	heatWords  = []string{"preheat*", "pre heat*", "vorwarm*", "prechauff*", "precalent*", "preriscald*", "preaquec*", "pre aquec*", "podgrz*", "wstepn* podgrz*", foldStem("подогре"), foldStem("подогрев"), foldStem("підігр"), foldStem("нагре")}
	notWords   = foldAll("not", "no", "without", "never", "nicht", "kein", "keine", "ohne", "nie", "bez", "brak", "sin", "non", "senza", "sans", "pas", "não", "sem", "не", "без", "нет", "немає")
)

func foldSet(words string) string    { return strings.Join(strings.Fields(fold(words)), " ") }
func foldStem(letters string) string { return fold(letters) + "*" }

// ordersOf returns what a remark asks for that the columns of a row cannot take in.
func ordersOf(text string) (out []order) {
	other := false // what stands in front of a colon or a bracket is something else than the weld
	for _, p := range remarkParts(strings.ReplaceAll(text, "&", " + ")) {
		words := strings.Fields(fold(p.text))
		rest := words
		for len(rest) > 0 && weldFillers[rest[0]] && !begins(rest, takenOutWords) && !begins(rest, othersWords) {
			rest = rest[1:]
		}
		switch {
		case other && (begins(rest, othersWords) || begins(rest, noNeedWords)):
		case ends(rest, takenOutWords):
			out = append(out, takenOut)
		case begins(rest, othersWords):
			out = append(out, byOthers)
		}
		other = strings.ContainsRune(":([", p.sign) && len(rest) > 0 && !begins(rest, revisionWords)
		if alsoOtherHand(words) {
			out = append(out, otherHand)
		}
		if heats(words) {
			out = append(out, preheating)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// remarkPart is a part of a remark with the sign behind it.
type remarkPart struct {
	text string
	sign rune
}

// remarkParts takes a remark apart at its signs. A point ends a part in front of a capital,
// "opp. Hand" apart.
func remarkParts(text string) (out []remarkPart) {
	from, runes := 0, []rune(text)
	for i, r := range runes {
		ends := strings.ContainsRune(";,()[]/–—:!\n\r", r)
		if r == '.' && i+2 < len(runes) && runes[i+1] == ' ' && unicode.IsUpper(runes[i+2]) {
			ends = !strings.HasSuffix(strings.ToLower(string(runes[from:i])), "opp")
		}
		if ends {
			out = append(out, remarkPart{string(runes[from:i]), r})
			from = i + 1
		}
	}
	return append(out, remarkPart{string(runes[from:]), 0})
}

// ends tells whether words are one of some phrases, with nothing behind it but what
// speaks of the weld, or why or where: "delete sharp edges" is no order to leave it out.
func ends(words, phrases []string) bool {
	for _, p := range phrases {
		n := phraseAt(words, p)
		if n == 0 {
			continue
		}
		rest := words[n:]
		for len(rest) > 0 && weldFillers[rest[0]] {
			rest = rest[1:]
		}
		if len(rest) == 0 || whyWords[rest[0]] {
			return true
		}
	}
	return false
}

// begins tells whether words begin with one of some phrases.
func begins(words []string, phrases []string) bool {
	for _, p := range phrases {
		if n := phraseAt(words, p); n > 0 {
			return true
		}
	}
	return false
}

// phraseAt returns how many words a phrase takes at the beginning of words; 0: it does
// not stand there.
func phraseAt(words []string, phrase string) int {
	if len(words) == 0 || phrase[0] != words[0][0] {
		return 0
	}
	n := 0
	for p := range strings.FieldsSeq(phrase) {
		stem, open := strings.CutSuffix(p, "*")
		if n >= len(words) || open && !strings.HasPrefix(words[n], stem) || !open && words[n] != p {
			return 0
		}
		n++
	}
	return n
}

// alsoOtherHand tells whether the other hand is wanted beside the one that is drawn. The
// hand alone says only which of the two the row is.
func alsoOtherHand(words []string) bool {
	for at := range words {
		for _, hand := range handWords {
			n := phraseAt(words[at:], hand)
			if n == 0 || denied(words[:at]) {
				continue
			}
			for k := max(0, at-3); k < at; k++ {
				for _, also := range alsoFront {
					if k+phraseAt(words[k:at], also) == at {
						return true
					}
				}
			}
			if begins(words[at+n:], alsoBehind) {
				return true
			}
		}
	}
	return false
}

// nearHeat is how many words may stand between a word for preheat and its degrees.
const nearHeat = 4

// heats tells whether a preheat of so many degrees is asked for. What follows may be the
// width that is warmed.
func heats(words []string) bool {
	for at := range words {
		for _, heat := range heatWords {
			n := phraseAt(words[at:], heat)
			if n == 0 || denied(words[:at]) {
				continue
			}
			for k := at + n; k < len(words) && k <= at+n+nearHeat; k++ {
				figure := strings.TrimRight(words[k], "cf°")
				degrees, err := strconv.Atoi(figure)
				long := k+1 < len(words) && slices.Contains([]string{"mm", "cm", "in", "inch"}, words[k+1])
				if err == nil && degrees >= 30 && degrees <= 700 && !long {
					return true
				}
			}
		}
	}
	return false
}

// denied tells whether one of the last words in front says no.
func denied(words []string) bool {
	for _, w := range words[max(0, len(words)-3):] {
		if slices.Contains(notWords, w) {
			return true
		}
	}
	return false
}
