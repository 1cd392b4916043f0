package scenario

import (
	"tuckline/internal/quantity"
)

// product makes the format sheet and holds it against the stations.
func (b *resolver) product() {
	w := &b.words.Product
	p := Product{
		Name:              w.Name.value,
		BlistersPerCarton: int64(w.Carton.Blisters.value), CartonsPerBundle: int64(w.Bundle.Cartons.value),
		BundlesPerCase: int64(w.Case.Bundles.value), CartonsPerCase: int64(w.Case.Cartons.value),
		BlisterLength: micrometres(w.Blister.Length), BlisterWidth: micrometres(w.Blister.Width),
	}
	b.dose(&p)
	if w.Case.Bundles.given() && w.Case.Cartons.given() {
		b.complain(w.Case.Cartons.at, "a case holds bundles or cartons, not both")
	}
	b.s.Product = p
	b.packed("blisters", "cartons", w.Carton.Blisters)
	b.packed("cartons", "bundles", w.Bundle.Cartons)
	b.packed("bundles", "cases", w.Case.Bundles)
	b.packed("cartons", "cases", w.Case.Cartons)
	b.filledPockets(&p)
	b.blisterFits()
}

// dose is what is in the pockets.
func (b *resolver) dose(p *Product) {
	w := &b.words.Product
	blister := &w.Blister
	switch {
	case w.Tablet.given() && w.Capsule.given():
		b.complain(w.Capsule.at, "the product is tablets or capsules, not both")
	case blister.Tablets.given() && blister.Capsules.given():
		b.complain(blister.Capsules.at, "a blister holds tablets or capsules, not both")
	case w.Tablet.given() && blister.Capsules.given():
		b.complain(blister.Capsules.at, "the product is a tablet, so the blister holds tablets: N")
	case w.Capsule.given() && blister.Tablets.given():
		b.complain(blister.Tablets.at, "the product is a capsule, so the blister holds capsules: N")
	}
	switch {
	case w.Tablet.given() || blister.Tablets.given():
		p.Dose, p.MassMilligrams, p.DosesPerBlister = "tablet", w.Tablet.Mass.value, int64(blister.Tablets.value)
	case w.Capsule.given() || blister.Capsules.given():
		p.Dose, p.MassMilligrams, p.DosesPerBlister = "capsule", w.Capsule.Mass.value, int64(blister.Capsules.value)
	}
}

// packed holds "so many of these in one of those" against the stations that pack them.
func (b *resolver) packed(these, those string, said whole) {
	if said.value == 0 {
		return
	}
	for i := range b.s.Line.Stations {
		station := &b.s.Line.Stations[i]
		w := b.flow.byName[station.Name].station
		if !quantity.SameUnit(b.s.Stations[i].GivesUnit, those) || !w.Takes.given() || !w.Gives.given() {
			continue
		}
		taken := int64(0) // from all places together
		for k, takes := range w.Takes.counts() {
			if quantity.SameUnit(b.unit(inPortOf(station.Name, k)), these) {
				taken += takes.pieces()
			}
		}
		if taken > 0 && taken != int64(said.value)*station.Gives {
			b.complain(said.at, "the product has %d %s in each of its %s, but %q takes %d and gives %s",
				int64(said.value), these, those, station.Name, taken, w.Gives.text())
		}
	}
}

// filledPockets holds the doses in a blister against the hopper.
func (b *resolver) filledPockets(p *Product) {
	if p.DosesPerBlister == 0 {
		return
	}
	for i := range b.s.Line.Stations {
		station, extra := &b.s.Line.Stations[i], &b.s.Stations[i]
		for k := range extra.Materials {
			m := &station.Materials[k]
			want := p.DosesPerBlister * station.Gives
			w := b.flow.byName[station.Name].station.Consumes.list[k].value.PerCycle
			if w.given() && quantity.SameUnit(extra.Materials[k].Unit, p.Dose) && quantity.SameUnit(extra.GivesUnit, "blisters") && m.PerCycle != want {
				b.complain(w.at, "%d blisters with %d %s each need %d a cycle, not %d", station.Gives, p.DosesPerBlister, extra.Materials[k].Unit, want, m.PerCycle)
			}
		}
	}
}

// blisterFits holds the size of a blister against the web, either way round.
func (b *resolver) blisterFits() {
	w := &b.words.Product.Blister
	long, wide := w.Length.value, w.Width.value
	if long == 0 || wide == 0 {
		return
	}
	for _, e := range b.flow.entries {
		if e.station == nil || !e.station.Web.given() {
			continue
		}
		web := &e.station.Web
		fits := func(across, along float64) bool {
			return (web.Width.value == 0 || across*web.Across.value <= web.Width.value) &&
				(web.Index.value == 0 || along*web.Along.value <= web.Index.value)
		}
		if !fits(long, wide) && !fits(wide, long) {
			b.complain(web.at, "blisters of %s by %s do not fit: %d across and %d along need more than this web",
				w.Length.text(), w.Width.text(), int64(web.Across.value), int64(web.Along.value))
		}
	}
}
