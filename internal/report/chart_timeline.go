package report

import (
	"cmp"
	"html/template"
	"slices"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/sim"
)

// timelineSection shows what every station did in one traced shift.
func timelineSection(s *subject) (*section, error) {
	if len(s.Trace.States) == 0 {
		return nil, nil
	}
	heading := s.timelineHeading()
	option, err := s.timelineOption(described(heading))
	if err != nil {
		return nil, err
	}
	w := s.traced()
	return &section{
		ID: "timeline", Heading: heading,
		Reading: say("timeline.reading", facts{"Window": s.Window.One, "Part": s.tracedPart(), "Slot": minutesWords(w.slot())}),
		Charts:  []chart{{"timeline", 150 + 34*len(s.Results.Stations), option}},
		Table:   s.stopList(heading),
	}, nil
}

func (s *subject) timelineHeading() string {
	limiting, longest, n := stationsOf(s.limiting()), sim.Micros(0), 0
	for _, stop := range s.tracedStops() {
		if slices.Contains(limiting, s.Results.Stations[stop.Station].Name) {
			n++
			longest = max(longest, stop.Done-stop.Begin)
		}
	}
	return say("timeline.heading", facts{
		"Window": s.Window.One, "Part": s.tracedPart(), "Station": s.stationList(limiting), "One": len(limiting) == 1, "Each": s.oneEach(limiting), "N": n, "Longest": minutesWords(longest),
	})
}

// minutesWords is a duration as people say it: "45 s", "4.4 min", "78 min".
func minutesWords(d sim.Micros) string {
	if d < sim.Minute {
		return whole(float64(d)/float64(sim.Second)) + thin + "s"
	}
	minutes := float64(d) / float64(sim.Minute)
	return rounded(minutes, min(exponent(minutes)-1, 0)) + thin + "min"
}

// tracedStops are those that began in the window.
func (s *subject) tracedStops() []sim.StopSpell {
	w := s.traced()
	var all []sim.StopSpell
	for _, stop := range s.Trace.Stops {
		if stop.Begin >= w.From && stop.Begin < w.To {
			stop.Done = min(stop.Done, w.To)
			stop.Work = min(stop.Work, stop.Done)
			all = append(all, stop)
		}
	}
	return all
}

func (s *subject) timelineOption(aria string) (template.JS, error) {
	w := s.traced()
	data := map[sim.State][]opts.CustomData{}
	for i := range s.Results.Stations {
		for _, one := range stretches(s.Trace.States, i, w) {
			data[one.State] = append(data[one.State], opts.CustomData{
				Name: s.reason(one), Value: []float64{float64(i), w.seconds(one.From), w.seconds(one.To)},
			})
		}
	}
	c := charts.NewCustom()
	var words []string
	for _, l := range looks {
		if len(data[l.State]) > 0 {
			words = append(words, l.Word())
			c.AddSeries(l.Word(), data[l.State], drawn("spell", []int{1, 2}, 0), stateColour(l))
		}
	}
	option := append(frame(aria), legendOf(words...), plot("36", "24", "56"),
		charts.WithXAxisOpts(s.clockAxis()), charts.WithYAxisOpts(names(s.stationNames())),
		charts.WithDataZoomOpts(
			opts.DataZoom{Type: "inside", FilterMode: "weakFilter"},
			opts.DataZoom{Type: "slider", FilterMode: "weakFilter", LabelFormatter: "fn:clock"}))
	c.SetGlobalOptions(append(option, charts.WithTooltipOpts(opts.Tooltip{Show: opts.Bool(true), Trigger: "item", Formatter: "fn:spellTip"}))...)
	return optionOf(c)
}

// reason is the stop that a spell belongs to, or that it stands for several spells.
func (s *subject) reason(one stretch) string {
	switch {
	case one.Mixed:
		return say("timeline.mixed", nil)
	case one.By >= 0 && one.Stop >= 0:
		by := s.Results.Stations[one.By]
		if one.Stop >= len(by.Stops) {
			return ""
		}
		return say("stop.at", facts{"Stop": by.Stops[one.Stop].Name, "Station": by.Name})
	default:
		return ""
	}
}

// listedStops is how many stops of the traced shift the table has at most.
const listedStops = 150

// stopList has the stops of the traced shift in order of time, the longest if there are many.
func (s *subject) stopList(caption string) table {
	stops := s.tracedStops()
	t := table{Caption: caption, Head: heads("begins", "station", "stop", "waits", "lasts"), Words: 3, Long: true}
	if len(stops) > listedStops {
		t.Note = say("timeline.longest", facts{"N": listedStops, "Of": len(stops)})
		slices.SortStableFunc(stops, func(a, b sim.StopSpell) int { return cmp.Compare(b.Done-b.Begin, a.Done-a.Begin) })
		stops = stops[:listedStops]
	}
	slices.SortStableFunc(stops, func(a, b sim.StopSpell) int { return cmp.Compare(a.Begin, b.Begin) })
	w := s.traced()
	minutes := func(d sim.Micros) cell { return text(rounded(float64(d)/float64(sim.Minute), -1)) }
	for _, stop := range stops {
		station := s.Results.Stations[stop.Station]
		name := ""
		if stop.Stop < len(station.Stops) {
			name = station.Stops[stop.Stop].Name
		}
		t.Rows = append(t.Rows, []cell{
			text(clock(w.seconds(stop.Begin))), text(station.Name), text(name), minutes(stop.Work - stop.Begin), minutes(stop.Done - stop.Work),
		})
	}
	return t
}
