package keyfigure

import (
	"math"

	"tuckline/sim"
)

// Loss is a share of the pieces given that does not go on, of those that the losses before it left.
type Loss struct {
	// Name is "splice scrap", "missing NAME", "lost at stops", "rejects", "no-reads", "samples for NAME".
	Name  string
	Share float64
}

// rejected is the name of what a camera finds.
const rejected = "rejects"

// losses are in the order in which they happen to a piece: scrap, what was not picked, what
// lost its place at a stop, rejects, codes that cannot be read, samples.
func (s *Station) losses(line *sim.Station) (all []Loss) {
	add := func(name string, share float64) {
		if share > 0 {
			all = append(all, Loss{name, min(1, share)})
		}
	}
	add("splice scrap", s.spliceScrap)
	for _, m := range line.Materials {
		add("missing "+m.Name, newPick(m.MisPicks).missed)
	}
	add("lost at stops", lostAtStops(line, s.stopsOf(s.Set, func(pause) bool { return true })))
	add(rejected, rejectShare(line))
	add("no-reads", line.NoReads)
	for _, c := range line.Checks {
		add("samples for "+c.Name, s.sampled(&c, 0))
	}
	return all
}

// text has three digits, as such shares are small.
func (l Loss) text() string { return number(100*l.Share) + " %" }

// good is what losses leave.
func good(losses []Loss) float64 {
	left := 1.0
	for _, l := range losses {
		left *= 1 - l.Share
	}
	return left
}

// stopsOf is how many of some own stops come with each cycle at a speed.
func (s *Station) stopsOf(r Rate, which func(pause) bool) (sum float64) {
	if r.Cycles <= 0 {
		return 0
	}
	for _, p := range s.pauses {
		if which(p) {
			sum += p.perCycle + p.perRun*s.meanCycle(r)
		}
	}
	return sum
}

// lostAtStops is the share of pieces before which a stop has come by no more than so many pieces
// as lose their place: 1 - e^(-r m) for stops that come r times a cycle without memory, m in cycles,
// a part of a cycle in proportion.
func lostAtStops(line *sim.Station, comes float64) float64 {
	cycles, part := math.Modf(float64(line.LostPerStop) / float64(max(line.Gives, 1)))
	return 1 - (1-part)*math.Exp(-comes*cycles) - part*math.Exp(-comes*(cycles+1))
}

// sampled is the share of the pieces given that a test takes: takes/every, at set speed where it
// goes by time. Later is what is sure to pass before the next can begin, beside its clock, in minutes.
func (s *Station) sampled(c *sim.Check, later float64) float64 {
	pieces := float64(s.Gives) / s.meanCycle(s.Fastest) // a minute
	between := later * pieces
	switch c.Clock {
	case sim.CycleClock:
		between += c.Every.Mean() * float64(s.Gives)
	case sim.PieceClock:
		between += c.Every.Mean()
	default:
		if later == 0 {
			pieces = float64(s.Gives) / s.meanCycle(s.Set)
		}
		between += c.Every.Mean() / minute * pieces
	}
	return min(1, ratio(float64(c.Takes), between))
}

// leastLost is 1 less what is lost whatever happens. Stops that keep step count as the most
// frequent alone. A test waits for people, so that no one can say that it is made; one without people begins
// again when the last is over.
func (s *Station) leastLost(line *sim.Station) float64 {
	comes := s.stopsOf(s.Fastest, func(p pause) bool { return p.random })
	for _, p := range s.pauses {
		if !p.random && p.steady {
			comes = max(comes, p.perCycle+p.perRun*s.meanCycle(s.Fastest))
		}
	}
	left := 1 - s.mostSplice
	for _, m := range line.Materials {
		left *= 1 - newPick(m.MisPicks).missed
	}
	left *= 1 - lostAtStops(line, comes)
	left = leastRejected(line, left) * (1 - line.NoReads)
	for _, c := range line.Checks {
		if c.Crew.Crew == "" {
			left *= 1 - s.sampled(&c, c.Lasts.Mean()/minute+float64(c.Takes)*s.meanCycle(s.Fastest))
		}
	}
	return max(0, left)
}

// leastRejected is what rejects leave of a share at the least. Where they leave later and stop the station,
// scrap after the stop comes on web that they were found near, so that all of them may leave with it.
func leastRejected(line *sim.Station, left float64) float64 {
	good := 1 - rejectShare(line)
	if line.RejectsAfter > 0 && line.RejectStop.After > 0 {
		return min(left, good)
	}
	return left * good
}
