package report

import (
	"slices"
	"strings"

	"tuckline/internal/result"
)

// measureWords are the name and the value of a measure that was asked for.
func measureWords(m result.Measure) (name, value string) {
	name = m.Name
	if m.Of != "" && !strings.Contains(m.Name, m.Of) {
		name = say("measure.of", facts{"Name": m.Name, "Of": m.Of})
	}
	switch {
	case strings.HasPrefix(m.Per, "share"):
		return name, say("measure.share", facts{"Value": numberOf(m.Value, 100), "Per": strings.TrimPrefix(m.Per, "share ")})
	case slices.Contains([]string{"hour", "shift", "week"}, m.Per):
		return name, say("measure.per", facts{"Value": numberOf(m.Value, 1), "Per": m.Per})
	default:
		return name, say("measure.value", facts{"Value": numberOf(m.Value, 1), "Per": m.Per})
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
		name, value := measureWords(m)
		t.Rows = append(t.Rows, []cell{text(name), text(value)})
	}
	return &section{ID: "measures", Heading: heading, Table: t, Open: true}, nil
}
