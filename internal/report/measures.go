package report

import (
	"slices"
	"strings"

	"tuckline/internal/result"
	"tuckline/internal/study"
)

// measureWords are the name and the value of a measure that was asked for, by
// the words of study.MeasureWords.
func (s *subject) measureWords(m result.Measure) (name, value string) {
	name = measureName(m)
	numberOf := func(e result.Estimate, scale float64) number { return atPlace(e, scale, s.measurePlace(m, scale)) }
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
		per := m.Per
		if s.Scenario != nil && s.Scenario.Run.UntilOrders && per != "hour" {
			per = s.Window.One // without a calendar it is the run that ends with its orders
		}
		return name, say("measure.per", facts{"Value": numberOf(m.Value, 1), "Per": per, "Unit": m.Unit})
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
		n := numberOf(m.Value, 1)
		value = n.String()
		if m.Of == "longest" {
			value = n.Mean // one value of all runs has no interval
		}
		return name, say("measure.seconds", facts{"Value": value, "Per": strings.TrimSuffix(m.Per, ", in seconds")})
	}
}

// measureName is the words of a measure, with whose it is where they do not say so: a station may well be called "pack", and
// then "lost packs" does not name it.
func measureName(m result.Measure) string {
	general := slices.ContainsFunc(study.MeasureWords, func(w study.MeasureWord) bool { return w.Words == m.Name })
	if m.Of == "" || m.Of == "line" && strings.Contains(m.Name, m.Of) || !general && strings.Contains(m.Name, m.Of) {
		return m.Name
	}
	return say("measure.of", facts{"Name": m.Name, "Of": m.Of})
}

// measurePlace is the power of ten for all rows of a measure. A mean and quantiles beside it are too far apart for that.
func (s *subject) measurePlace(m result.Measure, scale float64) int {
	column := []result.Estimate{m.Value}
	if strings.HasSuffix(m.Per, "in pieces") || strings.HasPrefix(m.Per, "piece") {
		return columnPlace(column, scale)
	}
	for _, other := range s.Results.Measures {
		if other.Name == m.Name && other.Per == m.Per && other.Value.N > 0 {
			column = append(column, other.Value)
		}
	}
	return columnPlace(column, scale)
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
