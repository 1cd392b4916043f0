package scenario

import (
	"tuckline/internal/quantity"
	"tuckline/sim"
)

// kinds are the words of how a store lies in the line.
var kinds = map[string]sim.Kind{"": sim.InLine, "in line": sim.InLine, "beside the line": sim.BesideLine, "hand magazine": sim.HandMagazine}

// store makes what a store does beside holding pieces.
func (b *resolver) store(w *bufferWords, buffer *sim.Buffer) {
	buffer.Kind = kinds[w.Kind.value]
	b.checkKind(w, buffer)
	buffer.LastIn = w.Leaves.value == "last in first out"
	buffer.In, buffer.Out, buffer.Surplus = micros(w.InAtMost.value), micros(w.OutAtMost.value), micros(w.Surplus.value)
	b.keeps(w, buffer)
	for i := range w.Stops.list {
		buffer.Stops = append(buffer.Stops, b.storeStop(w, &w.Stops.list[i]))
	}
	if buffer.Kind == sim.HandMagazine {
		b.handMagazine(w, buffer)
	}
}

// checkKind refuses words that a store of this kind does not have.
func (b *resolver) checkKind(w *bufferWords, buffer *sim.Buffer) {
	refuse := func(word string, where at, advice string) {
		if where.given() {
			b.complain(where, "%q is not a word of a store %s; %s", word, kindWords[buffer.Kind], advice)
		}
	}
	if buffer.Kind != sim.BesideLine {
		refuse("surplus", w.Surplus.at, "write kind: beside the line, or leave it out")
	}
	if buffer.Kind == sim.HandMagazine {
		for _, word := range []struct {
			name string
			at   at
		}{{"in at most", w.InAtMost.at}, {"out at most", w.OutAtMost.at}} {
			refuse(word.name, word.at, "how fast pieces go is said by hand rate")
		}
		refuse("stops", w.Stops.at, "nothing of it can jam, so leave them out")
		return
	}
	for _, word := range []struct {
		name string
		at   at
	}{{"hand rate", w.HandRate.at}, {"load", w.Load.at}, {"crew", w.Crew.at}, {"stock", w.Stock.at}, {"returns", w.Returns.at}} {
		refuse(word.name, word.at, "write kind: hand magazine, or leave it out")
	}
}

var kindWords = map[sim.Kind]string{
	sim.InLine: "in the line", sim.BesideLine: "beside the line", sim.HandMagazine: "that is worked by hand",
}

// keeps is what always stays, beside which a whole take has to find room.
func (b *resolver) keeps(w *bufferWords, buffer *sim.Buffer) {
	buffer.Keeps = w.Keeps.pieces()
	takes := b.mostTaken(buffer.Name)
	if buffer.Kind != sim.InLine {
		takes = 1 // what lacks is made up, piece by piece
	}
	if w.Keeps.given() && buffer.Holds > 0 && buffer.Keeps+takes > buffer.Holds {
		b.complain(w.Keeps.at, "no piece would ever leave: the store holds %d, and %d that stay and %d that are taken at once do not fit", buffer.Holds, buffer.Keeps, takes)
	}
}

func (b *resolver) storeStop(w *bufferWords, e *entry[storeStopWords]) sim.Stop {
	s := &e.value
	b.law(s.Every.law)
	b.law(s.Lasts.law)
	switch unit, holds := s.Every.age.pieces, b.unit(w.Name.value); s.Every.age.clock {
	case quantity.Cycles:
		b.complain(s.Every.at, "a store has no cycles; write the pieces that go in, such as 20000 %s, or a time such as 20 h calendar", holds)
	case quantity.Running:
		b.complain(s.Every.at, "a store has no running time; write the pieces that go in, such as 20000 %s, or a time such as 20 h calendar", holds)
	case quantity.Pieces:
		if !quantity.SameUnit(unit, holds) {
			b.complain(s.Every.at, "the stop counts %s, but %s go into %q", quantity.Plural(unit), holds, w.Name.value)
		}
	}
	return sim.Stop{
		Name: e.name, Every: s.Every.law.law, Clock: clocks[s.Every.age.clock], Lasts: s.Lasts.law.law,
		Class: classOf(s.Class.value), Crew: b.work(&s.Crew, int(s.Priority.value)),
	}
}

// handMagazine makes the work at a hand magazine and what comes back to it.
func (b *resolver) handMagazine(w *bufferWords, buffer *sim.Buffer) {
	for _, word := range []struct {
		at        at
		name, say string
	}{
		{w.HandRate.at, "hand rate", "how fast pieces are carried, such as hand rate: 90/min"},
		{w.Load.at, "load", "how many are carried at a time, such as load: 30 " + b.unit(buffer.Name)},
		{w.Crew.at, "crew", "who carries them, such as crew: operators"},
	} {
		if !word.at.given() {
			b.complain(w.Kind.at, "a hand magazine needs %q: %s", word.name, word.say)
		}
	}
	buffer.Hand = sim.Hand{PerPiece: micros(w.HandRate.value), Load: w.Load.pieces(), Crew: b.work(&w.Crew, usualPriority)}
	if w.Load.given() && buffer.Holds > 0 && buffer.Hand.Load > buffer.Holds {
		b.complain(w.Load.at, "%d pieces at a time do not fit into the magazine, which holds %d", buffer.Hand.Load, buffer.Holds)
	}
	if w.Stock.given() {
		b.stockAtStart(w, buffer)
	}
	if w.Returns.given() {
		b.returns(w, buffer)
	}
}

func (b *resolver) stockAtStart(w *bufferWords, buffer *sim.Buffer) {
	for _, one := range b.words.Run.AtStart.Levels.list {
		if one.name == buffer.Name {
			b.complain(one.place, "what is in %q at the start is already said by its stock (line %d)", one.name, w.Stock.line())
		}
	}
	buffer.AtStart = w.Stock.pieces()
	if buffer.Holds > 0 && buffer.AtStart > buffer.Holds {
		b.complain(w.Stock.at, "%q is more than the magazine holds, %d", w.Stock.text(), buffer.Holds)
	}
}

func (b *resolver) returns(w *bufferWords, buffer *sim.Buffer) {
	r := &w.Returns
	b.law(r.Inspection.law)
	buffer.Returns = sim.Returns{Share: r.Share.value, Inspection: r.Inspection.law.law, Crew: b.work(&r.Crew, usualPriority)}
	for _, taker := range b.flow.takers[buffer.Name] {
		behind := b.flow.byName[taker].station
		switch {
		case behind == nil:
			b.complain(r.at, "%q is no station: nothing is rejected there that could come back; put the magazine right before the station", taker)
		case !behind.mayReject():
			b.complain(r.at, "%q rejects nothing that could come back; write rejects: 0.4 %% there, or leave returns out", taker)
		}
	}
}

// mayReject says that a station has a word of rejects.
func (w *stationWords) mayReject() bool {
	for i := range w.Consumes.list {
		if w.Consumes.list[i].value.MisPicks.given() {
			return true
		}
	}
	return w.Rejects.given() || w.RejectRuns.given() || w.NoReads.given() || w.LostPerStop.given()
}
