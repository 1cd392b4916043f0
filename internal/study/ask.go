package study

import (
	"fmt"
	"strings"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// asked is a measure with the station or buffer that was named.
type asked struct {
	word  MeasureWord
	words string
	of    int
}

func (a asked) rows(v view) []result.Measure {
	per := a.word.Per
	if per == perAnswer {
		per = v.scenario.Answer.Per
	}
	rows := a.word.rows(v, a.of, per)
	for i := range rows {
		rows[i].Name = a.words
		rows[i].Per = per
	}
	return rows
}

// CheckMeasures says what is wrong with measures asked for: all of them, each
// with the nearest that exists, if one is near. The error is an InputError.
func CheckMeasures(show []string, s *scenario.Scenario, m *sim.Model) error {
	var faults []string
	for _, words := range show {
		if _, err := parseMeasure(words, s, m.Places()); err != nil {
			faults = append(faults, err.Error())
		}
	}
	if faults == nil {
		return nil
	}
	return &InputError{strings.Join(faults, "\n")}
}

func parseMeasure(words string, s *scenario.Scenario, places []sim.Place) (asked, error) {
	wanted := strings.Join(strings.Fields(words), " ")
	var known []string
	for _, one := range measuresOf(s, places) {
		if one.words == wanted {
			return one, nil
		}
		known = append(known, one.words)
	}
	if near, found := scenario.Nearest(wanted, known); found {
		return asked{}, fmt.Errorf("no measure %q; did you mean %q? 'tuckline schema --measures' lists them", words, near)
	}
	return asked{}, fmt.Errorf("no measure %q; 'tuckline schema --measures' lists them", words)
}

// measuresOf lists the measures of one line: every word with every name.
func measuresOf(s *scenario.Scenario, places []sim.Place) []asked {
	var all []asked
	for _, word := range MeasureWords {
		switch {
		case strings.Contains(word.Words, "STATION"):
			for i, station := range s.Line.Stations {
				all = append(all, asked{word, strings.Replace(word.Words, "STATION", station.Name, 1), i})
			}
		case strings.Contains(word.Words, "BUFFER"):
			for i, place := range places {
				all = append(all, asked{word, strings.Replace(word.Words, "BUFFER", place.Name, 1), i})
			}
		default:
			all = append(all, asked{word, word.Words, -1})
		}
	}
	return all
}
