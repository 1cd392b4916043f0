package scenario

import (
	"cmp"
	"slices"

	"tuckline/sim"
)

// usualCounting is how key figures are counted where the file says nothing (common practice, no source).
var usualCounting = Counting{
	MinorUpTo: 5 * sim.Minute, MinorIn: FromPerformance, MaterialIn: FromAvailability,
	NotBusy: []string{"breaks", "cleaning"},
}

// usualPrimed is when an agreed run begins, after the start of the line.
const usualPrimed = sim.Hour

// keyFigures says how key figures are counted.
func (b *resolver) keyFigures() {
	w := &b.words.KeyFigures
	own := b.counting(usualCounting, w.RunTimeFrom, w.ShorterThan, w.MinorAs, w.MaterialAs, w.NotBusy)
	b.s.KeyFigures = KeyFigures{Counting: own}
	if r := &w.AsReported; r.given() {
		theirs := b.counting(own, r.RunTimeFrom, r.ShorterThan, r.MinorAs, r.MaterialAs, r.NotBusy)
		b.s.KeyFigures.Reported = &Reported{Counting: theirs, OEE: r.OEE.value}
	}
}

// counting lays what is written over what applies otherwise.
func (b *resolver) counting(c Counting, runTime choice, shorter duration, minor, material choice, notBusy oneOrMore[choice]) Counting {
	if runTime.value != "" {
		c.AtTopSpeed = runTime.value == "top speed"
	}
	if shorter.given() {
		c.MinorUpTo = micros(shorter.value)
	}
	c.MinorIn = cmp.Or(Taken(minor.value), c.MinorIn)
	c.MaterialIn = cmp.Or(Taken(material.value), c.MaterialIn)
	if notBusy.given() {
		c.NotBusy = b.notBusy(notBusy)
	}
	return c
}

// notBusy are the words of a list, each once; nothing stands alone.
func (b *resolver) notBusy(w oneOrMore[choice]) []string {
	var all []string
	for _, one := range w.list {
		switch {
		case one.value == "":
		case one.value == "nothing" && len(w.list) > 1:
			b.complain(one.at, "nothing and something else cannot both be left out; write one of them")
		case slices.Contains(all, one.value):
			b.complain(one.at, "%q is written twice; one of them has to go", one.value)
		case one.value != "nothing":
			all = append(all, one.value)
		}
	}
	return all
}

// agreement is what an acceptance run has to show.
func (b *resolver) agreement() {
	w := &b.words.Agreement
	if !w.given() {
		return
	}
	a := Agreement{Efficiency: w.Efficiency.value, OfTopSpeed: w.Of.value == "top speed", Run: micros(w.Run.value), From: usualPrimed}
	if w.From.given() {
		a.From = micros(w.From.value)
	}
	b.s.Agreement = a
}
