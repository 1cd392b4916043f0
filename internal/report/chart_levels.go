package report

import (
	"fmt"
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
	"github.com/go-echarts/go-echarts/v2/types"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/sim"
)

// levelSections show every buffer and conveyor that was written, one after the other.
func levelSections(s *subject) ([]section, error) {
	var all []section
	for i, b := range s.Results.Buffers {
		place := s.placeNamed(b.Name)
		if place.Kind == "hand-over" || place.Name == "" {
			continue
		}
		one, err := s.levelSection(i, b, place)
		if err != nil {
			return nil, err
		}
		all = append(all, *one)
	}
	return all, nil
}

func (s *subject) placeNamed(name string) keyfigure.Place {
	for _, p := range s.Figures.Places {
		if p.Name == name {
			return p
		}
	}
	return keyfigure.Place{}
}

func (s *subject) levelSection(i int, b result.Buffer, place keyfigure.Place) (*section, error) {
	f := facts{
		"Name": b.Name, "Unit": place.Unit, "Full": percentWords(b.Full.Mean), "Empty": percentWords(b.Empty.Mean),
		"Level": numberOf(b.Level, 1).Mean, "Capacity": whole(float64(b.Capacity)), "Window": s.Window.One, "Part": s.tracedPart(),
		"Limited": b.Capacity != sim.Unlimited, "Belt": place.TransitSeconds > 0,
		"Past": s.placesPast(b), "Nights": len(s.Results.Stations) > 0 && s.Results.Stations[0].States.OffShift.Mean > 0,
	}
	heading := say("levels.heading", f)
	option, err := s.levelOption(i, b, place, f, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: fmt.Sprintf("level-%d", i), Heading: heading, Reading: say("levels.reading", f),
		Charts: []chart{{fmt.Sprintf("level-%d", i), 270, option}},
		Table:  s.levelTable(i, b, heading, f),
	}, nil
}

// placesPast are the places of a store beside the line, or of a hand magazine, that pieces on their way past it take.
func (s *subject) placesPast(b result.Buffer) string {
	for i := range s.Scenario.Line.Buffers {
		if line := &s.Scenario.Line.Buffers[i]; line.Name == b.Name && b.Beside != nil && b.Capacity > line.Holds && line.Holds > 0 {
			return whole(float64(b.Capacity - line.Holds))
		}
	}
	return ""
}

// levelOption draws the level in one traced shift and, beside it on the same
// scale, the share of time in each class of level over all shifts.
func (s *subject) levelOption(i int, b result.Buffer, place keyfigure.Place, f facts, aria string) (template.JS, error) {
	line := charts.NewLine()
	line.AddSeries("", s.levelLine(i), charts.WithLineChartOpts(opts.LineChart{Step: "end", ShowSymbol: opts.Bool(false)}),
		charts.WithLineStyleOpts(opts.LineStyle{Color: "colour:accent", Width: 1.5}), s.levelMarks(place))
	classes := charts.NewCustom()
	classes.AddSeries("", s.classBars(i, b, place), drawn("shelf", 2, []int{0, 1}), colour("accent"),
		charts.WithSeriesOpts(func(series *charts.SingleSeries) { series.XAxisIndex, series.YAxisIndex = 1, 1 }))
	line.Overlap(classes)

	time := s.clockAxis()
	share := valueAxis(say("share", nil), "fn:number")
	share.GridIndex, share.SplitNumber = 1, 2
	level := opts.YAxis{Type: "value", Min: 0, Name: place.Unit, AxisLabel: &opts.AxisLabel{Formatter: "fn:number"}}
	shelf := opts.YAxis{Type: "value", Min: 0, GridIndex: 1, AxisLabel: &opts.AxisLabel{Show: opts.Bool(true), Formatter: "fn:blank"}}
	if b.Capacity != sim.Unlimited {
		level.AxisLabel.ShowMaxLabel = opts.Bool(false)
		level.Max, shelf.Max = b.Capacity, b.Capacity
	}
	line.ExtendXAxis(share)
	line.ExtendYAxis(shelf)
	line.SetGlobalOptions(append(frame(aria), noLegend(),
		charts.WithGridOpts(
			opts.Grid{Left: "4", Right: "30%", Top: "30", Bottom: "30", ContainLabel: opts.Bool(true)},
			opts.Grid{Left: "72%", Right: "24", Top: "30", Bottom: "30", ContainLabel: opts.Bool(true)}),
		charts.WithXAxisOpts(time), charts.WithYAxisOpts(level))...)
	return optionOf(line)
}

