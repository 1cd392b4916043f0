package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// passPoint is a point of a curve of probabilities to pass.
type passPoint struct {
	x       float64
	label   string
	passing result.Estimate
	// formula is what the formula says, in percent; below 0 where it says nothing.
	formula float64
}

// curveSection is the operating characteristic: the probability to pass by true efficiency.
func curveSection(a *result.Acceptance) (*section, error) {
	if len(a.Curve) == 0 {
		return nil, nil
	}
	var points []passPoint
	for _, p := range a.Curve {
		one := passPoint{x: round3(100 * p.True.Mean), label: short(round3(100*p.True.Mean)) + thin + "%", passing: p.Passing, formula: -1}
		if p.Formula.Applies {
			one.formula = 100 * p.Formula.Passing
		}
		points = append(points, one)
	}
	f := agreedFacts(a)
	low, high := a.Curve[0], a.Curve[len(a.Curve)-1]
	f["Low"], f["High"] = points[0].label, points[len(points)-1].label
	f["LowPasses"], f["HighPasses"] = chance(low.Passing), chance(high.Passing)
	heading := say("acceptance.curve.heading", f)
	option, err := passOption(points, say("acceptance.curve.axis", f), described(heading), 100*a.Agreement.Efficiency)
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "curve", Heading: heading, Reading: say("acceptance.curve.reading", f), Charts: []chart{{"curve", 320, option}},
		Table: curveTable(a, heading), Open: true,
	}, nil
}

func curveTable(a *result.Acceptance, caption string) table {
	f := agreedFacts(a)
	t := table{Caption: caption, Words: 1, Note: say("acceptance.curve.note", f), Head: []string{
		say("acceptance.column.true", f), say("acceptance.column.factor", f), say("acceptance.column.passes", f), say("acceptance.column.shown", f),
		say("acceptance.column.spread", f), say("acceptance.column.formula", f), say("acceptance.column.long", f),
	}}
	row := func(name string, p result.AcceptancePoint) {
		cells := []cell{
			{name, numberOf(p.True, 100).Range() + thin + "%"},
			text(rounded(p.Factor, min(exponent(p.Factor)-1, 0))),
			{chance(p.Passing), chanceRange(p.Passing)},
			estimateCell(numberOf(p.Shown, 100)), text(rounded(100*p.Shown.SD, -1)), text("–"), text("–"),
		}
		if p.Formula.Applies {
			cells[5] = text(chanceWords(p.Formula.Passing))
		}
		if p.Formula.RunHours > 0 {
			cells[6] = text(roundHours(p.Formula.RunHours))
		}
		t.Rows = append(t.Rows, cells)
	}
	row(say("acceptance.as.entered", facts{"True": rounded(100*a.AsEntered.True.Mean, -1)}), a.AsEntered)
	for _, p := range a.Curve {
		row(short(round3(100*p.True.Mean))+thin+"%", p)
	}
	return t
}

// lengthSection is the probability to pass by the length of the run.
func lengthSection(a *result.Acceptance) (*section, error) {
	l := a.RunLength
	if !l.Asked {
		return nil, nil
	}
	var points []passPoint
	t := table{Words: 1, Head: heads("length", "passes")}
	for _, one := range l.Lengths {
		points = append(points, passPoint{x: round3(one.Hours), label: hoursOf(one.Hours), passing: one.Passing, formula: -1})
		t.Rows = append(t.Rows, []cell{text(hoursOf(one.Hours)), {chance(one.Passing), chanceRange(one.Passing)}})
	}
	f := agreedFacts(a)
	heading := lengthSentence(a)
	f["True"] = short(round3(100*l.True.Mean)) + thin + "%"
	f["Entered"] = l.Entered
	option, err := passOption(points, say("acceptance.length.axis", f), described(heading), a.Agreement.RunHours)
	if err != nil {
		return nil, err
	}
	t.Caption = heading
	return &section{ID: "length", Heading: heading, Reading: say("acceptance.length.reading", f), Charts: []chart{{"length", 280, option}}, Table: t}, nil
}

// passOption draws the curve with its intervals, and the formula as a dashed line beside it; a line marks what is agreed.
func passOption(points []passPoint, axis, aria string, agreed float64) (template.JS, error) {
	var mean, formula []opts.LineData
	var intervals []opts.CustomData
	for _, p := range points {
		tip := say("acceptance.tip", facts{"At": p.label, "Passing": chance(p.passing), "Range": chanceRange(p.passing)})
		at := func(y float64) []any { return []any{p.x, round3(y)} }
		intervals = append(intervals, opts.CustomData{Name: tip, Value: []float64{p.x, round3(100 * p.passing.Low), round3(100 * p.passing.High)}})
		mean = append(mean, opts.LineData{Name: tip, Value: at(100 * p.passing.Mean)})
		if p.formula >= 0 {
			formula = append(formula, opts.LineData{Name: say("acceptance.tip.formula", facts{"At": p.label, "Passing": chanceWords(p.formula / 100)}), Value: at(p.formula)})
		}
	}
	words := []string{say("acceptance.band", nil), say("acceptance.simulated", nil)}
	line := charts.NewLine()
	line.AddSeries(words[1], mean, colour("accent"), charts.WithLineStyleOpts(opts.LineStyle{Color: "colour:accent", Width: 2}),
		charts.WithLineChartOpts(opts.LineChart{ShowSymbol: opts.Bool(true), Symbol: "circle", SymbolSize: 6}), agreedLine(agreed))
	if len(formula) > 0 {
		words = append(words, say("acceptance.by.formula", nil))
		line.AddSeries(words[2], formula, colour("ink"), charts.WithLineStyleOpts(opts.LineStyle{Color: "colour:ink", Width: 1, Type: "dashed"}),
			charts.WithLineChartOpts(opts.LineChart{ShowSymbol: opts.Bool(true), Symbol: "rect", SymbolSize: 4}))
	}
	band := charts.NewCustom()
	band.AddSeries(words[0], intervals, drawn("upright", 0, []int{1, 2}), colour("accent-soft"))
	band.Overlap(line)
	x := valueAxis(axis, "fn:number")
	x.Scale = opts.Bool(true)
	band.SetGlobalOptions(append(frame(aria), legendOf(words...), plot("56", "24", "24"), charts.WithXAxisOpts(x),
		charts.WithYAxisOpts(opts.YAxis{
			Type: "value", Name: "%", Min: 0, Max: 100,
			AxisLabel: &opts.AxisLabel{Formatter: "fn:number"},
		}))...)
	return optionOf(band)
}

func agreedLine(at float64) charts.SeriesOpts {
	return func(series *charts.SingleSeries) {
		charts.WithMarkLineNameXAxisItemOpts(opts.MarkLineNameXAxisItem{Name: say("acceptance.agreed", nil), XAxis: round3(at)})(series)
		charts.WithMarkLineStyleOpts(opts.MarkLineStyle{
			Symbol:    []string{"none", "none"},
			Label:     &opts.Label{Show: opts.Bool(true), Formatter: "{b}", Position: "end", Color: "colour:ink"},
			LineStyle: &opts.LineStyle{Color: "colour:ink", Type: "dashed", Width: 1},
		})(series)
	}
}
