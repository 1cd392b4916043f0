package proof

import (
	"fmt"

	"tuckline/sim"
)

// accumulator: how long a store takes to fill or to run empty, one course each.
func accumulator(e *entry) {
	holds, level, in, out := int64(e.word("C")), int64(e.word("level")), e.word("vin"), e.word("vout")
	e.unit = 60e6
	c := e.exactly("A store between two stations; "+e.given["parameters"], "One course of a line, without chance. A stopped station is one in a cycle of a day; the piece that it takes at the beginning is one more at the start. Where both run, whole pieces come and go in turn, so that the store may hold one piece more than a flow.")
	const stopped = 1.0 / (24 * 60)
	e.sure(c, "fill_time_downstream_stopped", 0, e.reaches(holds, level, in, stopped, holds))
	e.sure(c, "empty_time_upstream_stopped", 0, e.reaches(holds, level, stopped, out, 0))
	e.sure(c, "net_fill_time_both_running", 1/(in-out), e.reaches(holds, level, in, out, holds))
	e.leave("prob_full_buffer_outlasts_upstream_stop", arithmeticOnly)
}

// reaches is the time at which a store between two stations of these speeds first has a level.
func (e *entry) reaches(holds, level int64, in, out float64, wanted int64) sureValue {
	line := serial([]sim.Law{e.fixed(1 / in), e.fixed(1 / out)}, holds)
	line.Buffers[0].AtStart = level + 1
	return func() (float64, error) {
		model, err := sim.Compile(line)
		if err != nil {
			return 0, err
		}
		var trace sim.Trace
		model.NewEngine().Run(sim.Options{Measure: e.micros(60), Trace: &trace})
		for _, change := range trace.Levels {
			if change.Level == wanted && change.Buffer == 0 {
				return float64(change.At) / e.unit, nil
			}
		}
		return 0, fmt.Errorf("the store never holds %d", wanted)
	}
}
