package report

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// material says what a stock is, how it is filled, and what goes wrong with it.
func (l *inputList) material(m *sim.Material, people *scenario.Material) {
	perCycle := whole(float64(m.PerCycle))
	if people.Unit == "m" {
		perCycle = millimetres(m.PerCycle)
	}
	alarm := ""
	switch {
	case m.Alarm.On:
		alarm = stockWords(m.Alarm.Level, people)
	case people.AlarmAt >= 0:
		alarm = stockWords(people.AlarmAt, people)
	}
	l.named(say("input.material", facts{"Name": m.Name}), "material", facts{
		"Kind": people.Kind, "Amount": stockWords(m.Amount, people), "PerCycle": perCycle, "Refill": stockWords(m.Refill, people),
		"Lasts": timeWords(m.Lasts), "Crew": crewWords(m.Crew), "Alarm": alarm, "PartUsed": m.PartUsed,
	})
	if people.Outer > 0 {
		l.ofMaterial(m, "reel", facts{
			"Outer": millimetres(people.Outer), "Core": millimetres(people.Core),
			"Thickness": short3(float64(people.Thickness)) + thin + "µm", "Unusable": stockWords(people.Unusable, &scenario.Material{Unit: "m"}),
		})
	}
	l.changes(m)
	if picks := m.MisPicks; picks.Share > 0 {
		l.ofMaterial(m, "mis.picks", facts{
			"PerThousand": short3(1000 * picks.Share), "Thousand": whole(1000), "Retries": picks.Retries, "Stops": picks.Stops,
			"Lasts": timeWords(picks.Lasts), "Crew": crewWords(picks.Crew),
		})
	}
}

// stockWords write an amount of a stock: metres of web, or pieces.
func stockWords(n int64, people *scenario.Material) string {
	if people.Unit == "m" {
		return short3(float64(n)/1e6) + thin + "m"
	}
	return whole(float64(n)) + " " + people.Unit
}

// ofMaterial is an input of a material, which stands before it.
func (l *inputList) ofMaterial(m *sim.Material, word string, f facts) {
	f["Name"] = m.Name
	l.named(say("input."+word, f), word, f)
}

// changes say how a reel is changed, where that is not at a plain stop.
func (l *inputList) changes(m *sim.Material) {
	if m.Prepare.On {
		l.ofMaterial(m, "prepare", facts{"Lasts": timeWords(m.Prepare.Lasts), "Crew": crewWords(m.Prepare.Crew)})
	}
	if m.Store.On {
		l.ofMaterial(m, "web.store", facts{"Length": short3(float64(m.Store.Length)/1e6) + thin + "m", "Refill": short3(m.Store.Refill)})
	}
	if m.SpliceScrap > 0 {
		l.ofMaterial(m, "splice.scrap", facts{"Cycles": whole(float64(m.SpliceScrap))})
	}
	if m.SpliceFails > 0 {
		l.ofMaterial(m, "splice.fails", facts{"Share": short3(100 * m.SpliceFails)})
	}
}
