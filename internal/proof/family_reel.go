package proof

import (
	"fmt"
	"math"
	"sync"

	"tuckline/internal/keyfigure"
	"tuckline/sim"
)

// reelFile is a reel as its case gives it: micrometres thick, diameters and draw-off in millimetres,
// cycles a minute and cycles lost by a splice.
const reelFile = "%s %g um, %g/%g mm; draw-off %g mm/cycle, %g cycles/min, splice loses %g cycles"

// reel: the length of a reel and how often it is changed.
func reel(e *entry) {
	text := e.given["parameters"]
	var name string
	var thick, outer, core, index, speed, lost float64
	_, err := fmt.Sscanf(text, reelFile, &name, &thick, &outer, &core, &index, &speed, &lost)
	e.fail(err)
	length := keyfigure.ReelLength(outer, core, thick/1000) / 1000
	e.unit = 60e6
	line := e.alone(1 / speed)
	line.Stations[0].Materials = []sim.Material{{
		Name: "reel", Amount: nanometres(length), PerCycle: nanometres(index / 1000), Refill: nanometres(length), Lasts: e.fixed(1),
	}}
	line.Stations[0].AfterStop = []sim.ScrapRule{{Cycles: int64(lost)}}
	reels := wholeReels(1000 * length / index)
	read := sync.OnceValues(func() (changes, error) { return e.changes(line, reels, 1000*length/index/speed) })
	of := func(figure func(changes) float64) sureValue {
		return func() (float64, error) {
			all, err := read()
			return figure(all), err
		}
	}
	c := e.exactly("A reel on one station; "+text, fmt.Sprintf("One course, without chance; counted from the first change over %d reels, since a change waits for the end of a cycle and the rest of a reel goes on to the next.", reels))
	e.sure(c, "length_m", 0, plain(length))
	e.sure(c, "cycles_per_reel", 0, of(func(a changes) float64 { return a.running * speed }))
	e.sure(c, "splice_interval_min", 0, of(func(a changes) float64 { return a.running }))
	e.sure(c, "splices_per_8h_running", 0, of(func(a changes) float64 { return 8 * 60 / a.running }))
	e.sure(c, "scrap_fraction_by_splices", 0, of(func(a changes) float64 { return a.scrapped / (a.running * speed) }))
}

// nanometres keep the rounding of a reel under what is compared.
func nanometres(metres float64) int64 { return int64(math.Round(1e9 * metres)) }

// wholeReels is the least number of reels that use up a whole number of cycles, to half of the
// tolerance of the sources for one of them, 0.00001 of a cycle.
func wholeReels(cycles float64) int {
	n := 1.0
	for math.Abs(n*cycles-math.Round(n*cycles)) > 0.5e-5*n {
		n++
	}
	return int(n)
}

// changes are what a course shows of its reels: minutes of running from one change to the next and
// cycles scrapped by one, on average.
type changes struct{ running, scrapped float64 }

// changes reads a course that ends in the middle of a reel. A change takes one unit.
func (e *entry) changes(line sim.Line, reels int, interval float64) (changes, error) {
	model, err := sim.Compile(line)
	if err != nil {
		return changes{}, err
	}
	var trace sim.Trace
	horizon := (float64(reels)+1.5)*interval + float64(reels+1)
	rec := model.NewEngine().Run(sim.Options{Measure: e.micros(horizon), Trace: &trace})
	if len(trace.Stops) != reels+1 {
		return changes{}, fmt.Errorf("case %s: %d changes instead of %d", e.name, len(trace.Stops), reels+1)
	}
	between := float64(trace.Stops[reels].Begin-trace.Stops[0].Done) / e.unit
	return changes{
		running:  (between - float64(reels-1)) / float64(reels),
		scrapped: float64(rec.Stations[0].ScrappedCycles) / float64(reels+1),
	}, nil
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
	period := 2*(b+second) + math.Round(2*b/a)*first
	c := e.exactly("Two reels on one station; "+e.given["parameters"], fmt.Sprintf("One course, without chance, over a window of %.2f minutes with all changes of two long reels.", period))
	e.sure(c, "availability", 0, e.course(line, 100+period, period, func(r *sim.Record) float64 {
		return inStates(r, 0, sim.Running) / float64(r.Window)
	}))
}
