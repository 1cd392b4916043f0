package keyfigure

import "tuckline/sim"

// outage is a calendar stop as far as bounds need it.
type outage struct {
	// up is the share of time without it, every/(every + lasts); perMinute is how often it begins.
	up, perMinute float64
	// memoryless: it begins at any time alike; fixed: there is no chance in it.
	memoryless, fixed bool
}

func newOutage(stop *sim.Stop, every, lasts float64) outage {
	return outage{
		up: every / (every + lasts), perMinute: 1 / (every + lasts),
		memoryless: memoryless(stop), fixed: stop.Every.IsFixed() && stop.Lasts.IsFixed(),
	}
}

// outages are the calendar stops of a group together.
type outages struct {
	// all is the greatest share of time in which none is open, random the same of those without memory.
	all, random float64
	memoryless  bool // all of them
}

// outages puts them together: they are independent, but those without any chance in them may
// all begin at the same times.
func (g *stopGroup) outages() outages {
	out, worst := outages{all: 1, random: 1, memoryless: true}, 1.0
	for k := range g.stoppers {
		for _, o := range g.stoppers[k].outages {
			switch {
			case o.memoryless:
				out.random *= o.up
			case o.fixed:
				worst = min(worst, o.up)
			default:
				out.all *= o.up
			}
			out.memoryless = out.memoryless && o.memoryless
		}
	}
	out.all *= out.random * worst
	return out
}

// timeShare is what is left of the time: work/up + stops is at most limit.
type timeShare struct{ up, limit float64 }

// share is what calendar stops leave to work and to the stops that are counted. They may
// overlap these, since they begin during other stops too. Without memory they overlap no more than
// their share of the time, as an own stop begins only when none is open. Others overlap own stops without
// memory no more than these are likely when they begin, which is less than their time
// for each minute of work. With a memory on both sides they can keep step.
func (o outages) share(g *stopGroup, counted []int) timeShare {
	regular, busy := false, 0.0
	for _, k := range counted {
		s := &g.stoppers[k]
		regular = regular || s.regular
		busy += ratio(s.down, s.minutes)
	}
	if o.memoryless || regular {
		return timeShare{up: o.random, limit: 1}
	}
	return timeShare{up: 1, limit: o.all + (1-o.all)*min(1, busy)}
}
