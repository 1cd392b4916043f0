package report

import (
	"html/template"
	"math"
	"slices"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// outputSection shows how single shifts differ and how the mean settled.
func outputSection(s *subject) (*section, error) {
	if len(s.Shifts) == 0 {
		return nil, nil
	}
	out := s.Results.Output
	place := placeOf(halfWidth(out.Total), out.Total.Mean)
	f := facts{
		"Unit": out.Unit, "Window": s.Window.One, "Windows": s.Window.Many, "Runs": s.Window.Runs, "Settles": len(s.RunningMean) > 0, "N": whole(float64(len(s.Shifts))),
		"P10": rounded(out.ShiftP10, place), "P50": rounded(out.ShiftP50, place), "P90": rounded(out.ShiftP90, place),
		"Confidence": short(100 * s.Results.Confidence), "None": nothing(out), "Outside": s.outside(), "Tenths": tenths(s.Shifts),
		"Least": whole(slices.Min(s.Shifts)), "Most": whole(slices.Max(s.Shifts)),
	}
	heading := say("output.heading", f)
	spread, err := s.spreadOption(f, described(heading))
	if err != nil {
		return nil, err
	}
	drawings := []chart{{"spread", 250, spread}}
	if len(s.RunningMean) > 0 {
		mean, err := s.meanOption(f, described(say("output.mean", f)))
		if err != nil {
			return nil, err
		}
		drawings = append(drawings, chart{"mean", 250, mean})
	}
	return &section{
		ID: "output", Heading: heading, Reading: say("output.reading", f),
		Charts: drawings,
		Table:  s.outputTable(heading, f),
	}, nil
}

// bins are equal parts of the range of values: a dozen or somewhat more, round numbers.
func bins(values []float64) (edges []float64, counts []int) {
	low, high := slices.Min(values), slices.Max(values)
	step := niceStep((high - low) / min(max(12, 1.5*math.Sqrt(float64(len(values)))), 40))
	first, last := math.Floor(low/step), math.Floor(high/step)
	counts = make([]int, int(last-first)+1)
	for k := range len(counts) + 1 {
		edges = append(edges, (first+float64(k))*step)
	}
	for _, v := range values {
		counts[int(math.Floor(v/step)-first)]++
	}
	return edges, counts
}

// niceStep is the next of 1, 2 and 5 times a power of ten, at least 1.
func niceStep(about float64) float64 {
	if about <= 1 {
		return 1
	}
	power := math.Pow10(exponent(about))
	for _, step := range []float64{1, 2, 5} {
		if step*power >= about {
			return step * power
		}
	}
	return 10 * power
}

func (s *subject) spreadOption(f facts, aria string) (template.JS, error) {
	edges, counts := bins(s.Shifts)
	var columns []opts.CustomData
	for k, n := range counts {
		columns = append(columns, opts.CustomData{
			Name: say("output.tip", facts{
				"Low": whole(edges[k]), "High": whole(edges[k+1]), "N": n, "Unit": f["Unit"], "Windows": s.Window.Many,
			}),
			Value: []float64{edges[k], edges[k+1], float64(n)},
		})
	}
	c := charts.NewCustom()
	c.AddSeries("", columns, drawn("column", []int{0, 1}, 2), colour("accent-soft"), s.quantileLines())
	x := valueAxis(say("output.axis", f), "fn:number")
	x.Scale = opts.Bool(true)
	c.SetGlobalOptions(append(frame(aria), noLegend(), plot("40", "24", "24"),
		charts.WithXAxisOpts(x),
		charts.WithYAxisOpts(opts.YAxis{Type: "value", MinInterval: 1, AxisLabel: &opts.AxisLabel{Formatter: "fn:number"}}))...)
	return optionOf(c)
}

// quantileLines marks the tenth, the middle and the ninetieth of a hundred.
func (s *subject) quantileLines() charts.SeriesOpts {
	out := s.Results.Output
	if !tenths(s.Shifts) {
		return func(*charts.SingleSeries) {}
	}
	return func(series *charts.SingleSeries) {
		for _, q := range []struct {
			word string
			at   float64
		}{{"p10", out.ShiftP10}, {"p50", out.ShiftP50}, {"p90", out.ShiftP90}} {
			charts.WithMarkLineNameXAxisItemOpts(opts.MarkLineNameXAxisItem{Name: say("output."+q.word, nil), XAxis: q.at})(series)
		}
		charts.WithMarkLineStyleOpts(opts.MarkLineStyle{
			Symbol:    []string{"none", "none"},
			Label:     &opts.Label{Show: opts.Bool(true), Formatter: "{b}", Position: "end", Color: "colour:ink"},
			LineStyle: &opts.LineStyle{Color: "colour:ink", Type: "dashed", Width: 1},
		})(series)
	}
}

// meanOption is the running mean with its interval: two stacked lines, the
// lower unseen, the upper filled, and the mean on top.
func (s *subject) meanOption(f facts, aria string) (template.JS, error) {
	var n []int
	var low, width, mean []opts.LineData
	least, most := math.Inf(1), math.Inf(-1)
	place := placeOf(halfWidth(s.Results.Output.Total), s.Results.Output.Total.Mean)
	for i, e := range s.RunningMean {
		n = append(n, i+2)
		tip := say("output.mean.tip", facts{"N": i + 2, "Mean": atPlace(e, 1, place), "Unit": f["Unit"], "Windows": s.Window.Runs})
		low = append(low, opts.LineData{Value: round3(e.Low)})
		width = append(width, opts.LineData{Value: round3(e.High - e.Low)})
		mean = append(mean, opts.LineData{Name: tip, Value: round3(e.Mean)})
	}
	for _, e := range settled(s.RunningMean) {
		least, most = min(least, e.Low), max(most, e.High)
	}
	hidden := charts.WithLineStyleOpts(opts.LineStyle{Opacity: opts.Float(0)})
	band := charts.WithLineChartOpts(opts.LineChart{Stack: "band", ShowSymbol: opts.Bool(false), Symbol: "rect"})
	words := []string{say("output.band", f), say("output.mean.word", f)}
	line := charts.NewLine()
	line.SetXAxis(n).AddSeries("", low, hidden, band).
		AddSeries(words[0], width, hidden, band, charts.WithAreaStyleOpts(opts.AreaStyle{Color: "colour:accent-soft", Opacity: opts.Float(1)}), colour("accent-soft")).
		AddSeries(words[1], mean, colour("accent"), charts.WithLineStyleOpts(opts.LineStyle{Color: "colour:accent", Width: 2}),
			charts.WithLineChartOpts(opts.LineChart{ShowSymbol: opts.Bool(true), Symbol: "circle", SymbolSize: 4}))
	x := valueAxis(say("output.mean.axis", facts{"Windows": s.Window.Runs}), "fn:number")
	x.Type = "category"
	y := roundAxis(least, most)
	line.SetGlobalOptions(append(frame(aria), legendOf(words...), plot("40", "24", "24"), charts.WithXAxisOpts(x), charts.WithYAxisOpts(y))...)
	return optionOf(line)
}

// roundAxis reaches from one round number to another, around both limits, in equal steps.
func roundAxis(least, most float64) opts.YAxis {
	y := opts.YAxis{Type: "value", Scale: opts.Bool(true), AxisLabel: &opts.AxisLabel{Formatter: "fn:number"}}
	if most > least {
		step := niceStep((most - least) / 4)
		y.Min, y.Max = math.Max(0, math.Floor(least/step)*step), math.Ceil(most/step)*step
		y.MinInterval, y.MaxInterval = step, step
	}
	return y
}

// settled leaves out the first means, whose wide intervals would flatten the rest.
func settled(means []result.Estimate) []result.Estimate {
	return means[len(means)/10:]
}

func round3(v float64) float64 { return math.Round(v*1e3) / 1e3 }

func (s *subject) outputTable(caption string, f facts) table {
	out := s.Results.Output
	total, hour := numberOf(out.Total, 1), numberOf(out.PerHour, 1)
	row := func(name string, cells ...cell) []cell {
		return append([]cell{text(say("output.row."+name, f))}, cells...)
	}
	given := func(name string) []cell { return row(name, text(f[name].(string)), text(""), text("")) }
	t := table{
		Caption: caption, Head: heads("figure", "mean", "low", "high"), Words: 1,
		Rows: [][]cell{
			row("total", text(total.Mean), text(total.Low), text(total.High)),
			row("hour", text(hour.Mean), text(hour.Low), text(hour.High)),
		},
	}
	if tenths(s.Shifts) && !nothing(out) {
		t.Rows = append(t.Rows, given("P10"), given("P50"), given("P90"))
	}
	t.Rows = append(t.Rows, given("Least"), given("Most"))
	return t
}
