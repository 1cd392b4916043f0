package keyfigure

import (
	"cmp"
	"slices"
)

// place says at which stations stops count, so that all pieces that they hold lose them, and once.
func (t *tied) place() {
	t.own = make([]way, len(t.stations))
	for i := range t.own {
		t.own[i] = way{runs: 1}
	}
	for i, group := range stopGroups(t.line) {
		s := &t.stations[i]
		if !t.passed(i) {
			continue
		}
		for _, k := range t.heldBy(i, group) {
			t.own[k].runs *= s.calendar
			t.own[k].stands += s.cycles * (s.downPerCycle + s.ownRestarts.perCycle + (s.downPerRun+s.ownRestarts.perRun)*s.meanCycle(s.Set))
		}
	}
}

// passed says that pieces of the line pass a station.
func (t *tied) passed(i int) bool { return t.stations[i].cycles > 0 && t.stations[i].Set.Cycles > 0 }

// heldBy are stations, one on every way of the pieces that a stop of one station of a group
// holds: all that pass any of the group. Where such ways cross there may be two on one way.
func (t *tied) heldBy(one int, group []int) (posts []int) {
	for _, k := range t.widest(group) {
		if k != one && t.standing(k)[one] {
			posts = append(posts, t.across(one, k)...)
			continue
		}
		posts = append(posts, k)
	}
	return posts
}

// widest are those of a group that the most pieces pass, without those that stand anyway when
// one of these does.
func (t *tied) widest(group []int) (posts []int) {
	group = slices.DeleteFunc(slices.Clone(group), func(i int) bool { return !t.passed(i) })
	slices.SortStableFunc(group, func(a, b int) int { return cmp.Compare(t.share(b), t.share(a)) })
	for _, i := range group {
		if !slices.ContainsFunc(posts, func(k int) bool { return t.standing(k)[i] }) {
			posts = append(posts, i)
		}
	}
	return posts
}

// standing marks the stations that stand when one does, since nothing comes to them or nothing
// can leave them.
func (t *tied) standing(one int) []bool {
	stands := make([]bool, len(t.stations))
	stands[one] = true
	all := func(of []int) bool {
		return len(of) > 0 && !slices.ContainsFunc(of, func(k int) bool { return !stands[k] && t.passed(k) })
	}
	for again := true; again; {
		again = false
		for i := range stands {
			out := &t.joints[t.out[i]]
			held := all(out.takers) || slices.ContainsFunc(out.turns, all) ||
				slices.ContainsFunc(t.ins[i], func(in entrance) bool { return all(t.joints[in.joint].feeders) })
			if held && !stands[i] {
				stands[i], again = true, true
			}
		}
	}
	return stands
}

// across are a station and those beside it, so many that all pieces pass one of them that pass
// a wider station on the same ways; only that one where there are none.
func (t *tied) across(one, wide int) []int {
	posts, sum := []int{one}, t.share(one)
	for _, k := range t.stationWay() {
		if share := t.share(k); k != one && t.passed(k) && sum+share <= t.share(wide)+rounding &&
			!t.apart([]int{k}, []int{wide}) && t.apart([]int{k}, posts) {
			posts, sum = append(posts, k), sum+share
		}
	}
	if sum < t.share(wide)-rounding {
		return []int{wide}
	}
	return posts
}
