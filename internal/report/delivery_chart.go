package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// finishSection is the curve of the finish: the share of runs that are finished by a time.
func finishSection(d *result.Delivery) (*section, error) {
	t := finishTable(d)
	heading := finishSentence(d)
	t.Caption = heading
	made := &section{ID: "finish", Heading: heading, Reading: say("delivery.reading", facts{"Starts": d.Starts}), Table: t, Open: true}
	if len(d.Curve) < 2 {
		return made, nil
	}
	option, err := finishOption(d, described(heading))
	if err != nil {
		return nil, err
	}
	made.Charts = []chart{{"finish", 320, option}}
	return made, nil
}

// finishTable has the quantiles with their intervals.
func finishTable(d *result.Delivery) table {
	t := table{Words: 1, Head: heads("finished", "finish.at", "finish.from", "finish.to", "finish.hours")}
	for _, one := range d.Finish {
		cells := []cell{text(short(100*one.P) + thin + "%"), text(finishWords(one, d)), text("–"), text("–"), text("–")}
		if one.LowAt != "" {
			cells[2] = text(one.LowAt)
		}
		if one.HighWithin {
			cells[3] = text(one.HighAt)
		}
		if one.Within {
			cells[4] = text(rounded(one.Hours, -1))
		}
		t.Rows = append(t.Rows, cells)
	}
	return t
}

// finishOption draws the curve in its interval; dashed lines mark the dates.
func finishOption(d *result.Delivery, aria string) (template.JS, error) {
	var mean []opts.LineData
	var intervals []opts.CustomData
	for _, p := range d.Curve {
		tip := say("delivery.tip", facts{"At": p.At, "Finished": chance(p.Finished), "Range": chanceRange(p.Finished)})
		at := func(y float64) []any { return []any{round3(p.Hours), round3(100 * y)} }
		intervals = append(intervals, opts.CustomData{Name: tip, Value: []float64{round3(p.Hours), round3(100 * p.Finished.Low), round3(100 * p.Finished.High)}})
		mean = append(mean, opts.LineData{Name: tip, Value: at(p.Finished.Mean)})
	}
	words := []string{say("acceptance.band", nil), say("delivery.finished", nil)}
	line := charts.NewLine()
	line.AddSeries(words[1], mean, colour("accent"), charts.WithLineStyleOpts(opts.LineStyle{Color: "colour:accent", Width: 2}),
		charts.WithLineChartOpts(opts.LineChart{ShowSymbol: opts.Bool(true), Symbol: "circle", SymbolSize: 4}), dueLines(d))
	band := charts.NewCustom()
	band.AddSeries(words[0], intervals, drawn("upright", 0, []int{1, 2}), colour("accent-soft"))
	band.Overlap(line)
	x := valueAxis(say("delivery.axis", facts{"Starts": d.Starts}), "fn:number")
	x.Scale = opts.Bool(true)
	band.SetGlobalOptions(append(frame(aria), legendOf(words...), plot("56", "72", "24"), charts.WithXAxisOpts(x),
		charts.WithYAxisOpts(opts.YAxis{Type: "value", Name: "%", Min: 0, Max: 100, AxisLabel: &opts.AxisLabel{Formatter: "fn:number"}}))...)
	return optionOf(band)
}

// dueLines mark each date once, where it lies near the curve.
func dueLines(d *result.Delivery) charts.SeriesOpts {
	marked := map[string]bool{}
	return func(series *charts.SingleSeries) {
		for _, one := range d.Orders {
			if !marked[one.Due] {
				marked[one.Due] = true
				charts.WithMarkLineNameXAxisItemOpts(opts.MarkLineNameXAxisItem{Name: say("delivery.due", facts{"Due": one.Due}), XAxis: round3(one.DueHours)})(series)
			}
		}
		charts.WithMarkLineStyleOpts(opts.MarkLineStyle{
			Symbol:    []string{"none", "none"},
			Label:     &opts.Label{Show: opts.Bool(true), Formatter: "{b}", Position: "end", Color: "colour:ink"},
			LineStyle: &opts.LineStyle{Color: "colour:ink", Type: "dashed", Width: 1},
		})(series)
	}
}
