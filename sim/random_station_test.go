package sim_test

import (
	"fmt"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// station makes a station; its names are not in the order of the line.
func (l *liner) station(stage, n int) sim.Station {
	st := sim.Station{
		Name:  fmt.Sprintf("%c station %d", "DBCA"[stage], n),
		Takes: l.pieces("takes", 1, 6), Gives: l.pieces("gives", 1, 6),
		Cycle:        l.law("cycle", 50_000, 2*s),
		BlocksBefore: l.chance("before", 4),
	}
	if l.chance("single", 3) {
		st.Takes, st.Gives = 1, 1
	}
	if stage == 0 && l.chance("supply", 5) {
		st.Supply = l.pieces("supply", 1, 200)
	}
	if l.chance("rejects", 3) {
		st.RejectShare = rapid.SampledFrom([]float64{0.01, 0.3, 1}).Draw(l.t, "share")
	}
	l.pace(&st, stage)
	if l.chance("after stop", 3) {
		st.AfterStop = l.scrap()
	}
	if l.chance("after standstill", 3) {
		st.AfterStandstill = l.scrap()
	}
	for i := range max(0, l.count("stops", -1, 3)) {
		st.Stops = append(st.Stops, l.stop(fmt.Sprintf("stop %d", i)))
	}
	for i := range max(0, l.count("materials", -3, 2)) {
		st.Materials = append(st.Materials, l.material(fmt.Sprintf("reel %d", i)))
	}
	for i := range max(0, l.count("checks", -4, 2)) {
		st.Checks = append(st.Checks, l.check(fmt.Sprintf("check %d", i)))
	}
	l.parts(&st)
	return st
}

func (l *liner) pace(st *sim.Station, stage int) {
	if stage > 0 {
		for range max(0, l.count("steps", -3, 2)) {
			back := l.pieces("back at", 0, 4)
			st.Steps = append(st.Steps, sim.SpeedStep{
				From: back + l.pieces("from level", 1, 4), BackAt: back, Cycle: l.time("step", 50_000, 2*s),
			})
			if l.chance("delay", 3) {
				st.Steps[len(st.Steps)-1].Delay = l.time("waits", 50_000, 3*s)
			}
		}
	}
	if l.chance("group", 4) {
		st.Group = sim.Group{Every: l.pieces("every", 1, 5), Adds: l.time("adds", 50_000, 2*s)}
	}
	if l.chance("ramp", 5) {
		st.Ramp = l.time("ramp", 50_000, 5*s)
	}
}

func (l *liner) scrap() []sim.ScrapRule {
	var rules []sim.ScrapRule
	for range l.count("rules", 1, 2) {
		rules = append(rules, sim.ScrapRule{LongerThan: l.time("longer than", 0, 4*s), Cycles: l.pieces("scrap", 0, 5)})
	}
	return rules
}

func (l *liner) stop(name string) sim.Stop {
	stop := sim.Stop{
		Name: name, Clock: sim.Clock(l.count("clock", 0, 3)), Lasts: l.law("lasts", 50_000, 5*s),
		Class: sim.Class(l.count("class", 0, 4)), Crew: l.work(),
	}
	switch stop.Clock {
	case sim.CycleClock, sim.PieceClock:
		stop.Every = l.cycles()
	default:
		stop.Every = l.law("every", 100_000, 20*s)
	}
	if l.chance("factor", 6) {
		stop.RateFactor = rapid.SampledFrom([]float64{0.5, 2}).Draw(l.t, "rate factor")
	}
	return stop
}

// cycles is an age in cycles or pieces, whole or not.
func (l *liner) cycles() sim.Law {
	switch l.count("ages", 0, 3) {
	case 0:
		return l.must(sim.Geometric(float64(l.count("mean age", 1, 20)), 1))
	case 1:
		return l.must(sim.Exponential(float64(l.count("mean age", 1, 20))))
	case 2:
		return sim.Fixed(float64(l.count("quarters", 1, 80)) / 4)
	}
	return sim.Fixed(float64(l.count("age", 1, 20)))
}

func (l *liner) work() sim.Work {
	if len(l.line.Crews) == 0 || !l.chance("crew", 2) {
		return sim.Work{}
	}
	crew := rapid.SampledFrom(l.line.Crews).Draw(l.t, "of")
	if crew.Relief {
		return sim.Work{}
	}
	return sim.Work{Crew: crew.Name, People: l.count("asks", 0, crew.People), Priority: l.count("priority", 0, 9)}
}

func (l *liner) material(name string) sim.Material {
	per := l.pieces("per cycle", 1, 5)
	amount := per + l.pieces("amount", 0, 60)
	m := sim.Material{
		Name: name, Amount: amount, PerCycle: per, Refill: per + l.pieces("refill", 0, amount-per),
		Lasts: l.law("change", 50_000, 4*s), Crew: l.work(),
		PartUsed: l.chance("part used", 3),
	}
	l.refill(&m)
	return m
}
