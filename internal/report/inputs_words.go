package report

import (
	"math"
	"strings"

	"tuckline/internal/keyfigure"
	"tuckline/sim"
)

// lawWords say a law by its mean in a unit, its coefficient of variation and its kind.
func lawWords(law sim.Law, scale float64, unit string) string {
	mean := short3(law.Mean() / scale)
	if unit != "" {
		mean += thin + unit
	}
	if law.IsFixed() {
		return mean
	}
	return say("law", facts{"Mean": mean, "Kind": law.Kind(), "CV": rounded(law.CV(), -2)})
}

func crewWords(w sim.Work) string {
	if w.Crew == "" {
		return ""
	}
	return say("input.crew", facts{"People": w.People, "Crew": w.Crew, "Priority": w.Priority})
}

// short3 writes a value with three significant digits, or with all before the point.
func short3(v float64) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return rounded(v, 0)
	}
	text := rounded(v, min(exponent(math.Abs(v))-2, 0))
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// derivedRows are the figures that follow from the inputs alone.
func derivedRows(f keyfigure.Figures) [][]cell {
	var rows [][]cell
	for _, row := range f.List() {
		rows = append(rows, []cell{text(row.Group), text(row.Name), text(figureWords(row))})
	}
	return rows
}

func figureWords(row keyfigure.Row) string {
	switch {
	case row.Value < 0:
		return say("without.limit", nil)
	case row.Unit == "":
		return rounded(100*row.Value, -1) + thin + "%"
	default:
		return short3(row.Value) + thin + row.Unit
	}
}
