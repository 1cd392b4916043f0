package keyfigure

import (
	"slices"

	"tuckline/sim"
)

// gates are the rows of stores in the line that take in, or give out, pieces at limited rates: what
// comes from their feeders, and what is taken behind them, goes through. Stops of a store are left out.
func (f *flow) gates(good func(int) float64) (rows []timeRow) {
	n := len(f.line.Stations)
	for j := range f.line.Buffers {
		b := &f.line.Buffers[j]
		interval := float64(max(b.In, b.Out)) / minute
		if interval <= 0 || b.Kind != sim.InLine {
			continue
		}
		in, out := make([]float64, n), make([]float64, n)
		for _, i := range f.feedersOnly(n + j) {
			in[i] = interval * good(i) * float64(max(f.line.Stations[i].Gives, 1))
		}
		f.takersOnly(n+j, interval, out)
		for _, minutes := range [][]float64{in, out} {
			if slices.ContainsFunc(minutes, func(m float64) bool { return m > 0 }) {
				rows = append(rows, timeRow{station: placeRow(j), minutes: minutes, limit: 1})
			}
		}
	}
	return rows
}

// placeRow is what stands in a row for a buffer instead of a station.
func placeRow(buffer int) int { return -1 - buffer }

// feedersOnly are the stations all of whose pieces go into a place.
func (f *flow) feedersOnly(node int) (all []int) {
	for _, before := range f.before[node] {
		switch {
		case len(f.after[before]) != 1:
		case before < len(f.line.Stations):
			all = append(all, before)
		default:
			all = append(all, f.feedersOnly(before)...)
		}
	}
	return all
}

// takersOnly writes, by station, the minutes of a place that a cycle takes which takes its
// pieces from there, through other places that nothing else feeds too.
func (f *flow) takersOnly(node int, interval float64, minutes []float64) {
	for _, next := range f.after[node] {
		switch {
		case next < len(f.line.Stations):
			minutes[next] += interval * f.takesOf(next, slices.Index(f.before[next], node))
		case len(f.before[next]) == 1:
			f.takersOnly(next, interval, minutes)
		}
	}
}

// backShare is the part of what a cycle takes from a joint that comes back to it from cycles without a good piece:
// blisters of rejected cartons.
func (f *flow) backShare(station, joint int, good float64) float64 {
	for _, node := range f.before[station] {
		j := node - len(f.line.Stations)
		if j >= 0 && f.places[j] == joint && f.line.Buffers[j].Returns.Share > 0 {
			return f.line.Buffers[j].Returns.Share * (1 - good)
		}
	}
	return 0
}
