package sim_test

import (
	"math"
	"strings"
	"testing"

	"tuckline/sim"
)

// Materials and checks that cannot be are refused, with the place.
func TestTasksRefused(t *testing.T) {
	for path, change := range map[string]func(*sim.Material){
		"B.consumes.m": func(m *sim.Material) { m.PerCycle = 0 },
		"B.consumes.m.refill.amount": func(m *sim.Material) {
			m.Refill = 2000
		},
		"B.consumes.m.crew":         func(m *sim.Material) { m.Crew.Crew = "nobody" },
		"B.consumes.m.splice scrap": func(m *sim.Material) { m.SpliceScrap = -1 },
		"B.consumes.m.splice fails": func(m *sim.Material) { m.SpliceFails = 1 },
		"B.consumes.m.prepare":      func(m *sim.Material) { m.Prepare.On = true },
		"B.consumes.m.prepare.crew": func(m *sim.Material) {
			m.Prepare = sim.Prepare{On: true, Lasts: sec(1), Crew: sim.Work{Crew: "nobody"}}
		},
		"B.consumes.m.refill.alarm at":           func(m *sim.Material) { m.Refill, m.Alarm = 600, sim.Level{On: true, Level: 401} },
		"B.consumes.m.web store":                 func(m *sim.Material) { m.Web, m.Store = false, sim.WebStore{On: true, Length: 500, Refill: 1.3} },
		"B.consumes.m.web store.length":          func(m *sim.Material) { m.Store = sim.WebStore{On: true, Length: 99, Refill: 1.3} },
		"B.consumes.m.web store.refill":          func(m *sim.Material) { m.Store = sim.WebStore{On: true, Length: 500, Refill: 1} },
		"B.consumes.m.refill.alarm at, negative": func(m *sim.Material) { m.Refill, m.Alarm = 600, sim.Level{On: true, Level: -1} },
		"B.consumes.m.refill.alarm at, store": func(m *sim.Material) {
			m.Refill, m.Alarm, m.Store = 600, sim.Level{On: true}, sim.WebStore{On: true, Length: 500, Refill: 1.3}
		},
		"B.consumes.m.refill.alarm at, prepare": func(m *sim.Material) {
			m.Refill, m.Alarm, m.Prepare = 600, sim.Level{On: true}, sim.Prepare{On: true, Lasts: sec(1)}
		},
		"B.consumes.m.mis-picks": func(m *sim.Material) {
			m.Store, m.MisPicks.Share = sim.WebStore{On: true, Length: 500, Refill: 1.3}, 0.01
		},
		"B.consumes.m.web store.refill, no number": func(m *sim.Material) {
			m.Store = sim.WebStore{On: true, Length: 500, Refill: math.NaN()}
		},
	} {
		b := one("B", "A", 1)
		m := reel("m", 1000, 1)
		m.Web = true
		change(&m)
		b.Materials = []sim.Material{m}
		refused(t, upToComma(path), one("A", "", 1), b)
	}
}

// upToComma leaves out what tells two cases at the same place apart.
func upToComma(path string) string {
	path, _, _ = strings.Cut(path, ",")
	return path
}

func TestChecksRefused(t *testing.T) {
	for path, change := range map[string]func(*sim.Check){
		"B.checks.leak test.every":           func(c *sim.Check) { c.Every = sim.Law{} },
		"B.checks.leak test.every, no clock": func(c *sim.Check) { c.Clock = 9 },
		"B.checks.leak test.takes":           func(c *sim.Check) { c.Takes = 0 },
		"B.checks.leak test.lasts":           func(c *sim.Check) { c.Lasts = sim.Law{} },
		"B.checks.leak test.crew":            func(c *sim.Check) { c.Crew.Crew = "nobody" },
		"B.checks.m":                         func(c *sim.Check) { c.Name = "m" },
	} {
		b := one("B", "A", 1)
		b.Materials = []sim.Material{reel("m", 1000, 1)}
		b.Checks = []sim.Check{leakTest()}
		b.Checks[0].Crew = sim.Work{}
		change(&b.Checks[0])
		refused(t, upToComma(path), one("A", "", 1), b)
	}
}

// On one drive single pieces can only be taken where what follows is one for one.
func TestCheckOnADriveRefused(t *testing.T) {
	a, b := checked(), one("B", "A", 1)
	a.Checks[0].Crew = sim.Work{}
	b.Takes, b.Gives, a.Coupled, b.Coupled = 2, 1, "drive", "drive"
	refused(t, "B.gives", a, b)
}
