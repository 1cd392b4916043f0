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
	case m.Value.N == 0:
		return name, say("measure.none", nil)
	case m.Per == "share of pieces":
		return name, say("measure.percent", facts{"Value": numberOf(m.Value, 100)})
	case slices.Contains([]string{"share of shifts", "share of weeks", "share of runs"}, m.Per):
		// Its interval is not as far on both sides, so it is said from end to end.
		n := numberOf(m.Value, 100)
		return name, say("measure.windows", facts{"Value": n.Mean, "Range": n.Range(), "Windows": strings.TrimPrefix(m.Per, "share of ")})
	case m.Per == "good piece of the answer":
		return name, say("measure.thousand", facts{"Value": numberOf(m.Value, 1000), "Unit": m.Unit, "Thousand": whole(1000), "Answer": s.Results.Output.Unit})
	case strings.HasSuffix(m.Per, ", in pieces") && !strings.HasPrefix(m.Per, "on average"):
		// Quantiles: their interval is not as far on both sides either, and is none where there are few.
		n := numberOf(m.Value, 1)
		shown := facts{"Value": n.Mean, "Range": n.Range(), "Unit": m.Unit, "Per": strings.TrimSuffix(m.Per, ", in pieces")}
		if n.Alone {
			shown["Range"] = ""
		}
		return name, say("measure.places", shown)
	case strings.HasPrefix(m.Per, "share"):
		return name, say("measure.share", facts{"Value": numberOf(m.Value, 100), "Per": strings.TrimPrefix(m.Per, "share ")})
	case slices.Contains([]string{"hour", "shift", "week"}, m.Per):
		return name, say("measure.per", facts{"Value": numberOf(m.Value, 1), "Per": m.Per, "Unit": m.Unit})
	case strings.HasPrefix(m.Per, "on average"):
		return name, say("measure.level", facts{"Value": numberOf(m.Value, 1), "Unit": s.placeNamed(m.Of).Unit})
	case m.Per == "run, in hours":
		n := numberOf(m.Value, 1)
		f := facts{"Value": n.Mean, "Range": n.Range()}
		if n.Alone {
			f["Range"] = ""
		}
		return name, say("measure.finish", f)
	case strings.HasSuffix(m.Per, ", in minutes"):
		return name, say("measure.minutes", facts{"Value": numberOf(m.Value, 1)})
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
	t := table{Caption: heading, Head: heads("measure", "value"), Words: 1, Note: s.measuresNote()}
	for _, m := range s.Results.Measures {
		name, value := s.measureWords(m)
		t.Rows = append(t.Rows, []cell{text(name), text(value)})
	}
	return &section{ID: "measures", Heading: heading, Table: t, Open: true}, nil
}

// measuresNote says outside which dwell an output that was asked for lies.
func (s *subject) measuresNote() string {
	outputs := []string{"good output", "spread of good output", "line efficiency"}
	if outside := s.outside(); outside != "" && slices.ContainsFunc(s.Results.Measures, func(m result.Measure) bool { return slices.Contains(outputs, m.Name) }) {
		return say("measures.outside", facts{"Outside": outside})
	}
	return ""
}
