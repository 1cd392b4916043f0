package report

import (
	"html/template"
	"math"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// stepRow is a row of the staircase: a way of counting as a whole, or what one choice moves.
type stepRow struct {
	label, beside string
	from, to      float64
	colour        string
}

// stepsSection shows what the choices in counting make of the OEE: from one way to another, a step for each choice.
func stepsSection(s *subject) (*section, error) {
	steps := s.Results.KeyFigures.Steps
	if len(steps) < 2 {
		return nil, nil
	}
	heading := stepsHeading(&s.Results.KeyFigures)
	rows := stepRows(steps)
	option, err := stepsOption(rows, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "oee-steps", Heading: heading, Reading: say("steps.reading", facts{"Report": s.Results.KeyFigures.Counting.HasReport}),
		Charts: []chart{{"oee-steps", 70 + 30*len(rows), option}}, Table: stepsTable(steps, heading),
	}, nil
}

func stepsHeading(k *result.KeyFigures) string {
	steps := k.Steps
	last := steps[len(steps)-1]
	f := facts{"First": oeeWords(steps[0]), "Last": oeeWords(last), "Own": "", "Reported": "", "Rest": ""}
	for _, step := range steps {
		switch step.Is {
		case "own":
			f["Own"] = oeeWords(step)
		case "reported":
			f["Reported"] = oeeWords(step)
		}
	}
	if !k.Counting.HasReport {
		return say("steps.heading", f)
	}
	if f["Reported"] == "" { // counted the same
		f["Reported"] = f["Own"]
	}
	if last.Choice == result.StepData {
		f["Rest"], f["Shown"] = pointsWords(last.Points), oeeWords(last)
	}
	return say("steps.heading.report", f)
}

func oeeWords(step result.KeyFigureStep) string { return percentWords(step.OEE.Mean) }

// pointsWords are points with their sign and interval.
func pointsWords(e result.Estimate) string {
	n := numberOf(e, 100)
	if e.Mean > 0 {
		n.Mean = "+" + n.Mean
	}
	return n.String()
}

// movedWords are the points, or what a choice that moves none does.
func movedWords(e result.Estimate) string {
	if e.Mean == 0 && e.Low == 0 && e.High == 0 {
		return say("steps.within", nil)
	}
	return say("steps.points", facts{"Points": pointsWords(e)})
}

// shownOEE is an OEE with its interval; that of another report has none.
func shownOEE(e result.Estimate) string {
	if e.Low == e.High {
		return short(round3(100 * e.Mean))
	}
	return numberOf(e, 100).String()
}

// choiceWords say what changes.
func choiceWords(step result.KeyFigureStep) string {
	if step.Choice == result.StepData {
		return say("steps.data", nil)
	}
	return say("steps.choice", facts{"Choice": step.Choice, "To": step.To})
}

// wayWords say which way of counting a row is.
func wayWords(step result.KeyFigureStep, first bool) string {
	switch {
	case step.Is != "":
		return say("steps."+step.Is, nil)
	case step.Choice == result.StepData:
		return say("steps.shown", nil)
	case first:
		return say("steps.most", nil)
	}
	return say("steps.least", nil)
}

// stepRows are the rows of the drawing: the ways of counting as bars from 0, the choices as bars between them.
func stepRows(steps []result.KeyFigureStep) []stepRow {
	var rows []stepRow
	for i, step := range steps {
		if i > 0 {
			rows = append(rows, stepRow{
				label: choiceWords(step), beside: movedWords(step.Points),
				from: steps[i-1].OEE.Mean, to: step.OEE.Mean, colour: stepColour(step.Points.Mean),
			})
		}
		if i == 0 || step.Is != "" || i == len(steps)-1 {
			rows = append(rows, stepRow{
				label: wayWords(step, i == 0), beside: say("steps.oee", facts{"OEE": shownOEE(step.OEE)}), to: step.OEE.Mean, colour: "state:running",
			})
		}
	}
	return rows
}

// stepColour gives lost points the ink.
func stepColour(points float64) string {
	if points < 0 {
		return "state:down"
	}
	return "colour:accent"
}

func stepsOption(rows []stepRow, aria string) (template.JS, error) {
	var labels []string
	var below, bars []opts.BarData
	var beside []opts.ScatterData
	for i, row := range rows {
		low, high := 100*min(row.from, row.to), 100*max(row.from, row.to)
		labels = append(labels, row.label)
		below = append(below, opts.BarData{Value: round3(low)})
		bars = append(bars, opts.BarData{Name: say("steps.tip", facts{"Label": row.label, "Beside": row.beside}), Value: round3(math.Abs(high - low)), ItemStyle: &opts.ItemStyle{Color: row.colour}})
		at := low
		if row.from == 0 {
			at = high // there is room in its own bar only
		}
		beside = append(beside, opts.ScatterData{Name: row.beside, Value: []any{round3(at), i}})
	}
	bar := charts.NewBar()
	stack := charts.WithBarChartOpts(opts.BarChart{Stack: "oee", BarCategoryGap: "30%"})
	bar.AddSeries("", below, stack, charts.WithItemStyleOpts(opts.ItemStyle{Color: "transparent"}))
	bar.AddSeries("", bars, stack)
	bar.SetXAxis(labels).XYReversal()
	counts := charts.NewScatter()
	counts.AddSeries("", beside, colour("ink"), charts.WithScatterChartOpts(opts.ScatterChart{SymbolSize: 1}),
		charts.WithLabelOpts(opts.Label{Show: opts.Bool(true), Position: "left", Formatter: "fn:name", Color: "colour:ink"}))
	bar.Overlap(counts)
	x := valueAxis(say("steps.axis", nil), "fn:number")
	x.Min, x.Max = 0, 100
	bar.SetGlobalOptions(append(frame(aria), noLegend(), plot("8", "24", "24"), charts.WithXAxisOpts(x), charts.WithYAxisOpts(names(labels)))...)
	return optionOf(bar)
}

func stepsTable(steps []result.KeyFigureStep, caption string) table {
	var choice, is []string
	var points, oee, availability, performance, quality []result.Estimate
	for i, step := range steps {
		words := wayWords(step, i == 0)
		if i > 0 {
			words = choiceWords(step)
		}
		mark := ""
		if step.Is != "" {
			mark = say("steps."+step.Is, nil)
		}
		choice, is = append(choice, words), append(is, mark)
		points, oee = append(points, step.Points), append(oee, step.OEE)
		availability, performance, quality = append(availability, step.Availability), append(performance, step.Performance), append(quality, step.Quality)
	}
	t := tableOf(caption, heads("step", "is", "points", "oee", "availability", "performance", "quality"), 2, textColumn(choice), textColumn(is),
		columnOf(points, 100), columnOf(oee, 100), columnOf(availability, 100), columnOf(performance, 100), columnOf(quality, 100))
	t.Note = say("steps.note", nil)
	return t
}
