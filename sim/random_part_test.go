package sim_test

import (
	"pgregory.net/rapid"

	"tuckline/sim"
)

// parts gives a station what few have: rejects of every kind, picks that fail, times before work.
func (l *liner) parts(st *sim.Station) {
	if l.chance("heat recovery", 6) {
		st.HeatRecovery = l.time("recovers", 50_000, 4*s)
	}
	if l.chance("heat-up", 8) {
		st.HeatUp = l.time("heats up", 50_000, 15*s)
	}
	if l.chance("runs", 5) {
		st.Runs = sim.RejectRuns{Enter: l.share("enter"), Share: l.share("share in a run"), Length: float64(l.pieces("length", 1, 9))}
	}
	if l.chance("rejects after", 6) {
		st.RejectsAfter = l.pieces("cycles later", 1, 6)
	}
	if l.chance("in a row", 6) {
		st.RejectStop = sim.RejectStop{After: l.pieces("after in a row", 1, 3), Lasts: l.law("reset", 50_000, 3*s), Crew: l.work()}
	}
	if l.chance("no-reads", 6) {
		st.NoReads = l.share("no-reads share")
	}
	if l.chance("lost per stop", 5) {
		st.LostPerStop = l.pieces("packs lost", 1, 9)
	}
	for i := range st.Materials {
		if m := &st.Materials[i]; !m.Store.On && l.chance("mis-picks", 3) {
			m.MisPicks = l.misPicks()
		}
	}
}

func (l *liner) share(label string) float64 {
	return rapid.SampledFrom([]float64{0.02, 0.3, 1}).Draw(l.t, label)
}

func (l *liner) misPicks() sim.MisPicks {
	p := sim.MisPicks{Share: rapid.SampledFrom([]float64{0.05, 0.4, 0.9}).Draw(l.t, "fails"), Retries: l.pieces("retries", 0, 3)}
	if l.chance("stops", 2) {
		p.Stops, p.Lasts, p.Crew = true, l.law("put right", 50_000, 3*s), l.work()
	}
	return p
}

// pockets lets a station that is the first on its drive run on without input.
func (l *liner) pockets(st *sim.Station) {
	for i := range l.line.Stations {
		if o := &l.line.Stations[i]; o.Name == st.From && o.Coupled != "" && o.Coupled == st.Coupled {
			return
		}
	}
	if st.From != "" && l.chance("empty pockets", 5) {
		st.EmptyPockets = sim.EmptyPockets{On: true, Most: l.pieces("in a row", 1, 4)}
	}
}
