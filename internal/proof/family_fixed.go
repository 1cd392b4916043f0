package proof

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tuckline/internal/keyfigure"
	"tuckline/sim"
)

// exactly starts a case without chance; its figures come from one course of a line, or from a
// function of the program.
func (e *entry) exactly(model, mapping string) *Case {
	c := &Case{Name: e.name, Family: e.family, Model: model, Mapping: mapping}
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
	c := e.exactly("One station; "+e.given["parameters"], "One course of the line, without chance; the source allows one piece at the horizon.")
	e.sure(c, "parts_made", 0, e.course(line, 0, horizon, func(r *sim.Record) float64 { return float64(r.Stations[0].Given) }))
	e.sure(c, "stops_started", 0, e.course(line, 0, horizon, func(r *sim.Record) float64 { return float64(r.Stations[0].Stops[0].Count) }))
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

// reels is how many reels a course uses up.
const reels = 20

// reel: the length of a reel and how often it is changed.
func reel(e *entry) {
	text := e.given["parameters"]
	var name string
	var thick, outer, core, index, speed, lost float64
	_, err := fmt.Sscanf(text, "%s %g um, %g/%g mm; draw-off %g mm/cycle, %g cycles/min, splice loses %g cycles", &name, &thick, &outer, &core, &index, &speed, &lost)
	e.fail(err)
	length := keyfigure.ReelLength(outer, core, thick/1000) / 1000
	e.unit = 60e6
	line := e.alone(1 / speed)
	line.Stations[0].Materials = []sim.Material{{
		Name: "reel", Amount: int64(math.Round(1e6 * length)), PerCycle: int64(1000 * index), Refill: int64(math.Round(1e6 * length)), Lasts: e.fixed(1),
	}}
	line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: int64(lost)}}
	interval := 1000 * length / index / speed
	horizon := (reels+0.5)*interval + reels
	runs := func(r *sim.Record) float64 { return float64(r.Stations[0].Stops[0].Count) }
	used := func(r *sim.Record) float64 { return e.running(r) - 0.5*interval }
	c := e.exactly("A reel on one station; "+text, fmt.Sprintf("One course over %d reels, without chance; a change waits for the end of a cycle.", reels))
	e.sure(c, "length_m", 0, func() (float64, error) { return length, nil })
	e.sure(c, "cycles_per_reel", 1.0/reels, e.course(line, 0, horizon, func(r *sim.Record) float64 { return used(r) * speed / runs(r) }))
	e.sure(c, "splice_interval_min", 1.0/reels/speed, e.course(line, 0, horizon, func(r *sim.Record) float64 { return used(r) / runs(r) }))
	e.sure(c, "scrap_fraction_by_splices", 0.03*lost*index/1000/length, e.course(line, 0, horizon, func(r *sim.Record) float64 {
		return float64(r.Stations[0].ScrappedCycles) / float64(r.Stations[0].Cycles)
	}))
	e.leave("splices_per_8h_running", arithmeticOnly)
}

// twoReels: two reels on one machine, changed one after the other when both are used up.
func twoReels(e *entry) {
	var first, second, a, b float64
	_, err := fmt.Sscanf(e.given["parameters"], "t1=%g t2=%g min, intervals %g / %g min of running", &first, &second, &a, &b)
	e.fail(err)
	e.unit = 60e6
	line := e.alone(1.0 / 40)
	for i, one := range [][2]float64{{a, first}, {b, second}} {
		amount := int64(math.Round(one[0] * 40 * 1e5))
		line.Stations[0].Materials = append(line.Stations[0].Materials, sim.Material{
			Name: fmt.Sprintf("reel %d", i+1), Amount: amount, PerCycle: 1e5, Refill: amount, Lasts: e.fixed(one[1]),
		})
	}
	const horizon = 150_000
	c := e.exactly("Two reels on one station; "+e.given["parameters"], "One course of 150,000 minutes, without chance; the window may cut one change of each.")
	e.sure(c, "availability", (first+second)/horizon, e.course(line, 0, horizon, func(r *sim.Record) float64 {
		return inStates(r, 0, sim.Running) / float64(r.Window)
	}))
}
