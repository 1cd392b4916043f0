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
	switch per {
	case perAnswer:
		per = v.scenario.Answer.Per
	case perWindows:
		per = "share of " + windows(v.scenario)
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
		if _, err := measuresAsked(words, s, m); err != nil {
			faults = append(faults, err.Error())
		}
	}
	if faults == nil {
		return nil
	}
	return &InputError{strings.Join(faults, "\n")}
}

func parseMeasure(words string, s *scenario.Scenario, m *sim.Model) (asked, error) {
	wanted := strings.Join(strings.Fields(words), " ")
	var known []string
	for _, one := range measuresOf(s, m) {
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
func measuresOf(s *scenario.Scenario, m *sim.Model) []asked {
	var stations, buffers []string
	for i := range s.Line.Stations {
		stations = append(stations, s.Line.Stations[i].Name)
	}
	for _, place := range m.Places() {
		buffers = append(buffers, place.Name)
	}
	materials := materialNames(&s.Line)
	var all []asked
	for _, word := range MeasureWords {
		switch {
		case strings.Contains(word.Words, "NAME"):
			for k, name := range causeNames(&s.Line, m) {
				for i, station := range stations {
					words := strings.NewReplacer("STATION", station, "NAME", name).Replace(word.Words)
					all = append(all, asked{word, words, i + k*len(stations)})
				}
			}
		case strings.Contains(word.Words, "STATION"):
			all = append(all, word.named("STATION", stations)...)
		case strings.Contains(word.Words, "BUFFER"):
			all = append(all, word.named("BUFFER", buffers)...)
		case strings.Contains(word.Words, "MATERIAL"):
			all = append(all, word.named("MATERIAL", materials)...)
		default:
			all = append(all, asked{word, word.Words, -1})
		}
	}
	return all
}

// named is a word with each of the names in the place of what stands for them.
func (w MeasureWord) named(placeholder string, names []string) []asked {
	all := make([]asked, len(names))
	for i, name := range names {
		all[i] = asked{w, strings.Replace(w.Words, placeholder, name, 1), i}
	}
	return all
}
