package sim_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

func onOrders(t *testing.T, property func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options)) {
	t.Helper()
	onLines(t, randomOrders, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		o.Measure *= 10 // for some orders
		property(t, line, m, o)
	})
}

func TestRandomOrdersConserve(t *testing.T) {
	seen := map[string]int{}
	onOrders(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		var trace sim.Trace
		o.Trace, o.Classes = &trace, true
		if rapid.Bool().Draw(t, "from the beginning") {
			o.WarmUp = 0
		}
		rec := m.NewEngine().Run(o)
		for _, fault := range faults(line, m, o, &rec, &trace) {
			t.Error(fault)
		}
		if rec.End != sim.HorizonReached {
			t.Errorf("ended with %v of %q at %d", rec.End, rec.Locked, rec.EndedAt)
		}
		h := &holder{line: line, m: m, o: o, rec: &rec, trace: &trace}
		h.orders()
		for _, fault := range h.found {
			t.Error(fault)
		}
		note := func(what string, n int64) { seen[what] += int(min(n, 1)) }
		for i := range rec.Stations {
			r := &rec.Stations[i]
			note("closed", r.PartCycles)
			note("part rejected", r.PartRejected)
			note("changeover", int64(r.States[sim.Changeover]))
		}
		for i := range rec.Buffers {
			note("taken out", rec.Buffers[i].Cleared)
		}
		for i := range rec.Orders {
			o := &rec.Orders[i]
			note("further orders", int64(i))
			note("again", int64(o.Round))
			if o.Finished != never && line.Orders.List[o.Order].Good > 0 {
				note("good reached", 1)
			}
		}
	})
	for _, what := range []string{"closed", "part rejected", "changeover", "taken out", "further orders", "again", "good reached"} {
		if seen[what] < 3 {
			t.Errorf("%s: only %d times", what, seen[what])
		}
	}
	t.Log(seen)
}

// Orders are finished sooner or later, whatever stops, rejects and scraps there are; nothing is left in the line then.
func TestRandomOrdersAreFinished(t *testing.T) {
	onOrders(t, func(t *rapid.T, line sim.Line, _ *sim.Model, o sim.Options) {
		line.Orders.Again = false
		m, err := sim.Compile(line)
		if err != nil {
			t.Fatal(err)
		}
		o.UntilOrders = true
		var rec sim.Record
		for _, look := range []sim.Options{{Measure: 30 * s}, {WarmUp: 30 * s, Measure: 30 * s}, {WarmUp: 10 * sim.Minute, Measure: 10 * sim.Minute}} {
			o.WarmUp, o.Measure = look.WarmUp, look.Measure
			rec = m.NewEngine().Run(o)
			if rec.End == sim.OrdersFinished {
				break
			}
			if o.WarmUp > 0 && (!isStuck(line, m, &rec) || alwaysBusy(&rec)) {
				t.Skip("it takes longer: a station gives nothing but rejects, or works seldom")
			}
		}
		if rec.End != sim.OrdersFinished {
			t.Fatalf("nothing moves any more, but the orders are not finished: %v since %d of %q %+v", rec.End, rec.EndedAt, rec.Locked, rec.Orders)
		}
		if o.WarmUp > 0 { // what is looked at below is the whole run, whichever look has seen its end
			o.WarmUp, o.Measure = 0, o.WarmUp+o.Measure
			rec = m.NewEngine().Run(o)
		}
		for _, fault := range faults(line, m, o, &rec, nil) {
			t.Error(fault)
		}
		if slices.ContainsFunc(line.Orders.List, func(o sim.Order) bool { return o.Good > 0 }) {
			return // the count is reached before the line is empty
		}
		for i := range rec.Buffers {
			if level := rec.Buffers[i].Level[1]; level != 0 {
				t.Errorf("%d pieces are left in %s", level, m.Places()[i].Name)
			}
		}
		for i := range rec.Stations {
			if r := &rec.Stations[i]; r.InputInside[1]+r.OutputInside[1] != 0 {
				t.Errorf("%d and %d pieces are left in %s", r.InputInside[1], r.OutputInside[1], line.Stations[i].Name)
			}
		}
	})
}

// alwaysBusy says that a crew has not a moment to spare: stops that go first keep it from all else.
func alwaysBusy(rec *sim.Record) bool {
	return slices.ContainsFunc(rec.Crews, func(c sim.CrewRecord) bool { return c.Present > 0 && c.Busy >= c.Present })
}

// The record depends on the model and the options only, and not on the order of declaration.
func TestRandomOrdersSameRecord(t *testing.T) {
	onOrders(t, func(t *rapid.T, line sim.Line, m *sim.Model, o sim.Options) {
		e := m.NewEngine()
		fresh := e.Run(o)
		other := o
		other.Seed, other.Attribute, other.AgesAt, other.Trace = o.Seed+1, true, []int{0}, &sim.Trace{}
		e.Run(other)
		if d := cmp.Diff(fresh, e.Run(o)); d != "" {
			t.Errorf("an engine used before: %s", d)
		}
		attributed := o
		attributed.Attribute, attributed.AgesAt = true, []int{0}
		rec := e.Run(attributed)
		if d := cmp.Diff(figures(m, line, &fresh), figures(m, line, &rec)); d != "" {
			t.Errorf("with causes and ages: %s", d)
		}
		again := shuffled(t, line)
		m2, err := sim.Compile(again)
		if err != nil {
			t.Fatalf("in another order the line is refused: %v", err)
		}
		rec2 := m2.NewEngine().Run(o)
		for _, d := range byName(figures(m, line, &fresh), figures(m2, again, &rec2)) {
			t.Error(d)
		}
		for i := range fresh.Orders {
			fresh.Orders[i].Line, rec2.Orders[i].Line = 0, 0
		}
		if d := cmp.Diff(fresh.Orders, rec2.Orders); d != "" {
			t.Errorf("orders in another order of declaration: %s", d)
		}
	})
}

// isStuck says that nobody has worked in a window, although nothing kept him and all input had been let in.
func isStuck(line sim.Line, m *sim.Model, rec *sim.Record) bool {
	// Working times may be shorter than what has to be done in them, and stops so frequent that nobody carries.
	if len(line.Calendar.Spans) > 0 || slices.ContainsFunc(line.Buffers, func(b sim.Buffer) bool { return b.Kind == sim.HandMagazine }) {
		return false
	}
	for i, p := range m.Places() {
		if creeps(line, p.Name, &rec.Buffers[i], rec.Window) {
			return false
		}
	}
	for i := range rec.Stations {
		states := &rec.Stations[i].States
		if states[sim.Running] > 0 || states[sim.Down]+states[sim.Waiting] > rec.Window/2 {
			return false
		}
	}
	for _, r := range rec.Orders {
		if line.Orders.List[r.Order].Batch-r.Input > 10 { // not in its run-out
			return false
		}
	}
	return true
}

// creeps says that stops have let a belt move for less than its transit: what is on it may not have come to its end.
func creeps(line sim.Line, belt string, r *sim.BufferRecord, moved sim.Micros) bool {
	for i := range r.Stops {
		moved -= r.Stops[i].Waiting + r.Stops[i].Down
	}
	return slices.ContainsFunc(line.Buffers, func(b sim.Buffer) bool { return b.Name == belt && moved < b.Transit })
}
