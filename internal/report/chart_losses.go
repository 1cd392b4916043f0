package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// loss is what one station loses, in pieces that it would have given.
type loss struct {
	result.Station
	Unit string
}

func (s *subject) losses() []loss {
	var all []loss
	for i, station := range s.Results.Stations {
		if station.RejectedPerHour.Mean > 0 || station.ScrappedPerHour.Mean > 0 {
			all = append(all, loss{station, s.givesUnit(i)})
		}
	}
	return all
}

// lossesSection shows rejects and restart scrap.
func lossesSection(s *subject) (*section, error) {
	all := s.losses()
	if len(all) == 0 {
		return nil, nil
	}
	worst := all[0]
	for _, one := range all {
		if one.lost() > worst.lost() {
			worst = one
		}
	}
	heading := say("losses.heading", facts{
		"Station": worst.Name, "Unit": worst.Unit, "Window": s.Window.One,
		"Rejected": numberOf(worst.RejectedPerHour, s.Window.Hours).Mean, "Scrapped": numberOf(worst.ScrappedPerHour, s.Window.Hours).Mean,
	})
	option, err := s.lossesOption(all, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "losses", Heading: heading, Reading: say("losses.reading", facts{"Window": s.Window.One}),
		Charts: []chart{{"losses", 100 + 48*len(all), option}},
		Table:  s.lossesTable(all, heading),
	}, nil
}

func (l loss) lost() float64 { return l.RejectedPerHour.Mean + l.ScrappedPerHour.Mean }

// lossKind is one of the two ways to lose a piece at a station.
type lossKind struct {
	word, colour string
	of           func(loss) result.Estimate
}

var lossKinds = []lossKind{
	{"rejected", "faint", func(l loss) result.Estimate { return l.RejectedPerHour }},
	{"scrapped", "accent", func(l loss) result.Estimate { return l.ScrappedPerHour }},
}

func (s *subject) lossesOption(all []loss, aria string) (template.JS, error) {
	var labels, words []string
	for _, l := range all {
		labels = append(labels, say("losses.label", facts{"Station": l.Name, "Unit": l.Unit}))
	}
	bar := charts.NewBar()
	for _, kind := range lossKinds {
		var bars []opts.BarData
		word := say("losses."+kind.word, nil)
		for _, l := range all {
			n := numberOf(kind.of(l), s.Window.Hours)
			bars = append(bars, opts.BarData{
				Name:  say("losses.tip", facts{"Station": l.Name, "Kind": word, "Pieces": n, "Unit": l.Unit, "Window": s.Window.One}),
				Value: round3(kind.of(l).Mean * s.Window.Hours),
				Label: &opts.Label{Show: opts.Bool(true), Position: "right", Formatter: n.Mean, Color: "colour:ink"},
			})
		}
		words = append(words, word)
		bar.AddSeries(word, bars, colour(kind.colour), charts.WithBarChartOpts(opts.BarChart{BarCategoryGap: "40%", BarGap: "10%"}))
	}
	bar.SetXAxis(labels).XYReversal()
	x := valueAxis(say("losses.axis", facts{"Window": s.Window.One}), "fn:number")
	x.Min = 0
	bar.SetGlobalOptions(append(frame(aria), legendOf(words...), plot("36", "60", "24"),
		charts.WithXAxisOpts(x), charts.WithYAxisOpts(names(labels)))...)
	return optionOf(bar)
}

func (s *subject) lossesTable(all []loss, caption string) table {
	var station, unit []string
	for _, l := range all {
		station, unit = append(station, l.Name), append(unit, l.Unit)
	}
	head := heads("station", "pieces")
	columns := [][]cell{textColumn(station), textColumn(unit)}
	for _, kind := range lossKinds {
		head = append(head, say("losses.column", facts{"Kind": say("losses."+kind.word, nil), "Window": s.Window.One}))
		var lost []result.Estimate
		for _, l := range all {
			lost = append(lost, kind.of(l))
		}
		columns = append(columns, columnOf(lost, s.Window.Hours))
	}
	return tableOf(caption, head, 2, columns...)
}
