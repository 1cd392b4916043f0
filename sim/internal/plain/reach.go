package plain

import "slices"

// reachBefore collects all from which a station gets input: the sources whose stops may starve it, and
// the nearest stations.
func (e *Engine) reachBefore(s *station, sources, near set) {
	for i := range 1 + len(s.also) {
		l := s.in
		if i > 0 {
			l = s.also[i-1].link
		}
		if l != nil {
			e.reachFeeders(l, sources, near)
		}
	}
}

func (e *Engine) reachFeeders(l *link, sources, near set) {
	sources.add(len(e.stations) + l.index)
	for _, k := range l.plan.Feeders {
		n := &e.nodes[k]
		if n.station == nil {
			e.reachFeeders(n.link, sources, near)
			continue
		}
		near.add(n.station.index)
		if !sources.has(n.station.index) {
			sources.add(n.station.index)
			e.reachBefore(n.station, sources, newSet(len(e.stations)))
		}
	}
}

// addGroups adds the stations that stop those of a set too.
func (e *Engine) addGroups(sources set) {
	for i := range e.plan.Groups {
		members := e.plan.Groups[i].Members
		if slices.ContainsFunc(members, sources.has) {
			for _, m := range members {
				sources.add(m)
			}
		}
	}
}

// reachBehind is the same for all to which a station gives.
func (e *Engine) reachBehind(n *node, sources, near set) {
	for o := range n.outs {
		l := n.outs[o].link
		sources.add(len(e.stations) + l.index)
		for _, k := range l.plan.Takers {
			next := &e.nodes[k]
			if next.station == nil {
				e.reachBehind(next, sources, near)
				continue
			}
			near.add(next.station.index)
			if !sources.has(next.station.index) {
				sources.add(next.station.index)
				e.reachBehind(next, sources, newSet(len(e.stations)))
			}
		}
	}
}

// meets says that two sets have something in common.
func (s set) meets(other set) bool {
	for w := range s {
		if s[w]&other[w] != 0 {
			return true
		}
	}
	return false
}
