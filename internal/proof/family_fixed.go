package proof

import (
	"math"
	"slices"
	"strings"

	"tuckline/sim"
)

// exactly starts a case without chance; its figures come from one course of a line, or from a
// function of the program.
func (e *entry) exactly(model, mapping string) *Case {
	c := &Case{Name: e.name, Family: e.family, entry: e.name, Model: model, Mapping: mapping}
	e.cases = append(e.cases, c)
	return c
}

// sure adds a figure without chance. The tolerance is that of the value, or more
// where a line counts whole pieces.
func (e *entry) sure(c *Case, quantity string, allowance float64, compute sureValue) {
	e.sureEach(c, quantity, allowance, func(int) sureValue { return compute })
}

// sureEach is sure for a quantity of several values.
func (e *entry) sureEach(c *Case, quantity string, allowance float64, compute func(i int) sureValue) {
	i := slices.IndexFunc(e.values, func(v *value) bool { return v.quantity == quantity && !e.used[v] })
	if i < 0 {
		return
	}
	tolerance := e.values[i].tolerance
	n := len(c.figures)
	e.figures(c, quantity, figure{kind: sure, allowance: allowance}, nil)
	for k, f := range c.figures[n:] {
		f.tolerance, f.compute = e.toleranceOf(f, tolerance), compute(k)
	}
}

// toleranceOf reads a tolerance; one in words is relative, as the file of certified values says.
func (e *entry) toleranceOf(f *figure, text string) float64 {
	if !strings.HasPrefix(text, "relative ") {
		return e.parse("tolerance", text)
	}
	relative := 1e-12
	if f.quantity == "lag1_autocorrelation" || strings.HasPrefix(e.name, "STRD-NumAcc4") {
		relative = 1e-8
	}
	return relative * math.Abs(f.exact)
}

// course runs a line once and reads a figure from it.
func (e *entry) course(line sim.Line, warmUp, measure float64, of func(*sim.Record) float64) sureValue {
	return func() (float64, error) {
		model, err := sim.Compile(line)
		if err != nil {
			return 0, err
		}
		rec := model.NewEngine().Run(sim.Options{WarmUp: e.micros(warmUp), Measure: e.micros(measure)})
		return of(&rec), nil
	}
}

// fixedTimes: fixed times up and down, from new to a horizon in minutes.
func fixedTimes(e *entry) {
	e.unit = 60e6
	up, down, horizon, rate := e.word("U"), e.word("D"), e.word("T"), e.word("rate")
	line := e.alone(1 / rate)
	stops(&line, 0, sim.RunningClock, e.fixed(up), e.fixed(down))
	c := e.exactly("One station; "+e.given["parameters"], "One course of the line, without chance. A piece that ends on the horizon counts, so that the window ends 1 µs behind it.")
	behind := horizon + 1/e.unit
	e.sure(c, "parts_made", 0, e.course(line, 0, behind, func(r *sim.Record) float64 { return float64(r.Stations[0].Given) }))
	e.sure(c, "stops_started", 0, e.course(line, 0, behind, func(r *sim.Record) float64 { return float64(r.Stations[0].Stops[0].Count) }))
	e.sure(c, "long_run_availability", 0, e.course(line, up+down, 10*(up+down), func(r *sim.Record) float64 {
		return inStates(r, 0, sim.Running) / float64(r.Window)
	}))
}

// scrapFixed: an exact number of cycles between stops, the first of which are scrapped.
func scrapFixed(e *entry) {
	cycles, down, cycle := e.word("U"), e.word("D"), e.word("c")
	line := e.alone(cycle)
	stops(&line, 0, sim.CycleClock, sim.Fixed(cycles), e.fixed(down))
	line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: int64(e.word("s"))}}
	period := cycles*cycle + down
	c := e.exactly("One station; "+e.given["parameters"], "One course of ten whole periods, without chance.")
	e.sure(c, "yield", 0, e.course(line, period, 10*period, func(r *sim.Record) float64 {
		good, made := yield(r)
		return good / made
	}))
	e.sure(c, "good_per_second", 0, e.course(line, period, 10*period, func(r *sim.Record) float64 {
		return float64(r.Stations[0].Given) / float64(r.Window) * e.unit
	}))
}
