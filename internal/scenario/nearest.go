package scenario

import "strings"

// Nearest finds the candidate that a word was most likely meant to be: few
// letters changed, left out, added or swapped, or words left out at its end.
// It finds none if all are too far away.
func Nearest(wrong string, candidates []string) (string, bool) {
	best, least := "", len([]rune(wrong))/3+2
	for _, c := range candidates {
		if strings.HasPrefix(c, wrong+" ") {
			return c, true
		}
		if d := distance(strings.ToLower(wrong), strings.ToLower(c)); d < least {
			best, least = c, d
		}
	}
	return best, best != ""
}

// distance counts the edits from one word to another; two neighbours swapped
// count as one (optimal string alignment).
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, last := make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := range x {
		row := make([]int, len(y)+1)
		row[0] = i + 1
		for j := range y {
			change := 1
			if x[i] == y[j] {
				change = 0
			}
			row[j+1] = min(last[j]+change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(y)]
}