func (s *subject) levelLine(i int) []opts.LineData {
	var line []opts.LineData
	for _, p := range thinLevels(s.Trace.Levels, i, s.traced()) {
		line = append(line, opts.LineData{Value: []float64{p.at, float64(p.level)}})
	}
	return line
}

// levelMarks are the levels at which feeding stations stop and start again.
func (s *subject) levelMarks(place keyfigure.Place) charts.SeriesOpts {
	return func(series *charts.SingleSeries) {
		marks := []struct {
			word  string
			level int64
		}{{"levels.restart", place.Restart}, {"levels.stop", place.StopUpstream}}
		for _, m := range marks {
			if m.level > 0 {
				charts.WithMarkLineNameYAxisItemOpts(opts.MarkLineNameYAxisItem{
					Name: say(m.word, facts{"Level": whole(float64(m.level))}), YAxis: m.level,
				})(series)
			}
		}
		charts.WithMarkLineStyleOpts(opts.MarkLineStyle{
			Symbol:    []string{"none", "none"},
			Label:     &opts.Label{Show: opts.Bool(true), Formatter: "{b}", Position: "insideStartTop", Color: "colour:faint", BackgroundColor: "colour:paper"},
			LineStyle: &opts.LineStyle{Color: "colour:faint", Type: "dashed", Width: 1},
		})(series)
	}
}

// classBars are the share of time in each class: empty below the scale, then equal parts of the capacity.
func (s *subject) classBars(i int, b result.Buffer, place keyfigure.Place) []opts.CustomData {
	if i >= len(s.Classes) || b.Capacity <= 0 {
		return nil
	}
	step := float64(b.Capacity) / (sim.LevelClasses - 1)
	var bars []opts.CustomData
	for k, share := range s.Classes[i] {
		from, to := float64(k-1)*step, float64(k)*step
		f := facts{"Low": whole(from), "High": whole(to), "Unit": place.Unit, "Share": percentWords(share), "Empty": k == 0}
		bars = append(bars, opts.CustomData{
			Name: say("levels.tip", f), Value: []float64{round3(from), round3(to), round3(100 * share)},
		})
	}
	return bars
}

// clockAxis is the time of the traced shift, from its beginning.
func (s *subject) clockAxis() opts.XAxis {
	axis := valueAxis(say("clock", facts{"Window": s.Window.One}), types.FuncStr("fn:clock"))
	w := s.traced()
	axis.Min, axis.Max = 0, w.seconds(w.To)
	axis.MaxInterval = clockStep(w.seconds(w.To) / 10)
	return axis
}

// clockStep is the next round step of a clock, in seconds.
func clockStep(least float64) float64 {
	steps := []float64{1, 5, 15, 60, 300, 600, 1800, 3600, 2 * 3600, 3 * 3600, 4 * 3600, 6 * 3600}
	for _, step := range steps {
		if step >= least {
			return step
		}
	}
	return steps[len(steps)-1]
}

func (s *subject) levelTable(i int, b result.Buffer, caption string, f facts) table {
	row := func(name string, e result.Estimate, scale float64) []cell {
		n := numberOf(e, scale)
		return []cell{text(say("levels.row."+name, f)), text(n.Mean), text(n.Low), text(n.High)}
	}
	t := table{
		Caption: caption, Head: heads("figure", "mean", "low", "high"), Words: 1,
		Rows: [][]cell{
			row("level", b.Level, 1), row("transit", b.InTransit, 1), row("full", b.Full, 100), row("empty", b.Empty, 100),
		},
	}
	if b.SensorStopsPerHour.N > 0 {
		t.Rows = append(t.Rows, row("sensor", b.SensorStopsPerHour, s.Window.Hours))
	}
	if i < len(s.Classes) && len(s.Classes[i]) == sim.LevelClasses && b.Capacity > 0 {
		t.Rows = append(t.Rows, s.tenths(i, b, f)...)
	}
	return t
}

// tenths sums the classes to tenths of the capacity.
func (s *subject) tenths(i int, b result.Buffer, f facts) [][]cell {
	const parts, each = 10, (sim.LevelClasses - 1) / 10
	rows := [][]cell{{text(say("levels.row.none", f)), text(rounded(100*s.Classes[i][0], -1)), text(""), text("")}}
	for k := range parts {
		sum := 0.0
		for _, share := range s.Classes[i][1+k*each : 1+(k+1)*each] {
			sum += share
		}
		at := func(k int) string { return whole(float64(k) * float64(b.Capacity) / parts) }
		name := say("levels.row.class", facts{"Low": at(k), "High": at(k + 1), "Unit": f["Unit"]})
		rows = append(rows, []cell{text(name), text(rounded(100*sum, -1)), text(""), text("")})
	}
	return rows
}
