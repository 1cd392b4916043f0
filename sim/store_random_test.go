package sim_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// holdsBack says that a buffer may keep its pieces from a taker that has room, or from a
// feeder.
func holdsBack(b *sim.Buffer) bool {
	return b.In > 0 || b.Out > 0 || b.Keeps > 0 || len(b.Stops) > 0 || b.Kind != sim.InLine
}

// mayShut says that what a station has reserved may be closed when its cycle ends: the next place
// has stops or a rate, or is a belt that stands.
func (h *holder) mayShut(station string) bool {
	for i := range h.line.Buffers {
		b := &h.line.Buffers[i]
		if slices.Contains(h.m.Places()[i].From, station) && (len(b.Stops) > 0 || b.Stands || b.In > 0 || b.Kind != sim.InLine) {
			return true
		}
	}
	return false
}

// stores: what lies beside the line came in and has not been given back; what a store does not have
// it does not count; it is stopped at most all the time.
func (h *holder) stores(i int) {
	p, r := h.m.Places()[i], &h.rec.Buffers[i]
	var b sim.Buffer
	if i < len(h.line.Buffers) {
		b = h.line.Buffers[i]
	}
	if b.Kind != sim.HandMagazine {
		h.same(p.Name+" by hand", r.ByHand+r.Returned, 0)
	} else {
		h.same(p.Name+" by hand", r.ByHand, r.Kept+r.GivenBack)
	}
	if b.Kind == sim.InLine {
		h.same(p.Name+" beside the line", r.Kept+r.GivenBack+r.ByHand+int64(r.RanDry+r.HandTime), 0)
	}
	if !b.Full.On {
		h.same(p.Name+" sensor", r.SensorStops, 0)
	}
	h.atMost(p.Name+" given back", r.GivenBack, r.Kept+r.Level[0]+r.Returned)
	h.atMost(p.Name+" kept", r.Kept, r.In)
	h.atMost(p.Name+" left", r.Kept+r.Returned-r.GivenBack-r.Cleared, r.Level[1])
	h.atMost(p.Name+" dry", int64(r.RanDry), int64(r.Empty))
	h.same(p.Name+" stops", int64(len(r.Stops)), int64(len(b.Stops)))
	for _, stop := range r.Stops {
		h.atMost(p.Name+" stopped", int64(stop.Waiting+stop.Down), int64(h.o.Measure))
	}
}

// randomStores is a random line whose buffers and belts have rules of their own.
func randomStores(t *rapid.T, unit sim.Micros) sim.Line {
	l := &liner{t: t, unit: unit, line: randomLine(t, unit)}
	for i := range l.line.Buffers {
		l.rules(&l.line.Buffers[i])
	}
	for i := range l.line.Buffers {
		l.allowFor(&l.line.Buffers[i])
	}
	return l.line
}

// neighbours are what is put at once and taken at once, at most, how many stations take, and whether one of
// them reads the level, reserves its room or assembles.
func (l *liner) neighbours(b *sim.Buffer) (gives, takes int64, takers int, reads, reserves, assembles bool) {
	gives, takes = 1, 1
	for i := range l.line.Stations {
		st := &l.line.Stations[i]
		if slices.Contains(b.From, st.Name) {
			gives, reserves = max(gives, st.Gives), reserves || st.BlocksBefore
		}
		if st.From == b.Name {
			takes, takers, reads = max(takes, st.Takes), takers+1, reads || len(st.Steps) > 0
			assembles = assembles || len(st.Also) > 0
		}
		for _, in := range st.Also {
			if in.From == b.Name {
				takes, takers, assembles = max(takes, in.Takes), takers+1, true
			}
		}
	}
	return gives, takes, takers, reads, reserves, assembles
}

