package finding

import "strings"

// Nearest returns the known word that a mistyped word most likely meant, or an
// empty string where none is near: at most a third of the letters may differ.
// Case does not count; of equally near words the first wins.
func Nearest(word string, known []string) string {
	best, least := "", 1+len([]rune(word))/3
	for _, k := range known {
		if d := distance(strings.ToLower(word), strings.ToLower(k)); d < least {
			best, least = k, d
		}
	}
	return best
}

// distance counts the letters to put in, take out, change or swap with their
// neighbour to turn a into b.
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	before, last, row := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(s); i++ {
		row[0] = i
		for j := 1; j <= len(t); j++ {
			cost := 1
			if s[i-1] == t[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(t)]
}
