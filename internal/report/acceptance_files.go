package report

import (
	"encoding/csv"
	"io"

	"tuckline/internal/result"
	"tuckline/internal/study"
)

// AcceptanceCSV writes one row a true efficiency, the line as entered first; shares are between 0 and 1. Where the renewal formula
// says nothing its cells are empty.
func AcceptanceCSV(w io.Writer, o *study.AcceptanceOutcome) error {
	rows := csv.NewWriter(w)
	// The writer keeps its first error for the end.
	_ = rows.Write([]string{
		"line", "true_efficiency", "true_low", "true_high", "stop_rate_factor", "runs", "passing", "passing_low", "passing_high",
		"shown_mean", "shown_sd", "formula_passing", "formula_sd", "formula_run_h",
	})
	write := func(line string, p result.AcceptancePoint) {
		formula := []string{"", "", ""}
		if p.Formula.Applies {
			formula[0], formula[1] = decimal(p.Formula.Passing), decimal(p.Formula.SD)
		}
		if p.Formula.RunHours > 0 {
			formula[2] = decimal(p.Formula.RunHours)
		}
		_ = rows.Write(append([]string{
			line, decimal(p.True.Mean), decimal(p.True.Low), decimal(p.True.High), decimal(p.Factor), integer(int64(p.Passing.N)),
			decimal(p.Passing.Mean), decimal(p.Passing.Low), decimal(p.Passing.High), decimal(p.Shown.Mean), decimal(p.Shown.SD),
		}, formula...))
	}
	write("as entered", o.Results.AsEntered)
	for _, p := range o.Results.Curve {
		write("scaled", p)
	}
	rows.Flush()
	return rows.Error()
}

// AcceptanceTerminal writes the summary in the order of the report. It keeps to 80 columns where words allow.
func AcceptanceTerminal(w io.Writer, in AcceptancePage) error {
	f, a := acceptanceFirstOf(in.Outcome), &in.Outcome.Results
	p := paper{width: terminalWidth}
	f.opening(&p)
	p.paragraph(say("acceptance.table", agreedFacts(a)))
	names := []string{say("acceptance.as.entered.short", facts{"True": rounded(100*a.AsEntered.True.Mean, -1)})}
	columns := [][]string{
		{say("acceptance.short.factor", nil)},
		{say("acceptance.short.passes", nil)},
		{say("acceptance.short.range", nil)},
		{say("acceptance.short.spread", nil)},
		{say("acceptance.short.formula", nil)},
	}
	add := func(point result.AcceptancePoint) {
		formula := "–"
		if point.Formula.Applies {
			formula = chanceWords(point.Formula.Passing)
		}
		for i, value := range []string{
			rounded(point.Factor, min(exponent(point.Factor)-1, 0)), chance(point.Passing), chanceRange(point.Passing), rounded(100*point.Shown.SD, -1), formula,
		} {
			columns[i] = append(columns[i], spaced(value))
		}
	}
	add(a.AsEntered)
	for _, point := range a.Curve {
		names = append(names, spaced(short(round3(100*point.True.Mean))+thin+"%"))
		add(point)
	}
	p.grid(names, columns, widest(names))
	return f.closing(&p, w)
}
