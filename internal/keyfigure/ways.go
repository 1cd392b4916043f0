package keyfigure

import "slices"

// way is how pieces of a line without buffers come from one joint to another: through a
// station, or through several that have been put together.
type way struct {
	from, to int // joints; source and sink are outside
	station  int // -1 where there are several
	// share is the part of the counted pieces that come this way.
	share float64
	// runs is the share of time in which no calendar stop holds it.
	runs float64
	// stands is how long its other stops hold it for each counted piece of the line, in minutes.
	stands float64
}

const source, sink = -1, -2

// follow puts what comes behind into the same row.
func (w *way) follow(next way) {
	w.runs *= next.runs
	w.stands += next.stands
}

// rate is the counted pieces a minute that the line would make if all came this way.
func (t *tied) rate(w way) float64 { return w.runs / (t.minutes + w.stands) }

// beside puts two ways together between the same joints: their rates add up, each by its share.
func (t *tied) beside(a, b way) way {
	one := 0.5
	if sum := a.share + b.share; sum > 0 {
		one = a.share / sum
	}
	rate := one*t.rate(a) + (1-one)*t.rate(b)
	both := way{from: a.from, to: a.to, station: -1, share: a.share + b.share, runs: one*a.runs + (1-one)*b.runs}
	both.stands = max(0, ratio(both.runs, rate)-t.minutes)
	return both
}

// through puts the ways of stations together until one is left.
func (t *tied) through(stations []int) way {
	var ways []way
	for _, i := range stations {
		ways = append(ways, t.wayOf(i))
	}
	for _, i := range slices.Backward(t.stationWay()) {
		if joint := t.out[i]; len(t.joints[joint].turns) > 0 {
			ways = t.inTurn(ways, joint)
		}
	}
	return t.reduced(ways)
}

// reduced puts ways side by side and in a row together, joint after joint, the one with the
// fewest ways first. In a line of rows and branches that is exact; where ways cross, pieces of
// all ways into a joint take all ways out of it in proportion.
func (t *tied) reduced(ways []way) way {
	ways = t.merged(bounded(ways))
	for at := simplest(ways); at != source; at = simplest(ways) {
		ways = t.merged(joinedAt(ways, at))
	}
	if len(ways) == 0 {
		return way{runs: 1}
	}
	return ways[0] // all are from source to sink by now, which is one
}

// simplest is the joint between ways that has the fewest ways in and out, source if there is none.
func simplest(ways []way) int {
	in, out := map[int]int{}, map[int]int{}
	for _, w := range ways {
		in[w.to]++
		out[w.from]++
	}
	at := source
	for _, w := range ways {
		if cost := in[w.to] * out[w.to]; cost > 0 && (at == source || cost < in[at]*out[at]) {
			at = w.to
		}
	}
	return at
}

// bounded lets ways begin outside where nothing comes in, and end outside where nothing goes on.
func bounded(ways []way) []way {
	out := slices.Clone(ways)
	for k, w := range ways {
		if !slices.ContainsFunc(ways, func(o way) bool { return o.to == w.from }) {
			out[k].from = source
		}
		if !leads(ways, w.to) {
			out[k].to = sink
		}
	}
	return out
}

// leads says that ways lead on from a joint.
func leads(ways []way, joint int) bool {
	return slices.ContainsFunc(ways, func(w way) bool { return w.from == joint })
}

// merged puts ways between the same joints together; one that comes back to where it began is
// no way on.
func (t *tied) merged(ways []way) (all []way) {
	for _, w := range ways {
		at := slices.IndexFunc(all, func(o way) bool { return o.from == w.from && o.to == w.to })
		switch {
		case w.from == w.to:
		case at >= 0:
			all[at] = t.beside(all[at], w)
		default:
			all = append(all, w)
		}
	}
	return all
}

// joinedAt lets every way into a joint go on by every way out of it.
func joinedAt(ways []way, joint int) (all []way) {
	var in, out []way
	sum := 0.0
	for _, w := range ways {
		switch joint {
		case w.to:
			in = append(in, w)
		case w.from:
			out, sum = append(out, w), sum+w.share
		default:
			all = append(all, w)
		}
	}
	for _, one := range in {
		for _, next := range out {
			both := one
			both.to, both.station, both.share = next.to, -1, ratio(one.share*next.share, sum)
			both.follow(next)
			all = append(all, both)
		}
	}
	return all
}
