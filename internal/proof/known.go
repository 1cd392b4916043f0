package proof

import (
	"fmt"
	"strings"
)

// knowledge is how values are known, by the letter in the files, from the surest on. Each has the words
// that stand beside a value.
var knowledge = []struct{ letter, words string }{
	{"a", "published figure, read in the source"},
	{"a-formula", "formula read in the source, evaluated by us"},
	{"b", "published figure, recalled from memory, computed anew by us"},
	{"f", "published formula, evaluated by us"},
	{"x", "our own exact computation, nothing published"},
	{"m", "formula from memory, its text was not read"},
	{drawnLetter, "drawn: itself the outcome of random numbers"},
}

// drawnLetter stands for the values that are themselves drawn; the files have no letter for it.
const drawnLetter = "drawn"

func wordsOf(letter string) string {
	for _, k := range knowledge {
		if k.letter == letter {
			return k.words
		}
	}
	return ""
}

// knownWords says how the value of a figure is known.
func (f *figure) knownWords() string {
	if f.drawn {
		return wordsOf(drawnLetter)
	}
	return wordsOf(f.known)
}

// kinds says how many of the figures are known in which way, from the surest on.
func (o *Outcome) kinds() string {
	count := map[string]int{}
	for _, r := range o.Rows {
		count[r.Known]++
	}
	var all []string
	for _, k := range knowledge {
		if n := count[k.words]; n > 0 {
			all = append(all, fmt.Sprintf("%d: %s", n, k.words))
		}
	}
	return strings.Join(all, "; ")
}
