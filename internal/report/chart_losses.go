package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// lossKind is one way to lose a piece at a station.
type lossKind struct {
	word string
	of   func(result.Pieces) result.Estimate
}

// lossKinds are in the order in which the fate of a piece is settled, scrap last.
var lossKinds = []lossKind{
	{"faulty", func(p result.Pieces) result.Estimate { return p.Faulty }},
	{"in.runs", func(p result.Pieces) result.Estimate { return p.InRuns }},
	{"mis.picked", func(p result.Pieces) result.Estimate { return p.MisPicked }},
	{"lost.packs", func(p result.Pieces) result.Estimate { return p.LostPacks }},
	{"no.reads", func(p result.Pieces) result.Estimate { return p.NoReads }},
	{"samples", func(p result.Pieces) result.Estimate { return p.Samples }},
	{"scrapped", func(p result.Pieces) result.Estimate { return p.Scrapped }},
}

func (k lossKind) Word() string { return say("losses."+k.word, nil) }

// loser is a station that loses pieces.
type loser struct {
	result.Station
	Unit string
}

func (l loser) loses(k lossKind) bool { return k.of(l.Pieces).Mean > 0 }

// share is what is lost of all that is made.
func (l loser) share() float64 { return 1 - l.Pieces.Good.Mean/l.Pieces.Made.Mean }

func (s *subject) losers() []loser {
	var all []loser
	for i, station := range s.Results.Stations {
		one := loser{station, s.givesUnit(i)}
		for _, kind := range lossKinds {
			if one.loses(kind) {
				all = append(all, one)
				break
			}
		}
	}
	return all
}

// lossesSection shows where pieces are lost, and how.
func lossesSection(s *subject) (*section, error) {
	all := s.losers()
	if len(all) == 0 {
		return nil, nil
	}
	heading := lossesHeading(all, s.Window)
	option, rows, err := s.lossesOption(all, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "losses", Heading: heading, Reading: say("losses.reading", facts{"Window": s.Window.One}),
		Charts: []chart{{"losses", 70 + 30*rows, option}},
		Table:  s.lossesTable(all, heading),
	}, nil
}

func lossesHeading(all []loser, w window) string {
	worst := all[0]
	for _, one := range all {
		if one.share() > worst.share() {
			worst = one
		}
	}
	most := lossKinds[0]
	for _, kind := range lossKinds {
		if kind.of(worst.Pieces).Mean > most.of(worst.Pieces).Mean {
			most = kind
		}
	}
	return say("losses.heading", facts{
		"Station": worst.Name, "Unit": worst.Unit, "Share": percentWords(worst.share()), "Several": len(all) > 1,
		"Kind": most.Word(), "Pieces": numberOf(most.of(worst.Pieces), w.Hours).Mean, "Window": w.One,
	})
}

// lossesOption has a bar for every way in which a station loses pieces, as a share of what it makes.
func (s *subject) lossesOption(all []loser, aria string) (option template.JS, rows int, err error) {
	var labels []string
	var bars []opts.BarData
	var intervals []opts.CustomData
	var counts []opts.ScatterData
	place := s.lossesPlace(all)
	for _, l := range all {
		for _, kind := range lossKinds {
			if !l.loses(kind) {
				continue
			}
			lost := kind.of(l.Pieces)
			share := func(v float64) float64 { return round3(100 * v / l.Pieces.Made.Mean) }
			f := facts{"Station": l.Name, "Kind": kind.Word(), "Pieces": atPlace(lost, s.Window.Hours, place), "Unit": l.Unit, "Window": s.Window.One}
			i, tip := len(labels), say("losses.tip", f)
			labels = append(labels, say("losses.label", f))
			bars = append(bars, opts.BarData{Name: tip, Value: share(lost.Mean)})
			counts = append(counts, opts.ScatterData{Name: say("losses.count", f), Value: []any{share(lost.High), i}})
			intervals = append(intervals, opts.CustomData{Name: tip, Value: []float64{float64(i), share(lost.Mean), share(lost.Low), share(lost.High), 0}})
		}
	}
	option, err = barsWithCounts(aria, say("losses.axis", nil), "accent", labels, bars, intervals, counts)
	return option, len(labels), err
}

// lossesPlace is the power of ten for the pieces of all ways to lose one.
func (s *subject) lossesPlace(all []loser) int {
	var lost []result.Estimate
	for _, l := range all {
		for _, kind := range lossKinds {
			lost = append(lost, kind.of(l.Pieces))
		}
	}
	return columnPlace(lost, s.Window.Hours)
}

// barsWithCounts are bars with their intervals, and beside each a count in words.
func barsWithCounts(aria, axis, fill string, labels []string, bars []opts.BarData, intervals []opts.CustomData, counts []opts.ScatterData) (template.JS, error) {
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

// lossesTable adds up, station by station: made is good and all that follows. A row has one precision.
func (s *subject) lossesTable(all []loser, caption string) table {
	shown := []lossKind{}
	for _, kind := range lossKinds {
		for _, l := range all {
			if l.loses(kind) {
				shown = append(shown, kind)
				break
			}
		}
	}
	t := table{
		Caption: caption, Words: 2, Note: say("losses.note", facts{"Window": s.Window.One}),
		Head: append(heads("station", "pieces"), say("losses.made", nil), say("losses.good", nil)),
	}
	for _, kind := range shown {
		t.Head = append(t.Head, kind.Word())
	}
	for _, l := range all {
		row := []result.Estimate{l.Pieces.Made, l.Pieces.Good}
		for _, kind := range shown {
			row = append(row, kind.of(l.Pieces))
		}
		t.Rows = append(t.Rows, append([]cell{text(l.Name), text(l.Unit)}, rowOf(row, s.Window.Hours)...))
	}
	return t
}

// rowOf shows counts that add up with one precision: whole pieces, or tenths where few are lost.
func rowOf(estimates []result.Estimate, scale float64) []cell {
	place := 0
	for _, e := range estimates {
		if mean := e.Mean * scale; mean > 0 && mean < 10 {
			place = -1
		}
	}
	cells := make([]cell, len(estimates))
	for i, e := range estimates {
		cells[i] = estimateCell(atPlace(e, scale, place))
	}
	return cells
}
