package report

import (
	"slices"
	"strings"

	"tuckline/internal/result"
)

// measureWords are the name and the value of a measure that was asked for, by
// the words of study.MeasureWords.
func (s *subject) measureWords(m result.Measure) (name, value string) {
	name = m.Name
	if m.Of != "" && !strings.Contains(m.Name, m.Of) {
		name = say("measure.of", facts{"Name": m.Name, "Of": m.Of})
	}
	switch {
	case m.Per == "share of pieces":
		return name, say("measure.percent", facts{"Value": numberOf(m.Value, 100)})
	case strings.HasPrefix(m.Per, "share"):
		return name, say("measure.share", facts{"Value": numberOf(m.Value, 100), "Per": strings.TrimPrefix(m.Per, "share ")})
	case slices.Contains([]string{"hour", "shift", "week"}, m.Per):
		return name, say("measure.per", facts{"Value": numberOf(m.Value, 1), "Per": m.Per})
	case strings.HasPrefix(m.Per, "on average"):
		return name, say("measure.level", facts{"Value": numberOf(m.Value, 1), "Unit": s.placeNamed(m.Of).Unit})
	default:
		return name, say("measure.seconds", facts{"Value": numberOf(m.Value, 1), "Per": strings.TrimSuffix(m.Per, ", in seconds")})
	}
}

// measuresSection has what was asked for beside the standard figures.
func measuresSection(s *subject) (*section, error) {
	if len(s.Results.Measures) == 0 {
		return nil, nil
	}
	heading := say("measures.title", nil)
	t := table{Caption: heading, Head: heads("measure", "value"), Words: 1}
	for _, m := range s.Results.Measures {
		name, value := s.measureWords(m)
		t.Rows = append(t.Rows, []cell{text(name), text(value)})
	}
	return &section{ID: "measures", Heading: heading, Table: t, Open: true}, nil
}
