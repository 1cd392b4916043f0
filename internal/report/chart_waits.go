package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// waitsSection shows how long each station waits for pieces and for room.
func waitsSection(s *subject) (*section, error) {
	heading := s.waitsHeading()
	option, err := s.waitsOption(described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "waits", Heading: heading, Reading: say("waits.reading", facts{"Confidence": short(100 * s.Results.Confidence)}),
		Charts: []chart{{"waits", 90 + 38*len(s.Results.Stations), option}},
		Table:  s.waitsTable(heading),
	}, nil
}

func (s *subject) waitsHeading() string {
	limiting := s.limiting()
	named := stationsOf(limiting)
	share := func(l stateLook) string { return percentWords(meanShare(limiting, l.of).Mean) }
	return say("waits.heading", facts{
		"Station": s.stationList(named), "One": len(limiting) == 1, "Each": s.oneEach(named),
		"Starved": share(waiting[0]), "Blocked": share(waiting[1]),
	})
}

// waiting are the two states that come from neighbours.
var waiting = looks[1:3]

func (s *subject) waitsOption(aria string) (template.JS, error) {
	c := charts.NewCustom()
	var words []string
	for k, l := range waiting {
		words = append(words, l.Word())
		c.AddSeries(l.Word(), s.waitMarks(l, float64(2*k-1)/6),
			drawn("interval", []int{1, 2, 3}, 0), charts.WithItemStyleOpts(opts.ItemStyle{Color: "colour:" + l.Key}))
	}
	rows := names(s.stationNames())
	rows.SplitLine = &opts.SplitLine{Show: opts.Bool(true)}
	c.SetGlobalOptions(append(frame(aria), legendOf(words...), plot("36", "24", "24"),
		charts.WithXAxisOpts(valueAxis(say("share", nil), "fn:number")), charts.WithYAxisOpts(rows))...)
	return optionOf(c)
}

// waitMarks are a mean and its interval a station, beside the middle of its row.
func (s *subject) waitMarks(l stateLook, beside float64) []opts.CustomData {
	var marks []opts.CustomData
	for i, station := range s.Results.Stations {
		e := l.of(station.States)
		share := numberOf(e, 100)
		marks = append(marks, opts.CustomData{
			Name:  say("states.tip", facts{"Station": station.Name, "State": l.Word(), "Share": share.Mean, "Range": share.Range()}),
			Value: []float64{float64(i), round3(100 * e.Mean), round3(100 * e.Low), round3(100 * e.High), beside},
		})
	}
	return marks
}

func (s *subject) waitsTable(caption string) table {
	head := heads("station")
	columns := [][]cell{textColumn(s.stationNames())}
	for _, l := range waiting {
		shares := s.column(func(r result.Station) result.Estimate { return l.of(r.States) })
		place := columnPlace(shares, 100)
		mean, low, high := make([]cell, len(shares)), make([]cell, len(shares)), make([]cell, len(shares))
		for i, e := range shares {
			n := atPlace(e, 100, place)
			mean[i], low[i], high[i] = text(n.Mean), text(n.Low), text(n.High)
		}
		head = append(head, say("column.state", facts{"State": l.Word()}), say("column.low", nil), say("column.high", nil))
		columns = append(columns, mean, low, high)
	}
	holding := columnOf(s.column(func(r result.Station) result.Estimate { return r.Holding }), 100)
	return tableOf(caption, append(head, say("column.holding", nil)), 1, append(columns, holding)...)
}
