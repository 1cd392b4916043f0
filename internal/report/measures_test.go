package report

import (
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/study"
)

func TestWordsOfMeasures(t *testing.T) {
	s := subjectOf(inventedOutcome())
	for want, m := range map[string]result.Measure{
		"transfer store level: 248 ± 14 blisters on average":     {Name: "transfer store level", Of: "transfer store", Per: "on average, in pieces", Value: about(248.3, 14)},
		"yield, line: 97.983 ± 0.044 %":                          {Name: "yield", Of: "line", Per: "share of pieces", Value: about(0.979834, 0.00044)},
		"cartoner starved: 8.26 ± 0.71 % of time":                {Name: "cartoner starved", Of: "cartoner", Per: "share of time", Value: about(0.0826, 0.0071)},
		"waiting for crew, operators: 4.10 ± 0.70 s per request": {Name: "waiting for crew", Of: "operators", Per: "request, in seconds", Value: about(4.1, 0.7)},
		"good output, cartons: 29 640 ± 340 per shift":           {Name: "good output", Of: "cartons", Per: "shift", Value: about(29640, 341)},
		"magazine runs dry: 5.0 % (1.4 to 16.5 %) of shifts":     {Name: "magazine runs dry", Of: "magazine", Per: "share of shifts", Value: result.Estimate{Mean: 0.05, Low: 0.0138, High: 0.165, N: 40}},
		"forming foil used: 102.50 ± 0.12 m per 1 000 good cartons": {
			Name: "forming foil used", Of: "forming foil", Per: "good piece of the answer", Unit: "m", Value: about(0.1025, 0.00012),
		},
		"late refills, leaflets of cartoner: 1.20 ± 0.30 per shift": {Name: "late refills", Of: "leaflets of cartoner", Per: "shift", Value: about(1.2, 0.3)},
		"lateness of refills, leaflets of cartoner: 31.0 ± 4.0 s per late refill": {
			Name: "lateness of refills", Of: "leaflets of cartoner", Per: "late refill, in seconds", Value: about(31, 4),
		},
		"lateness of refills, blanks of cartoner: none occurred": {Name: "lateness of refills", Of: "blanks of cartoner", Per: "late refill, in seconds"},
		"lost packs, pack: 171.1 ± 8.9 cartons per shift":        {Name: "lost packs", Of: "pack", Per: "shift", Unit: "cartons", Value: about(171.1, 8.9)}, // a station of that name
		"time in line, longest: 10 900 s per piece":              {Name: "time in line", Of: "longest", Per: "piece, in seconds", Value: result.Estimate{Mean: 10900, Low: 10900, High: 10900, N: 1}},
		"carried by hand, magazine: 450 ± 12 blisters per shift": {Name: "carried by hand", Of: "magazine", Per: "shift", Unit: "blisters", Value: about(450, 12)},
	} {
		name, value := s.measureWords(m)
		if got := strings.ReplaceAll(name+": "+value, thin, " "); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// All rows of a measure have the digits of the widest interval.
func TestRowsOfAMeasureHaveTheSameDigits(t *testing.T) {
	o := inventedOutcome()
	for of, value := range map[string]result.Estimate{"line": about(598.2, 22), "cartoner": about(132.71, 6.3), "bundler": about(0, 0)} {
		o.Results.Measures = append(o.Results.Measures, result.Measure{Name: "rejects", Of: of, Per: "shift", Unit: "cartons", Value: value})
	}
	s := subjectOf(o)
	want := map[string]string{"line": "598 ± 22 cartons per shift", "cartoner": "133 ± 6 cartons per shift", "bundler": "0 ± 0 cartons per shift"}
	for _, m := range o.Results.Measures {
		if _, value := s.measureWords(m); plainSpaces(value) != want[m.Of] {
			t.Errorf("%s: got %q, want %q", m.Of, plainSpaces(value), want[m.Of])
		}
	}
}

// Every word of the list of measures is said as a sentence would, not as the list has it.
func TestEveryMeasureHasWords(t *testing.T) {
	s := subjectOf(inventedOutcome())
	for _, word := range study.MeasureWords {
		per := strings.Split(word.Per, ",")[0]
		switch {
		case strings.HasPrefix(word.Per, "share of shifts"):
			per = "share of shifts"
		case strings.HasSuffix(word.Per, "in pieces") || strings.HasSuffix(word.Per, "in seconds"):
			per = word.Per
		}
		_, value := s.measureWords(result.Measure{Name: word.Words, Of: "transfer store", Per: per, Value: about(0.5, 0.1)})
		if strings.Contains(value, ",") || strings.Contains(value, "of pieces") || !strings.ContainsAny(value, "%") && !strings.Contains(value, " per ") && !strings.HasSuffix(value, "on average") {
			t.Errorf("%s: %q", word.Words, value)
		}
	}
}
