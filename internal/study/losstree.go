package study

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// lossTrees are the loss trees of the stations that limit the line.
func (v view) lossTrees() []result.LossTree {
	trees := []result.LossTree{}
	for _, i := range v.figures.Limiting() {
		trees = append(trees, v.lossTree(i))
	}
	return trees
}

// lossKey is a branch.
type lossKey struct {
	kind result.LossKind
	// from is whose it is, where it is a stop or goes back to something.
	from  originKey
	named bool
	// span is the name of a span of the calendar in which the line stands.
	span string
}

// lossTime is the time of a branch in one replication.
type lossTime struct {
	lossKey
	time, overlap sim.Micros
}

func (v view) lossTree(station int) result.LossTree {
	tree := result.LossTree{Station: v.scenario.Line.Stations[station].Name}
	at := newLosing(v.scenario.Line, station)
	at.from = v.scenario.Run.WarmUp
	times := make([][]lossTime, len(v.records))
	var keys []lossKey
	for i := range v.records {
		times[i] = at.times(&v.records[i])
		for _, one := range times[i] {
			if !slices.Contains(keys, one.lossKey) && one.time != 0 {
				keys = append(keys, one.lossKey)
			}
		}
	}
	slices.SortFunc(keys, func(a, b lossKey) int {
		return cmp.Or(cmp.Compare(a.from.station, b.from.station), cmp.Compare(a.from.cause, b.from.cause), cmp.Compare(a.span, b.span))
	})
	for _, key := range keys {
		tree.Branches = append(tree.Branches, v.branch(key, times))
	}
	slices.SortStableFunc(tree.Branches, func(a, b result.LossBranch) int {
		return cmp.Or(cmp.Compare(slices.Index(result.LossKinds, a.Kind), slices.Index(result.LossKinds, b.Kind)),
			cmp.Compare(b.Share.Mean, a.Share.Mean))
	})
	return tree
}

// branch estimates one branch.
func (v view) branch(key lossKey, times [][]lossTime) result.LossBranch {
	b := result.LossBranch{Kind: key.kind}
	if key.named {
		b.Station, b.Cause = v.originWords(key.from)
	}
	if key.span != "" {
		b.Cause = key.span
	}
	share, overlap := make([]float64, len(times)), make([]float64, len(times))
	for i := range times {
		for _, one := range times[i] {
			if one.lossKey == key {
				share[i] += float64(one.time)
				overlap[i] += float64(one.overlap)
			}
		}
	}
	all := v.column(scheduled)
	b.Share = v.quotient(share, all)
	if key.named && (key.kind == result.LossBlocked || key.kind == result.LossStarved) {
		b.Overlap = v.quotient(overlap, all)
	}
	return b
}

// losingStation is what the times of a station are computed from.
type losingStation struct {
	station int
	// unit are all stations on the same drive, itself alone without one; first is the one that takes the input.
	unit  []int
	first int
	line  sim.Line
	// from is when the window begins.
	from sim.Micros
	// cycle is the time of a cycle at set speed: the longest of the unit.
	cycle sim.Micros
}

func newLosing(line sim.Line, station int) losingStation {
	l := losingStation{station: station, first: station, line: line}
	drive := line.Stations[station].Coupled
	for i := range line.Stations {
		if s := &line.Stations[i]; i == station || drive != "" && s.Coupled == drive {
			l.unit = append(l.unit, i)
			l.cycle = max(l.cycle, sim.Micros(math.Round(s.Cycle.Mean())))
		}
	}
	for _, i := range l.unit {
		if !slices.ContainsFunc(l.unit, func(k int) bool { return line.Stations[k].Name == line.Stations[i].From }) {
			l.first = i
		}
	}
	return l
}

