package sim_test

import "tuckline/sim"

// refill gives a material one of the ways in which it is changed or refilled.
func (l *liner) refill(m *sim.Material) {
	switch l.count("refilled", 0, 5) {
	case 0:
		m.Alarm = sim.Level{On: true, Level: l.pieces("alarm", 0, m.Amount-m.Refill)}
		return
	case 1:
		m.Web = true
		m.Store = sim.WebStore{On: true, Length: m.PerCycle + l.pieces("store", 0, 30), Refill: 1 + float64(l.count("gains", 1, 20))/10}
	}
	if l.chance("prepared", 3) {
		m.Prepare = sim.Prepare{On: true, Lasts: l.law("prepare", 50_000, 4*s), Crew: l.work()}
	}
	if l.chance("splice scrap", 3) {
		m.SpliceScrap = l.pieces("splice scrap", 0, 3)
	}
	if l.chance("splice fails", 3) {
		m.SpliceFails = 0.3
	}
}

func (l *liner) check(name string) sim.Check {
	c := sim.Check{
		Name: name, Clock: sim.Clock(l.count("clock", 0, 3)), Takes: l.pieces("sample", 1, 8),
		Lasts: l.law("test", 50_000, 5*s), Crew: l.work(),
	}
	if c.Clock == sim.CycleClock || c.Clock == sim.PieceClock {
		c.Every = l.cycles()
	} else {
		c.Every = l.law("every", 100_000, 20*s)
	}
	return c
}
