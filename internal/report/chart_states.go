package report

import (
	"html/template"
	"math"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
	"tuckline/sim"
)

// statesSection shows how the time of each station is spent.
func statesSection(s *subject) (*section, error) {
	stations := s.Results.Stations
	heading := statesHeading(s.limiting())
	shown := looksIn(stations)
	option, err := s.statesOption(shown, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "states", Heading: heading, Reading: say("states.reading", nil),
		Charts: []chart{{ID: "states", Height: 90 + 34*len(stations), Option: option}},
		Table:  s.statesTable(shown, heading),
	}, nil
}

func statesHeading(limiting result.Station) string {
	var worst stateLook
	for _, l := range looks[1:] {
		if share := l.of(limiting.States).Mean; share > 0 && (worst.of == nil || share > worst.of(limiting.States).Mean) {
			worst = l
		}
	}
	f := facts{"Station": limiting.Name, "Running": percentWords(limiting.States.Running.Mean)}
	if worst.of == nil {
		return say("states.heading.full", f)
	}
	f["State"], f["Lost"] = worst.Word(), percentWords(worst.of(limiting.States).Mean)
	return say("states.heading", f)
}

// labelFrom is the share, in percent, from which a bar has room for its number.
const labelFrom = 7

func (s *subject) statesOption(shown []stateLook, aria string) (template.JS, error) {
	bar := charts.NewBar()
	var words []string
	for _, l := range shown {
		words = append(words, l.Word())
		bar.AddSeries(l.Word(), stateBars(s.Results.Stations, l), stateColour(l),
			charts.WithBarChartOpts(opts.BarChart{Stack: "time", BarCategoryGap: "30%"}))
	}
	bar.SetXAxis(s.stationNames()).XYReversal()
	bar.SetGlobalOptions(append(frame(aria), legendOf(words...), plot("36", "24", "24"),
		charts.WithXAxisOpts(percentAxis()), charts.WithYAxisOpts(names(s.stationNames())))...)
	return optionOf(bar)
}

func percentAxis() opts.XAxis {
	axis := valueAxis(say("share", nil), "fn:number")
	axis.Min, axis.Max = 0, 100
	return axis
}

func stateBars(stations []result.Station, l stateLook) []opts.BarData {
	bars := make([]opts.BarData, len(stations))
	ink := "colour:on-state"
	if l.State == sim.Running || l.State == sim.Waiting || l.State == sim.OffShift {
		ink = "colour:ink"
	}
	for i, s := range stations {
		share := numberOf(l.of(s.States), 100)
		value := math.Round(l.of(s.States).Mean*1e4) / 100
		bars[i] = opts.BarData{
			Value: value,
			Name:  say("states.tip", facts{"Station": s.Name, "State": l.Word(), "Share": share.Mean, "Range": share.Range()}),
			Label: &opts.Label{
				Show: opts.Bool(value >= labelFrom), Position: "inside", Formatter: "fn:rounded",
				Color: ink, BackgroundColor: "inherit",
			},
		}
	}
	return bars
}

func (s *subject) statesTable(shown []stateLook, caption string) table {
	head := heads("station")
	columns := [][]cell{textColumn(s.stationNames())}
	for _, l := range shown {
		head = append(head, say("column.state", facts{"State": l.Word()}))
		columns = append(columns, columnOf(s.column(func(r result.Station) result.Estimate { return l.of(r.States) }), 100))
	}
	return tableOf(caption, head, 1, columns...)
}
