package report

import (
	"html/template"
	"math"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
	"tuckline/internal/study"
	"tuckline/sim"
)

// statesSection shows how the time of each station is spent.
func statesSection(o *study.Outcome, _ window) (*section, error) {
	stations := o.Results.Stations
	heading := statesHeading(o)
	shown := looksIn(stations)
	option, err := statesOption(stations, shown, heading)
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "states", Heading: heading, Reading: say("states.reading", nil),
		Charts: []chart{{ID: "states", Height: 90 + 34*len(stations), Option: option}},
		Table:  statesTable(stations, shown, heading),
	}, nil
}

func statesHeading(o *study.Outcome) string {
	var worst stateLook
	states := statesOf(o, o.Constraint)
	for _, l := range looks[1:] {
		if share := l.of(states).Mean; share > 0 && (worst.of == nil || share > worst.of(states).Mean) {
			worst = l
		}
	}
	f := facts{"Station": o.Constraint, "Running": numberOf(states.Running, 100).Mean}
	if worst.of == nil {
		return say("states.heading.full", f)
	}
	f["State"] = worst.Word()
	return say("states.heading", f)
}

func statesOf(o *study.Outcome, station string) result.States {
	for _, s := range o.Results.Stations {
		if s.Name == station {
			return s.States
		}
	}
	return result.States{}
}

// labelFrom is the share, in percent, from which a bar has room for its number.
const labelFrom = 7

func statesOption(stations []result.Station, shown []stateLook, aria string) (template.JS, error) {
	bar := charts.NewBar()
	var words []string
	for _, l := range shown {
		words = append(words, l.Word())
		bar.AddSeries(l.Word(), stateBars(stations, l), stateColour(l),
			charts.WithBarChartOpts(opts.BarChart{Stack: "time", BarCategoryGap: "30%"}))
	}
	bar.SetXAxis(stationNames(stations)).XYReversal()
	bar.SetGlobalOptions(append(frame(described(aria)), legendOf(words...), plot("36", "12", "24"),
		charts.WithXAxisOpts(percentAxis()), charts.WithYAxisOpts(names(stationNames(stations))))...)
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

func stationNames(stations []result.Station) []string {
	all := make([]string, len(stations))
	for i, s := range stations {
		all[i] = s.Name
	}
	return all
}

func statesTable(stations []result.Station, shown []stateLook, caption string) table {
	head := heads("station")
	columns := [][]cell{textColumn(stationNames(stations))}
	for _, l := range shown {
		head = append(head, say("column.state", facts{"State": l.Word()}))
		shares := make([]result.Estimate, len(stations))
		for i, s := range stations {
			shares[i] = l.of(s.States)
		}
		columns = append(columns, columnOf(shares, 100))
	}
	return tableOf(caption, head, 1, columns...)
}
