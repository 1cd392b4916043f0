package keyfigure

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// webSpeed is in m/min at set speed: index times cycles. Where no web is
// described it is that of the reel that uses most per cycle.
func webSpeed(s *Station, line *sim.Station, people *scenario.Station) float64 {
	index := float64(people.Web.Index)
	if index == 0 {
		for i, m := range people.Materials {
			if m.Unit == "m" && i < len(line.Materials) {
				index = max(index, float64(line.Materials[i].PerCycle))
			}
		}
	}
	return index * 1e-6 * s.Set.Cycles
}

// newDwell is the closed time of a sealing tool: its share of the cycle times
// the cycle, dwell = share × 60 / cycles per minute. Source: common practice
// for platen tools. Cycles are in microseconds. A qualified range of dwell
// allows speeds from share × 60 / longest to share × 60 / shortest.
func newDwell(sealing scenario.Sealing, set, fastest float64) *Dwell {
	if sealing.DwellShare <= 0 {
		return nil
	}
	const second = float64(sim.Second)
	d := &Dwell{Share: sealing.DwellShare, Set: sealing.DwellShare * set / second, Fastest: sealing.DwellShare * fastest / second}
	d.SetInside, d.FastestInside = true, true
	if sealing.DwellMin <= 0 || sealing.DwellMax <= 0 {
		return d
	}
	d.Qualified = true
	d.Min, d.Max = float64(sealing.DwellMin)/second, float64(sealing.DwellMax)/second
	d.Slowest, d.Quickest = 60*d.Share/d.Max, 60*d.Share/d.Min
	d.SetInside, d.FastestInside = d.inside(d.Set), d.inside(d.Fastest)
	return d
}

// inside forgives what is lost when a cycle time is rounded to a microsecond.
func (d *Dwell) inside(dwell float64) bool {
	const rounding = 1e-6
	return dwell >= d.Min-rounding && dwell <= d.Max+rounding
}
