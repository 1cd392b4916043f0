package proof

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

// rigid: stations on one drive that stop together, or with unlimited room between them.
func rigid(e *entry) {
	up, down := e.numbers("mttf_list"), e.numbers("mttr_list")
	line := serial(repeated(len(up), e.fixed(1)), repeated(len(up)-1, int64(0))...)
	clock, kind := sim.RunningClock, "running time"
	if e.given["failure_mode"] == "TDF" {
		clock, kind = sim.CalendarClock, "calendar time"
	}
	words := fmt.Sprintf("%d stations, mean times between stops %s, mean repairs %s, by %s", len(up), e.given["mttf_list"], e.given["mttr_list"], kind)
	if strings.HasPrefix(e.given["coupling"], "rigid") {
		e.onOneDrive(line, clock, up, down, words)
		return
	}
	line = serial(repeated(len(up), e.fixed(1)), repeated(len(up)-1, sim.Unlimited)...)
	e.stopsOf(&line, clock, up, down)
	// The queue before the slowest must have grown beyond all chance; 20 times a repair is far shorter.
	c := e.sim(words, "Unlimited room between the stations: in the long run the slowest alone decides.", line, 50_000)
	e.compare(c, "line_efficiency", e.rate(len(up)-1))
}

func (e *entry) onOneDrive(line sim.Line, clock sim.Clock, up, down []float64, words string) {
	for i := range line.Stations {
		if len(up) > 1 {
			line.Stations[i].Coupled = "drive"
		}
	}
	e.stopsOf(&line, clock, up, down)
	c := e.sim(words, "Neighbours on one drive run and stop together.", line, e.settled(line))
	e.shares(c, "line_efficiency", share(len(up)-1, sim.Running))
}

func (e *entry) stopsOf(line *sim.Line, clock sim.Clock, up, down []float64) {
	for i := range up {
		stops(line, i, clock, e.exp(up[i]), e.exp(down[i]))
	}
}
