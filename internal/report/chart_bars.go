package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// barRow is a bar with its interval, what is said when it is pointed at, and a count in words beside it.
type barRow struct {
	Label, Tip, Count string
	// Share is as long as the bar is, in units of the axis after scaling.
	Share result.Estimate
	Scale float64
	// Fill is a colour of its own, where bars differ.
	Fill string
}

// barsWithCounts are bars from the top down, with their intervals and counts.
func barsWithCounts(aria, axis, fill string, rows []barRow) (template.JS, error) {
	var labels []string
	var bars []opts.BarData
	var intervals []opts.CustomData
	var counts []opts.ScatterData
	for i, row := range rows {
		at := func(v float64) float64 { return round3(v * row.Scale) }
		mean, low, high := at(row.Share.Mean), at(row.Share.Low), at(row.Share.High)
		one := opts.BarData{Name: row.Tip, Value: mean}
		if row.Fill != "" {
			one.ItemStyle = &opts.ItemStyle{Color: row.Fill}
		}
		labels, bars = append(labels, row.Label), append(bars, one)
		counts = append(counts, opts.ScatterData{Name: row.Count, Value: []any{high, i}})
		intervals = append(intervals, opts.CustomData{Name: row.Tip, Value: []float64{float64(i), mean, low, high, 0}})
	}
	bar := charts.NewBar()
	bar.AddSeries("", bars, colour(fill), charts.WithBarChartOpts(opts.BarChart{BarCategoryGap: "45%"}))
	whiskers := charts.NewCustom()
	whiskers.AddSeries("", intervals, drawn("whisker", []int{1, 2, 3}, 0), colour("ink"))
	bar.SetXAxis(labels).XYReversal()
	beside := charts.NewScatter()
	beside.AddSeries("", counts, colour("ink"), charts.WithScatterChartOpts(opts.ScatterChart{SymbolSize: 1}),
		charts.WithLabelOpts(opts.Label{Show: opts.Bool(true), Position: "right", Formatter: "fn:name", Color: "colour:faint"}))
	bar.Overlap(whiskers, beside)
	x := valueAxis(axis, "fn:number")
	x.Min = 0
	bar.SetGlobalOptions(append(frame(aria), noLegend(), plot("8", "130", "24"),
		charts.WithXAxisOpts(x), charts.WithYAxisOpts(names(labels)))...)
	return optionOf(bar)
}
