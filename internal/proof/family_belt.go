package proof

import (
	"fmt"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// beltFile is a belt between two stations that are faster than it.
const beltFile = `tuckline: 1
title: Belt
answer: {in: pieces, counted after: taker}
line:
  - {station: feeder, cycle: 1000/min}
  - {conveyor: belt, length: %g m, speed: %g m/min, pitch: %g mm, accumulating: "yes"}
  - {station: taker, cycle: 1000/min}
run: {warm-up: 0 s, measure: 1 h, replications: 2}
`

// belt: places and time on the way of a belt as the reader of scenarios makes them.
func belt(e *entry) {
	length, speed, pitch := e.word("L"), e.word("v"), e.word("pitch")
	s, err := scenario.Read(e.name, fmt.Appendf(nil, beltFile, length, 60*speed, 1000*pitch), scenario.Options{})
	e.fail(err)
	if err != nil {
		return
	}
	way := &s.Line.Buffers[0]
	c := e.exactly(e.given["model"], "Read from a scenario with length, speed and pitch; the most a minute is one course between two faster stations.")
	e.sure(c, "transit_s", 0, func() (float64, error) { return float64(way.Transit) / 1e6, nil })
	e.sure(c, "capacity_parts", 0, func() (float64, error) { return float64(way.Holds), nil })
	e.sure(c, "max_parts_per_min", 0, e.course(s.Line, 60, 1200, func(r *sim.Record) float64 {
		return float64(r.Stations[1].Passed) / 20
	}))
}
