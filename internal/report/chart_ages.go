package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
	"tuckline/sim"
)

// agesSection shows how long the good pieces were in the line, where that was asked for.
func agesSection(s *subject) (*section, error) {
	mean, tail := s.measureOf("time in line", "mean"), s.measureOf("time in line", "P95")
	if s.Ages == nil || s.Ages.Count == 0 || mean.N == 0 {
		return nil, nil
	}
	minute := 1 / float64(sim.Minute/sim.Second)
	f := facts{"Unit": s.Results.Output.Unit, "Mean": numberOf(mean, minute).String(), "P95": numberOf(tail, minute).String()}
	heading := say("ages.heading", f)
	bins := ageBins(s.Ages)
	option, err := s.agesOption(bins, described(heading))
	if err != nil {
		return nil, err
	}
	t := table{Caption: heading, Head: heads("age", "age.share"), Words: 1}
	for _, b := range bins {
		t.Rows = append(t.Rows, []cell{text(b.words()), text(rounded(b.share, -2))})
	}
	return &section{
		ID: "ages", Heading: heading, Reading: say("ages.reading", f), Charts: []chart{{"ages", 250, option}}, Table: t,
	}, nil
}

// measureOf is the value of a measure that was asked for; its N is 0 where it was not.
func (s *subject) measureOf(name, of string) result.Estimate {
	for _, m := range s.Results.Measures {
		if m.Name == name && m.Of == of {
			return m.Value
		}
	}
	return result.Estimate{}
}

// ageBin is the share of pieces, in percent, whose age lies between two times, in minutes. The last has no end.
type ageBin struct {
	from, to, share float64
	last            bool
}

func (b ageBin) words() string {
	if b.last {
		return say("ages.more", facts{"From": short3(b.from)})
	}
	return say("ages.bin", facts{"From": short3(b.from), "To": short3(b.to)})
}

// drawnBins is into how many parts the ages are divided; the oldest hundredth is in the last.
const drawnBins = 30

// ageBins are equal parts of the ages of all but the oldest hundredth, in round steps, and one part for that.
func ageBins(ages *sim.Ages) []ageBin {
	const minute = float64(sim.Minute)
	left, end := 0.99*float64(ages.Count), 0.0
	for class, n := range ages.Classes {
		if end = sim.AgeLimit(class) / minute; left <= float64(n) {
			break
		}
		left -= float64(n)
	}
	step := roundStep(end / drawnBins)
	bins := make([]ageBin, drawnBins+1)
	for i := range bins {
		bins[i] = ageBin{from: float64(i) * step, to: float64(i+1) * step, last: i == drawnBins}
	}
	for class, n := range ages.Classes {
		at := min(int((sim.AgeLimit(class-1)+sim.AgeLimit(class))/2/minute/step), drawnBins)
		bins[at].share += 100 * float64(n) / float64(ages.Count)
	}
	return bins
}

// roundStep is the next of 1, 2 and 5 times a power of ten.
func roundStep(about float64) float64 {
	scale := 1.0
	for about*scale < 1 {
		scale *= 10
	}
	return niceStep(about*scale) / scale
}

func (s *subject) agesOption(bins []ageBin, aria string) (template.JS, error) {
	var columns []opts.CustomData
	for _, b := range bins {
		columns = append(columns, opts.CustomData{
			Name:  say("ages.tip", facts{"Bin": b.words(), "Share": rounded(b.share, -2), "Unit": s.Results.Output.Unit}),
			Value: []float64{round3(b.from), round3(b.to), round3(b.share)},
		})
	}
	c := charts.NewCustom()
	c.AddSeries("", columns, drawn("column", []int{0, 1}, 2), colour("accent-soft"))
	x := valueAxis(say("ages.axis", nil), "fn:number")
	x.Min = 0
	c.SetGlobalOptions(append(frame(aria), noLegend(), plot("30", "24", "24"), charts.WithXAxisOpts(x),
		charts.WithYAxisOpts(opts.YAxis{Type: "value", Name: "%", AxisLabel: &opts.AxisLabel{Formatter: "fn:number"}}))...)
	return optionOf(c)
}
