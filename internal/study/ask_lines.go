package study

import (
	"strings"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// measuresAsked are the measures that words name: one, or, where they have a bare name of several lines, those of all
// lines that have it.
func measuresAsked(words string, s *scenario.Scenario, m *sim.Model) ([]asked, error) {
	one, err := parseMeasure(words, s, m)
	if err == nil {
		return []asked{one}, nil
	}
	wanted := strings.Join(strings.Fields(words), " ")
	var all []asked
	for _, known := range measuresOf(s, m) {
		for _, line := range s.Lines {
			if line.Name != "" && strings.ReplaceAll(known.words, line.Name+".", "") == wanted {
				all = append(all, known)
			}
		}
	}
	if len(all) > 0 {
		return all, nil
	}
	return nil, err
}
