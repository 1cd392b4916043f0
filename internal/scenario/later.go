package scenario

import "slices"

// laterWords are words of the format that this version does not know yet, by the
// place where they belong; those under "" are recognised anywhere. They are
// refused, never ignored: a word without effect would be a wrong answer.
var laterWords = map[string][]string{
	"a scenario": {"money", "from log"},
	"":           {"from log", "money"},
}

// laterAdvice says what to do in place of such a word, where leaving it out is not all.
var laterAdvice = map[string]string{}

// later refuses a word of a later version.
func (r *reader) later(where at, word string) {
	advice := laterAdvice[word]
	if advice == "" {
		advice = "leave it out"
	}
	r.complain(where, "%q is a word of the format that this version does not know yet; %s", word, advice)
}

// isLater says whether a word belongs to a later version.
func isLater(section, word string) bool { return slices.Contains(laterWords[section], word) }
