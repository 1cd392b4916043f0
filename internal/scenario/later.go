package scenario

import "slices"

// laterWords are words of the format that this version does not know yet, by the
// place where they belong; those under "" are recognised anywhere. They are
// refused, never ignored: a word without effect would be a wrong answer.
var laterWords = map[string][]string{
	"a scenario": {"lines", "calendar", "orders", "changeover", "key figures", "agreement", "money", "from log"},
	"a station": {
		"checks", "inspection", "reject runs", "stop after", "reset",
		"heat recovery", "incomplete stack", "mis-picks", "lost per stop", "no-reads", "closing", "guaranteed",
		"lanes",
	},
	"a speed step": {"delay"},
	"a material":   {"change by", "web store", "splice scrap", "splice fails", "mis-picks"},
	"a conveyor":   {"sensors", "lanes"},
	"a buffer": {
		"leaves", "keeps", "in at most", "out at most", "surplus", "hand rate",
		"stock", "returns", "stops", "lanes",
	},
	"levels": {"empty out at batch end"},
	"a crew": {"walk", "response", "can also"},
	"":       {"delay", "from log", "guaranteed", "calendar", "money"},
}

// laterAdvice says what to do in place of such a word, where leaving it out is not all.
var laterAdvice = map[string]string{
	"lines":    "write one of them under line:",
	"calendar": "leave it out; a shift or a week is the measured window of run, such as measure: 8 h",
}

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
