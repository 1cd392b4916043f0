package report

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

func (l *inputList) buffer(b *sim.Buffer, people *scenario.Buffer) {
	l.of = b.Name
	l.kind(b)
	l.add("holds", facts{"Unlimited": b.Holds == sim.Unlimited, "Holds": whole(float64(b.Holds)), "Unit": people.Unit})
	if people.Length > 0 {
		l.add("belt", facts{"Length": short3(float64(people.Length)/1e6) + thin + "m", "Speed": short3(people.Speed*60/1e6) + thin + "m/min", "Pitch": millimetres(people.Pitch)})
	}
	l.lasting("transit", b.Transit)
	if b.Stands {
		l.add("stands", nil)
	}
	l.sensor("sensor.full", b.Full, people.Unit)
	l.sensor("sensor.clear", b.Clear, people.Unit)
	l.level("stop.upstream", b.StopUpstream > 0, b.StopUpstream, people.Unit)
	l.level("restart.upstream", b.Restart.On, b.Restart.Level, people.Unit)
	l.level("start.downstream", b.Start.On, b.Start.Level, people.Unit)
	l.level("keeps", b.Keeps > 0, b.Keeps, people.Unit)
	if b.TakenOut {
		l.add("taken.out", nil)
	}
	l.atMost("in", b.In, people.Unit)
	l.atMost("out", b.Out, people.Unit)
	l.atMost("surplus", b.Surplus, people.Unit)
	if b.Turns.Alternate || b.Turns.First != "" {
		l.add("turns", facts{"First": b.Turns.First})
	}
	l.level("at.start", b.AtStart > 0, b.AtStart, people.Unit)
	l.byHand(b, people.Unit)
	for _, stop := range b.Stops {
		l.stop(stop, people.Unit)
	}
}

// kind says how a store lies in the line, where not all pieces pass through it in their order.
func (l *inputList) kind(b *sim.Buffer) {
	switch b.Kind {
	case sim.BesideLine:
		l.named(say("input.kind", nil), "kind.beside", nil)
	case sim.HandMagazine:
		l.named(say("input.kind", nil), "kind.hand", nil)
	}
	if b.LastIn {
		l.add("leaves", nil)
	}
}

// level is an input that is a number of pieces, where it is written.
func (l *inputList) level(word string, written bool, level int64, unit string) {
	if written {
		l.add(word, facts{"Level": whole(float64(level)), "Unit": unit})
	}
}

// atMost is a limit of pieces a minute, where there is one.
func (l *inputList) atMost(word string, perPiece sim.Micros, unit string) {
	if perPiece > 0 {
		l.add(word, facts{"Rate": short3(float64(sim.Minute) / float64(perPiece)), "Unit": unit})
	}
}

func (l *inputList) sensor(word string, sensor sim.Sensor, unit string) {
	if sensor.On {
		l.add(word, facts{"At": whole(float64(sensor.At)), "Unit": unit, "Delay": length(sensor.Delay)})
	}
}

// byHand is the work at a hand magazine.
func (l *inputList) byHand(b *sim.Buffer, unit string) {
	if b.Hand.PerPiece > 0 {
		l.add("hand", facts{
			"Rate": short3(float64(sim.Minute) / float64(b.Hand.PerPiece)), "Unit": unit,
			"Load": whole(float64(b.Hand.Load)), "Crew": crewWords(b.Hand.Crew),
		})
	}
	if b.Returns.Share > 0 {
		l.add("returns", facts{
			"Share": short3(100 * b.Returns.Share), "Unit": unit, "Inspection": timeWords(b.Returns.Inspection), "Crew": crewWords(b.Returns.Crew),
		})
	}
}