func (l *liner) rules(b *sim.Buffer) {
	gives, takes, takers, reads, reserves, assembles := l.neighbours(b)
	belt := b.Transit > 0
	slack := b.Holds - max(gives, takes) + 1
	if belt || reserves || assembles {
		slack = b.Holds - gives - takes + 1
	}
	if b.Holds == sim.Unlimited {
		slack = 20
	}
	switch {
	case belt && !b.Start.On && (takers < 2 && !reads || takes == 1) && l.chance("stands", 3):
		b.Stands = true
	case belt && slack >= 0 && b.Holds >= takes && l.chance("sensors", 2):
		l.sensors(b, takes)
	case !belt && (b.Holds > 1 || b.Holds == sim.Unlimited) && l.chance("beside", 2):
		l.beside(b)
		if l.chance("by hand", 2) {
			l.hand(b, gives)
			l.keeps(b, takes, slack)
			return
		}
	}
	if l.chance("in at most", 4) {
		b.In = l.time("in", 50_000, 400_000)
	}
	if l.chance("out at most", 4) {
		b.Out = l.time("out", 50_000, 400_000)
		if b.Surplus > 0 {
			b.Surplus = max(b.Surplus, b.Out)
		}
	}
	l.keeps(b, takes, slack)
	for i := range max(0, l.count("store stops", -3, 2)) {
		stop := l.stop(fmt.Sprintf("jam %d", i))
		if stop.Clock != sim.CalendarClock {
			stop.Clock = sim.PieceClock
			stop.Every = l.cycles()
		}
		b.Stops = append(b.Stops, stop)
	}
}

func (l *liner) sensors(b *sim.Buffer, takes int64) {
	low := takes
	if b.Start.On {
		low = max(low, b.Start.Level)
	}
	if low > b.Holds {
		return
	}
	b.Full = sim.Sensor{On: true, At: l.pieces("full at", low, b.Holds), Delay: l.time("full delay", 0, 2*s)}
	travels := l.chance("travel", 2)
	if travels {
		b.Full.Travel = min(b.Transit, l.time("full travel", 0, b.Transit))
	}
	if l.chance("clear", 2) {
		b.Clear = sim.Sensor{On: true, At: l.pieces("clear at", low, b.Holds), Delay: l.time("clear delay", 0, 2*s)}
		if b.Clear.At > b.Full.At {
			b.Clear.Delay = max(b.Clear.Delay, l.unit)
		}
		if travels {
			b.Clear.Travel = min(b.Transit, l.time("clear travel", 0, b.Transit))
		}
	}
}

func (l *liner) beside(b *sim.Buffer) {
	b.Kind, b.LastIn = sim.BesideLine, l.chance("last in", 2)
	if l.chance("surplus", 3) {
		b.Surplus = l.time("surplus every", 50_000, 1*s)
	}
}

// hand makes it a hand magazine, from which what a single rejecting station took may come back.
func (l *liner) hand(b *sim.Buffer, gives int64) {
	places := b.Holds
	if places == sim.Unlimited {
		places = 20
	}
	if places < gives {
		return
	}
	b.Kind, b.Surplus = sim.HandMagazine, 0
	b.Hand = sim.Hand{PerPiece: l.time("a piece by hand", 50_000, 400_000), Load: l.pieces("load", gives, places), Crew: l.work()}
	var behind *sim.Station
	for i := range l.line.Stations {
		st := &l.line.Stations[i]
		if st.From == b.Name || slices.ContainsFunc(st.Also, func(in sim.Input) bool { return in.From == b.Name }) {
			if behind = st; st.Gives != 1 || st.Coupled != "" {
				return
			}
		}
	}
	if behind != nil {
		behind.RejectShare = max(behind.RejectShare, 0.3)
		b.Returns = sim.Returns{Share: rapid.SampledFrom([]float64{0.3, 1}).Draw(l.t, "returned"), Inspection: l.law("inspection", 50_000, 2*s), Crew: l.work()}
	}
}

func (l *liner) keeps(b *sim.Buffer, takes, slack int64) {
	most := slack
	if b.Kind != sim.InLine && b.Holds > 0 {
		most = b.Holds - 1
	}
	if b.StopUpstream > 0 {
		most = min(most, b.StopUpstream-takes)
	}
	if b.Restart.On {
		most = min(most, b.Restart.Level-takes+1)
	}
	if b.Full.On {
		most = min(most, clearAt(b)-takes)
	}
	if !b.Stands && most > 0 && l.chance("keeps", 3) {
		b.Keeps = l.pieces("kept", 1, most)
	}
}

// allowFor takes levels away that what earlier belts keep would never let the line reach.
func (l *liner) allowFor(b *sim.Buffer) {
	for i := range l.line.Buffers {
		if before := &l.line.Buffers[i]; slices.Contains(b.From, before.Name) && before.Keeps > 0 {
			b.Restart = sim.Level{}
		}
	}
}

