package scenario

import (
	"math"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

// material makes a reel, a magazine or a hopper.
func (b *resolver) material(e *entry[materialWords]) (sim.Material, Material) {
	m := &e.value
	given := []string{}
	for _, kind := range []struct {
		word string
		at   at
	}{{"reel", m.Reel.at}, {"magazine", m.Magazine.at}, {"hopper", m.Hopper.at}} {
		if kind.at.given() {
			given = append(given, kind.word)
		}
	}
	switch {
	case len(given) == 0:
		b.complain(e.place, "%q does not say where it comes from; write a reel, a magazine or a hopper", e.name)
	case len(given) > 1:
		b.complain(e.place, "%q is a %s at once; one of them has to go", e.name, strings.Join(given, " and a "))
	case given[0] == "reel":
		return b.reel(e)
	case given[0] == "magazine":
		return b.stock(e, given[0], &m.Magazine)
	default:
		return b.stock(e, given[0], &m.Hopper)
	}
	return sim.Material{Name: e.name}, Material{AlarmAt: -1}
}

// reel makes a reel of web by its diameters, or one of pieces.
func (b *resolver) reel(e *entry[materialWords]) (sim.Material, Material) {
	m := &e.value
	reel := &m.Reel
	material := sim.Material{
		Name: e.name, PerCycle: int64(math.Round(m.PerCycle.value)), Lasts: m.Change.law.law,
		Crew: b.work(&m.Crew, usualPriority), PartUsed: b.words.Run.AtStart.Reels.value == "part used",
		Web: !reel.Holds.given(),
	}
	extra := Material{
		Kind: "reel", Unit: "m", AlarmAt: -1,
		Outer: micrometres(reel.Outer), Core: micrometres(reel.Core),
		Thickness: micrometres(reel.Thickness), Unusable: micrometres(reel.Unusable),
	}
	b.law(m.Change.law)
	if m.Refill.given() {
		b.complain(m.Refill.at, "a reel is changed, not refilled; write change: 4 min and crew: NAME beside it")
	} else if !m.Change.given() {
		b.complain(e.place, "%q does not say how long the change of a reel lasts, such as change: 4 min", e.name)
	}
	if reel.Holds.given() {
		extra.Unit = b.reelOfPieces(e)
		material.Amount = reel.Holds.pieces()
	} else {
		material.Amount = b.reelLength(e)
	}
	material.Refill = material.Amount
	if material.Amount > 0 && material.PerCycle > material.Amount {
		b.complain(m.PerCycle.at, "a cycle draws more of %s than a whole reel has", e.name)
	}
	b.change(e, &material)
	return material, extra
}

func (b *resolver) reelOfPieces(e *entry[materialWords]) string {
	m := &e.value
	for _, l := range []length{m.Reel.Outer, m.Reel.Core, m.Reel.Thickness, m.Reel.Unusable} {
		if l.given() {
			b.complain(l.at, "a reel has either diameters and thickness, or holds: pieces")
			break
		}
	}
	b.sameUnits(&m.Reel.Holds, &m.PerCycle.count, m.PerCycle.web)
	return quantity.Plural(m.Reel.Holds.unit)
}

// reelLength is the usable length π(D²−d²)/(4t) less what is unusable, from the
// area of the wound web (TRADE: arithmetic), in micrometres.
func (b *resolver) reelLength(e *entry[materialWords]) int64 {
	m := &e.value
	reel := &m.Reel
	outer, core, thickness := reel.Outer.value, reel.Core.value, reel.Thickness.value
	switch {
	case !reel.Outer.given() || !reel.Core.given() || !reel.Thickness.given():
		b.complain(reel.at, "a reel needs outer, core and thickness, or holds: a number of pieces")
		return 0
	case outer == 0 || core == 0 || thickness == 0:
		return 0 // said already
	case core >= outer:
		b.complain(reel.Core.at, "the core is not smaller than the reel, %s", reel.Outer.text())
		return 0
	case m.PerCycle.given() && !m.PerCycle.web && b.read(m.PerCycle.at):
		b.complain(m.PerCycle.at, "the reel has a length of web, so a cycle draws a length, such as 132 mm")
		return 0
	}
	usable := math.Pi*(outer*outer-core*core)/(4*thickness) - reel.Unusable.value
	if usable < 1 {
		b.complain(reel.Unusable.or(reel.at), "nothing of the reel is left: it has %.1f m in all", (usable+reel.Unusable.value)/1e6)
		return 0
	}
	return int64(math.Round(usable))
}

// stock makes a magazine or a hopper with its refill.
func (b *resolver) stock(e *entry[materialWords], kind string, stock *stockWords) (sim.Material, Material) {
	m := &e.value
	refill := &m.Refill
	material := sim.Material{
		Name: e.name, Amount: stock.Holds.pieces(), PerCycle: m.PerCycle.pieces(), Refill: refill.Amount.pieces(),
		Lasts: refill.Lasts.law.law, Crew: b.work(&refill.Crew, usualPriority),
		Alarm:    sim.Level{On: refill.AlarmAt.given(), Level: refill.AlarmAt.pieces()},
		PartUsed: b.words.Run.AtStart.Magazines.value == "part used",
	}
	extra := Material{Kind: kind, Unit: quantity.Plural(stock.Holds.unit), AlarmAt: -1}
	b.law(refill.Lasts.law)
	b.sameUnits(&stock.Holds, &m.PerCycle.count, m.PerCycle.web)
	b.sameUnits(&stock.Holds, &refill.Amount, false)
	b.sameUnits(&stock.Holds, &refill.AlarmAt, false)
	switch {
	case m.Change.given():
		b.complain(m.Change.at, "a %s is refilled, not changed; write refill: {amount: …, lasts: …}", kind)
	case !refill.given():
		b.complain(e.place, "%q does not say how the %s is refilled, such as refill: {amount: 400 leaflets, lasts: 0.5 min}", e.name, kind)
	case m.Crew.given():
		b.complain(m.Crew.at, "who refills is written inside refill: {…, crew: %s}", m.Crew.text())
	}
	if material.Alarm.On {
		extra.AlarmAt = material.Alarm.Level
	}
	b.notAReel(m, kind)
	if m.MisPicks.given() {
		material.MisPicks = b.misPicks(m)
	}
	b.checkRefill(&material, &extra, m)
	return material, extra
}

// checkRefill refuses a refill that does not fit, and one that would never come in time.
func (b *resolver) checkRefill(material *sim.Material, extra *Material, m *materialWords) {
	left := max(extra.AlarmAt, 0)
	switch {
	case material.Amount == 0 || material.Refill == 0 || material.PerCycle == 0:
	case material.Refill+left > material.Amount:
		b.complain(m.Refill.Amount.at, "%d and the %d that are left at the refill do not fit: the %s holds %d", material.Refill, left, extra.Kind, material.Amount)
	case material.Refill < material.PerCycle:
		b.complain(m.Refill.Amount.at, "a refill of %d does not last for one cycle, which draws %d", material.Refill, material.PerCycle)
	case material.PerCycle > material.Amount:
		b.complain(m.PerCycle.at, "a cycle draws %d, but the %s holds only %d", material.PerCycle, extra.Kind, material.Amount)
	}
}

// sameUnits wants the same named pieces in a stock and in what is counted against it.
func (b *resolver) sameUnits(holds, other *count, web bool) {
	switch {
	case !holds.given() || !other.given() || !b.read(holds.at) || !b.read(other.at):
	case holds.unit == "":
		b.complain(holds.at, "%q has no unit; write what it holds, as %[1]s leaflets", holds.text())
	case web:
		b.complain(other.at, "%q is a length, but %s are counted here", other.text(), quantity.Plural(holds.unit))
	case other.unit == "":
		b.complain(other.at, "%q has no unit; write %[1]s %s", other.text(), quantity.Plural(holds.unit))
	case !quantity.SameUnit(holds.unit, other.unit):
		b.complain(other.at, "%s are counted here, but the stock holds %s", quantity.Plural(other.unit), quantity.Plural(holds.unit))
	}
}