// times are all branches of one replication. They sum to the scheduled time of the window to the microsecond.
func (l losingStation) times(r *sim.Record) []lossTime {
	var all []lossTime
	add := func(kind result.LossKind, time sim.Micros) {
		all = append(all, lossTime{lossKey: lossKey{kind: kind}, time: time})
	}
	states := r.Stations[l.station].States
	slower := states[sim.Running]
	for _, one := range l.worked(r) {
		slower -= one.time
		all = append(all, one)
	}
	if slower < 0 && slower > -l.cycle { // a cycle that began before the window
		all[0].time += slower
		slower = 0
	}
	add(result.LossSlower, slower)
	waits := l.because(r, &all)
	add(result.LossStop, states[sim.Down]-waits[result.LossStop])
	add(result.LossWaiting, states[sim.Waiting]-waits[result.LossWaiting])
	add(result.LossPlanned, states[sim.PlannedStop]-waits[result.LossPlanned]-l.stands(r, &all))
	add(result.LossChangeover, states[sim.Changeover])
	add(result.LossBlocked, states[sim.Blocked]-waits[result.LossBlocked])
	add(result.LossStarved, states[sim.Starved]-waits[result.LossStarved])
	return all
}

// because are the times that go back to something; it returns their sums.
func (l losingStation) because(r *sim.Record, all *[]lossTime) (sums map[result.LossKind]sim.Micros) {
	sums = map[result.LossKind]sim.Micros{}
	add := func(kind result.LossKind, station, cause int, time, overlap sim.Micros) {
		sums[kind] += time
		*all = append(*all, lossTime{lossKey{kind: kind, from: originKey{station, cause}, named: true}, time, overlap})
	}
	for _, b := range r.Stations[l.station].StoppedBy {
		add(result.LossStop, b.Station, b.Cause, b.Down, 0)
		add(result.LossWaiting, b.Station, b.Cause, b.Waiting, 0)
		if b.Cause != sim.CauseOutage { // the spans of the calendar say more
			add(result.LossPlanned, b.Station, b.Cause, b.Planned, 0)
		}
	}
	for _, b := range r.Stations[l.station].Because {
		add(result.LossBlocked, b.Station, b.Cause, b.Blocked, b.BlockedOverlap)
		add(result.LossStarved, b.Station, b.Cause, b.Starved, b.Overlap-b.BlockedOverlap)
	}
	return sums
}

// stands are the times under spans of the calendar in which the line stands, by their names; it returns their sum.
func (l losingStation) stands(r *sim.Record, all *[]lossTime) (sum sim.Micros) {
	by := spansStanding(&l.line.Calendar, l.from, r.Window)
	for _, name := range slices.Sorted(maps.Keys(by)) {
		*all = append(*all, lossTime{lossKey: lossKey{kind: result.LossPlanned, span: name}, time: by[name]})
		sum += by[name]
	}
	return sum
}

// worked are the times at set speed of what cycles that ended gave.
func (l losingStation) worked(r *sim.Record) []lossTime {
	var good, samples, rejects, scrap, pockets sim.Micros
	first := &r.Stations[l.first]
	made := first.Cycles - first.ScrappedCycles
	good = sim.Micros(made) * l.cycle
	for _, i := range l.unit {
		one, gives := &r.Stations[i], sim.Micros(l.line.Stations[i].Gives)
		rejects += sim.Micros(one.Rejected) * l.cycle / gives
		samples += sim.Micros(one.Sampled) * l.cycle / gives
	}
	good -= rejects + samples
	scrap = sim.Micros(first.ScrappedCycles) * l.cycle
	pockets = sim.Micros(first.EmptyPockets) * l.cycle
	return []lossTime{
		{lossKey: lossKey{kind: result.LossGood}, time: good},
		{lossKey: lossKey{kind: result.LossSamples}, time: samples},
		{lossKey: lossKey{kind: result.LossRejects}, time: rejects},
		{lossKey: lossKey{kind: result.LossScrap}, time: scrap},
		{lossKey: lossKey{kind: result.LossPockets}, time: pockets},
	}
}