func clearAt(b *sim.Buffer) int64 {
	if b.Clear.On {
		return b.Clear.At
	}
	return b.Full.At
}

// whatRan counts which rules did something, so that the properties are not held by lines without any.
func whatRan(ran map[string]int, line sim.Line, rec *sim.Record) {
	note := func(word string, did bool) {
		if did {
			ran[word]++
		}
	}
	for i := range line.Buffers {
		b, r := &line.Buffers[i], &rec.Buffers[i]
		note("stands", b.Stands && r.Out > 0)
		note("sensor stops", r.SensorStops > 0)
		note("in at most", b.In > 0 && r.In > 0)
		note("out at most", b.Out > 0 && r.Out > 0)
		note("keeps", b.Keeps > 0 && r.Out > 0)
		note("given back", r.GivenBack > 0)
		note("by hand", r.ByHand > 0)
		note("returned", r.Returned > 0)
		note("surplus", b.Surplus > 0 && r.GivenBack > 0)
		note("ran dry", r.RanDry > 0)
		note("store stops", len(r.Stops) > 0 && r.Stops[0].Count > 0)
	}
}

func TestRandomStoresConserve(t *testing.T) {
	onLines(t, randomStores, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		conserves(t, line, m, o)
	})
}

// conserves runs a line that no rule may lock, with the laws that hold of every run.
func conserves(t rapid.TB, line sim.Line, m *sim.Model, o sim.Options) sim.Record {
	var trace sim.Trace
	o.Trace, o.Classes = &trace, true
	rec := m.NewEngine().Run(o)
	for _, fault := range faults(line, m, o, &rec, &trace) {
		t.Error(fault)
	}
	for _, fault := range idleness(line, m, &trace) {
		t.Error(fault)
	}
	if rec.End == sim.Deadlock {
		t.Errorf("deadlock of %q since %d", rec.Locked, rec.EndedAt)
	}
	return rec
}

// Every rule does something in lines of fixed seeds, so that the laws are not held by lines without it, by no chance.
func TestEveryRuleOfAStoreRan(t *testing.T) {
	type run struct {
		line sim.Line
		o    sim.Options
	}
	lines := rapid.Custom(func(t *rapid.T) run {
		line := randomStores(t, fineGrid)
		return run{line, randomOptions(t, fineGrid)}
	})
	ran := map[string]int{}
	for seed := range 600 {
		r := lines.Example(seed)
		rec := conserves(t, r.line, compile(t, r.line), r.o)
		whatRan(ran, r.line, &rec)
	}
	t.Log(ran)
	for _, word := range []string{"stands", "sensor stops", "in at most", "out at most", "keeps", "given back", "by hand", "returned", "surplus", "ran dry", "store stops"} {
		if ran[word] == 0 {
			t.Errorf("%s: nowhere", word)
		}
	}
}

func TestRandomStoresInAnotherOrder(t *testing.T) {
	onLines(t, randomStores, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		rec := m.NewEngine().Run(o)
		other := shuffled(t, line)
		m2, err := sim.Compile(other)
		if err != nil {
			t.Fatalf("in another order the line is refused: %v", err)
		}
		rec2 := m2.NewEngine().Run(o)
		for _, d := range byName(figures(m, line, &rec), figures(m2, other, &rec2)) {
			t.Error(d)
		}
		if rec.End != rec2.End || !slices.Equal(rec.Locked, rec2.Locked) {
			t.Errorf("ended with %v %q and with %v %q", rec.End, rec.Locked, rec2.End, rec2.Locked)
		}
	})
}

// A record is a function of the model and the options, and a warm-up only cuts.
func TestRandomStoresSameRecord(t *testing.T) {
	onLines(t, randomStores, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		fresh := m.NewEngine().Run(o)
		e := m.NewEngine()
		other := o
		other.Seed, other.WarmUp = o.Seed+1, 0
		e.Run(other)
		if d := cmp.Diff(fresh, e.Run(o)); d != "" {
			t.Errorf("an engine used before: %s", d)
		}
		var cut, whole sim.Trace
		o.Trace = &cut
		e.Run(o)
		o.Trace, o.WarmUp, o.Measure = &whole, 0, o.WarmUp+o.Measure
		e.Run(o)
		if d := cmp.Diff(timeline(line, m, &whole), timeline(line, m, &cut)); d != "" {
			t.Error(d)
		}
	})
}
