package report

import (
	"html/template"
	"slices"
	"strings"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/keyfigure"
	"tuckline/internal/scenario"
)

// ratesSection is the V-curve: how fast each stage could deliver the answer.
func ratesSection(s *subject) (*section, error) {
	stages := s.Figures.Stages
	if len(stages) == 0 {
		return nil, nil
	}
	f := facts{
		"Constraint": s.stationList(s.Figures.Bounds.Constraint), "Each": s.oneEach(s.Figures.Bounds.Constraint), "Unit": s.Figures.Unit, "N": len(s.Figures.Bounds.Constraint),
		"AtMost": perMinute(s.Figures.Bounds.Unlimited), "Outside": s.outside(),
	}
	heading := say("rates.heading", f)
	option, err := s.ratesOption(f, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "rates", Heading: heading, Reading: say("rates.reading", f),
		Charts: []chart{{"rates", 320, option}},
		Table:  s.ratesTable(heading),
	}, nil
}

func perMinute(v float64) string { return rounded(v, -1) }

// rateKind is one line of the V-curve.
type rateKind struct {
	word, colour, dash, symbol string
	of                         func(keyfigure.Stage) float64
}

var rateKinds = []rateKind{
	{"top", "faint", "dotted", "triangle", func(s keyfigure.Stage) float64 { return s.Top }},
	{"set", "ink", "solid", "circle", func(s keyfigure.Stage) float64 { return s.Set }},
	{"effective", "accent", "dotted", "rect", func(s keyfigure.Stage) float64 { return s.Effective }},
	{"at.most", "accent", "solid", "diamond", func(s keyfigure.Stage) float64 { return s.AtMost }},
}

func (s *subject) stageName(stage keyfigure.Stage) string {
	var parts []string
	for _, i := range stage.Stations {
		parts = append(parts, s.Figures.Stations[i].Name)
	}
	return strings.Join(parts, " + ")
}

func (s *subject) ratesOption(f facts, aria string) (template.JS, error) {
	var labels, words []string
	for _, stage := range s.Figures.Stages {
		labels = append(labels, s.stageName(stage))
	}
	line := charts.NewLine()
	line.SetXAxis(labels)
	for _, kind := range rateKinds {
		var points []opts.LineData
		word := say("rates."+kind.word, nil)
		for i, stage := range s.Figures.Stages {
			points = append(points, opts.LineData{
				Value: round3(kind.of(stage)),
				Name:  say("rates.tip", facts{"Station": labels[i], "Kind": word, "Rate": perMinute(kind.of(stage)), "Unit": f["Unit"]}),
			})
		}
		words = append(words, word)
		line.AddSeries(word, points, colour(kind.colour),
			charts.WithLineStyleOpts(opts.LineStyle{Color: "colour:" + kind.colour, Type: kind.dash, Width: 2}),
			charts.WithLineChartOpts(opts.LineChart{ShowSymbol: opts.Bool(true), Symbol: kind.symbol, SymbolSize: 8}))
	}
	x := opts.XAxis{Type: "category", AxisLabel: &opts.AxisLabel{Formatter: "fn:plain", Interval: "0"}}
	y := opts.YAxis{
		Type: "value", Min: 0, Name: say("rates.axis", f), NameLocation: "end",
		AxisLabel: &opts.AxisLabel{Formatter: "fn:number"},
	}
	line.SetGlobalOptions(append(frame(aria), legendOf(words...), plot("64", "24", "8"),
		charts.WithXAxisOpts(x), charts.WithYAxisOpts(y))...)
	return optionOf(line)
}

// ratesTable has the rate of every station in its own unit and in pieces of the answer.
func (s *subject) ratesTable(caption string) table {
	t := table{Caption: caption, Words: 1, Head: append(heads("station", "own.set", "own.unit"),
		say("rates.set", nil), say("rates.top", nil), say("column.alone", nil), say("rates.effective", nil), say("rates.at.most", nil))}
	for i, r := range s.Figures.Stations {
		row := []cell{
			text(r.Name), text(perMinute(r.Set.Pieces)), text(r.GivesUnit), text(perMinute(r.Set.Answer)), text(perMinute(r.Top.Answer)),
			text(rounded(100*r.Alone, -1)), text(perMinute(r.Effective.Answer)), text(perMinute(r.AtMost.Answer)),
		}
		if s.guarantees() {
			row = append(row, s.guaranteedCells(i)...)
		}
		t.Rows = append(t.Rows, row)
	}
	if s.guarantees() {
		t.Head = append(t.Head, heads("guaranteed", "in.line")...)
	}
	t.Note = say("rates.note", facts{"Unit": s.Figures.Unit, "Guaranteed": s.guarantees()})
	return t
}

// guarantees says that an efficiency is guaranteed for a station.
func (s *subject) guarantees() bool {
	return slices.ContainsFunc(s.Scenario.Stations, func(one scenario.Station) bool { return one.Guaranteed > 0 })
}

// guaranteedCells are what a station guarantees alone, and how much it runs in the line.
func (s *subject) guaranteedCells(i int) []cell {
	guaranteed := "–"
	if share := s.Scenario.Stations[i].Guaranteed; share > 0 {
		guaranteed = rounded(100*share, -1)
	}
	return []cell{text(guaranteed), estimateCell(numberOf(s.Results.Stations[i].States.Running, 100))}
}
