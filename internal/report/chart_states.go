package report

import (
	"cmp"
	"html/template"
	"math"
	"slices"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
	"tuckline/sim"
)

// statesSection shows how the time of each station is spent.
func statesSection(s *subject) (*section, error) {
	stations := s.Results.Stations
	heading := s.statesHeading(s.limiting())
	shown := scheduledLooks(looksIn(stations))
	option, err := s.statesOption(shown, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "states", Heading: heading, Reading: say("states.reading", facts{"Pockets": s.pocketsWords(), "OffShift": s.offShiftWords()}),
		Charts: []chart{{ID: "states", Height: 90 + 34*len(stations), Option: option}},
		Table:  s.statesTable(shown, heading),
	}, nil
}

// scheduledLooks are the states of scheduled time: off shift stands apart.
func scheduledLooks(all []stateLook) []stateLook {
	return slices.DeleteFunc(slices.Clone(all), func(l stateLook) bool { return l.State == sim.OffShift })
}

// offShiftWords say how much of all time is off shift; empty where none is.
func (s *subject) offShiftWords() string {
	if share := s.Results.Stations[0].States.OffShift; share.Mean > 0 {
		return say("states.off.shift", facts{"Share": percentWords(share.Mean)})
	}
	return ""
}

// pocketsWords are the empty pockets of the stations that may run on empty.
func (s *subject) pocketsWords() string {
	var all []string
	for _, station := range s.Results.Stations {
		if pockets := station.EmptyPocketsPerHour; pockets.N > 0 {
			all = append(all, say("states.pockets", facts{"Station": station.Name, "Pockets": numberOf(pockets, s.Window.Hours), "Window": s.Window.One}))
		}
	}
	return listed(all)
}

// statesHeading says how the stations that limit the line spend their time, on
// average of them, and what takes the largest part of the rest: all that the
// intervals do not tell apart.
func (s *subject) statesHeading(limiting []result.Station) string {
	type part struct {
		look  stateLook
		share result.Estimate
	}
	var parts []part
	for _, l := range scheduledLooks(looks[1:]) {
		if share := meanShare(limiting, l.of); share.Mean > 0 {
			parts = append(parts, part{l, share})
		}
	}
	slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(b.share.Mean, a.share.Mean) })
	named := stationsOf(limiting)
	f := facts{
		"Station": s.stationList(named), "One": len(limiting) == 1, "Each": s.oneEach(named),
		"Running": percentWords(meanShare(limiting, looks[0].of).Mean), "States": len(parts),
	}
	var largest []string
	for _, one := range parts {
		if one.share.High >= parts[0].share.Low {
			largest = append(largest, say("states.part", facts{"State": one.look.Word(), "Share": percentWords(one.share.Mean)}))
			f["Only"] = one.look.Word()
		}
	}
	if len(parts) == 0 {
		return say("states.heading.full", f)
	}
	f["Largest"], f["N"] = listed(largest), len(largest)
	return say("states.heading", f)
}

// meanShare is a share on average of some stations; its interval is rather too wide than too narrow.
func meanShare(stations []result.Station, of func(result.States) result.Estimate) result.Estimate {
	var mean result.Estimate
	for _, s := range stations {
		one := of(s.States)
		mean.Mean += one.Mean / float64(len(stations))
		mean.Low += one.Low / float64(len(stations))
		mean.High += one.High / float64(len(stations))
		mean.N = one.N
	}
	return mean
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
		columns = append(columns, cellsAt(s.sharesOf(l), 100, s.statesPlace()))
	}
	return tableOf(caption, head, 1, columns...)
}

// sharesOf are the shares of a state, station by station.
func (s *subject) sharesOf(l stateLook) []result.Estimate {
	return s.column(func(r result.Station) result.Estimate { return l.of(r.States) })
}

// statesPlace is the power of ten for all shares of states.
func (s *subject) statesPlace() int {
	var all []result.Estimate
	for _, l := range looks {
		all = append(all, s.sharesOf(l)...)
	}
	return sharesPlace(all)
}
