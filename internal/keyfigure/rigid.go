package keyfigure

import "slices"

// rigid derives the output of the line without any buffer, all stations tied
// to one speed. One after the other their stops add up: 1/(1 + sum of down
// shares), times the share of time without calendar stops of each. Side by side
// each part of the flow loses its own, and what is left adds up. Source: bufferless
// chain with operation-dependent stops (Buzacott 1967; from memory).
//
// Where a piece of one way is worth more than one of another, stops before the parting are
// shared by what runs as planned, which can come out a little high where much stands: no
// line makes more than its bound.
func (b *Bounds) rigid(f *flow, stations []Station) {
	speed, rate := withoutBuffers(f, stations)
	b.Tied, b.Rigid = speed, min(rate, b.Unlimited)
	b.RigidEfficiency = ratio(b.Rigid, b.Tied)
}

// withoutBuffers is the tied speed and the output at it, in counted pieces a minute.
func withoutBuffers(f *flow, stations []Station) (speed, rate float64) {
	t := &tied{flow: f, stations: stations}
	var main []int
	aside := f.aside()
	for _, i := range f.stationWay() {
		s := &stations[i]
		if !t.passed(i) {
			continue
		}
		if slowest := 1 / (s.meanCycle(s.Set) * s.cycles); speed == 0 || slowest < speed {
			speed = slowest
		}
		if !aside[i] {
			main = append(main, i)
		}
	}
	if speed == 0 {
		return 0, 0
	}
	t.minutes = 1 / speed
	t.place()
	return speed, t.rate(t.through(main))
}

// rounding is what shares of the flow may differ in and still be the same.
const rounding = 1e-9

// tied is a line without buffers at one speed.
type tied struct {
	*flow
	stations []Station
	// minutes are those for one counted piece at the tied speed.
	minutes float64
	// own are the stops that count at each station.
	own []way
}

// share is the part of the counted pieces that pass a station.
func (t *tied) share(i int) float64 {
	s := &t.stations[i]
	return min(1, s.cycles*float64(s.Gives)*s.PerPiece*s.Yield)
}

// wayOf is the way of the pieces through a station. What else it assembles has to come too:
// the stations of its other inputs stand before it in the same row.
func (t *tied) wayOf(i int) way {
	w := t.own[i]
	w.from, w.to, w.station, w.share = t.in[i], t.out[i], i, t.share(i)
	if len(t.ins[i]) < 2 {
		return w
	}
	known := t.feeding(t.in[i])
	for _, in := range t.ins[i][1:] {
		var side []int
		for _, k := range t.feeding(in.joint) {
			if !slices.Contains(known, k) {
				side = append(side, k)
			}
		}
		known = append(known, side...)
		w.follow(t.through(side))
	}
	return w
}

// feeding are the stations from which pieces come into a joint, by their main inputs.
func (t *tied) feeding(joint int) (found []int) {
	seen := map[int]bool{-1: true}
	for queue := []int{joint}; len(queue) > 0; queue = queue[1:] {
		if seen[queue[0]] {
			continue
		}
		seen[queue[0]] = true
		for _, k := range t.joints[queue[0]].feeders {
			found, queue = append(found, k), append(queue, t.in[k])
		}
	}
	return found
}
