package scenario

import (
	"tuckline/internal/quantity"
	"tuckline/sim"
)

// change makes how a reel is changed: by hand, with the next one prepared, or behind a store of web.
func (b *resolver) change(e *entry[materialWords], material *sim.Material) {
	m := &e.value
	material.SpliceScrap, material.SpliceFails = int64(m.SpliceScrap.value), m.SpliceFails.value
	by := m.ChangeBy.value
	switch {
	case m.Prepare.given() && by != "prepared":
		b.complain(m.Prepare.at, "a reel is got ready only with change by: prepared; write that beside it, or leave prepare out")
	case m.WebStore.given() && by != "web store":
		b.complain(m.WebStore.at, "a web store is drawn on only with change by: web store; write that beside it, or leave the web store out")
	case by == "web store" && !m.WebStore.given():
		b.complain(m.ChangeBy.at, "it does not say how much web lies in the store; write web store: {length: 8 m, refill: 1.3} beside it")
	case by == "web store" && m.Reel.Holds.given():
		b.complain(m.ChangeBy.at, "the reel counts pieces, and only web lies in a web store; write the reel with its diameters, or change by: hand")
	case by == "web store":
		b.webStore(e, material)
	case m.Prepare.given():
		p := &m.Prepare
		b.law(p.Lasts.law)
		material.Prepare = sim.Prepare{On: true, Lasts: p.Lasts.law.law, Crew: b.work(&p.Crew, usualPriority)}
	}
	if m.MisPicks.given() {
		b.complain(m.MisPicks.at, "a reel is drawn, not picked; mis-picks belong to a magazine")
	}
}

func (b *resolver) webStore(e *entry[materialWords], material *sim.Material) {
	m := &e.value
	s := &m.WebStore
	material.Store = sim.WebStore{On: true, Length: micrometres(s.Length), Refill: s.Refill.value}
	if s.Length.value > 0 && material.Store.Length < material.PerCycle {
		b.complain(s.Length.at, "the store does not serve one cycle, which draws %s of %s", m.PerCycle.text(), e.name)
	}
}

// notAReel refuses the words of reels at a stock that is refilled.
func (b *resolver) notAReel(m *materialWords, kind string) {
	for _, word := range []struct {
		name string
		at   at
	}{{"change by", m.ChangeBy.at}, {"prepare", m.Prepare.at}, {"web store", m.WebStore.at}, {"splice scrap", m.SpliceScrap.at}, {"splice fails", m.SpliceFails.at}} {
		if word.at.given() {
			b.complain(word.at, "%q is a word of reels, and a %s is refilled; leave it out", word.name, kind)
		}
	}
	if m.MisPicks.given() && kind != "magazine" {
		b.complain(m.MisPicks.at, "a %s is poured, not picked; mis-picks belong to a magazine", kind)
	}
}

// misPicks makes the picks that fail.
func (b *resolver) misPicks(m *materialWords) sim.MisPicks {
	w := &m.MisPicks
	b.law(w.Lasts.law)
	if w.Crew.given() && !w.Lasts.given() {
		b.complain(w.Crew.at, "it does not say how long %s are busy; write lasts: 1 min beside it, or leave crew out", quantity.Plural(w.Crew.crew))
	}
	return sim.MisPicks{
		Share: w.Per1000.value / 1000, Retries: int64(w.Retries.value), Stops: w.Lasts.given(),
		Lasts: w.Lasts.law.law, Crew: b.work(&w.Crew, usualPriority),
	}
}
