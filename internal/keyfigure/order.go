package keyfigure

import (
	"strings"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// Order is what one batch means, or several alike that follow each other.
type Order struct {
	Product string
	// Batches is how many there are.
	Batches int
	// Makes is a batch from tablets to cases, at most; of an order of good pieces Good is not 0.
	Makes []scenario.Amount
	Good  int64
	// Due is the clock as written, of the last of them; empty without one.
	Due string
	// Times are what a batch takes on each line that can make it: one where all lines are alike.
	Times []BatchTime
}

// BatchTime is a batch on a line at the set speed of the machines that begin it, nothing lost and without stops.
type BatchTime struct {
	// Line is empty where all lines are alike, or where there is one.
	Line string
	// Machines are those whose speed counts, by their names in the line; Hours is the batch over what they use
	// together in an hour.
	Machines []string
	Hours    float64
	Reels    []Reels
}

// Reels is how many reels of a material a batch needs: cycles times what each draws, over what is usable of a reel.
type Reels struct {
	Material string
	// Machine is empty where one machine begins the line.
	Machine string
	N       float64
}

// SetUps are the changeovers of a kind in the list of orders.
type SetUps struct {
	Name    string
	N       int
	Minutes float64
	Crew    sim.Work
}

// addOrders derives what the orders mean.
func (out *Figures) addOrders(s *scenario.Scenario) {
	if s.Orders == nil {
		return
	}
	out.WithoutEnd = s.Orders.WithoutEnd
	for i := range s.Orders.Batches {
		out.addOrder(s, i)
		out.addSetUp(s, i)
	}
}

// addOrder adds a batch to those before it if it is like them.
func (out *Figures) addOrder(s *scenario.Scenario, i int) {
	b, order := &s.Orders.Batches[i], &s.Line.Orders.List[i]
	if n := len(out.Orders); n > 0 && i > 0 {
		last, before := &out.Orders[n-1], &s.Line.Orders.List[i-1]
		if last.Product == b.Product && before.Batch == order.Batch && before.Good == order.Good && last.Due == "" {
			last.Batches++
			last.Due = b.DueAt
			return
		}
	}
	one := Order{Product: b.Product, Batches: 1, Makes: b.Makes, Good: b.Good, Due: b.DueAt}
	if order.Batch > 0 {
		one.Times = out.batchTimes(s, float64(order.Batch))
	}
	out.Orders = append(out.Orders, one)
}

func (out *Figures) addSetUp(s *scenario.Scenario, i int) {
	before := &s.Line.Orders.List[i].Before
	if before.Name == "" || before.Lasts.IsZero() {
		return
	}
	for k := range out.SetUps {
		if out.SetUps[k].Name == before.Name {
			out.SetUps[k].N++
			return
		}
	}
	out.SetUps = append(out.SetUps, SetUps{Name: before.Name, N: 1, Minutes: before.Lasts.Mean() / minute, Crew: before.Crew})
}

// batchTimes are those of all lines, or one if they are alike.
func (out *Figures) batchTimes(s *scenario.Scenario, batch float64) (all []BatchTime) {
	for i := range s.Lines {
		if one, can := out.batchTime(s, &s.Lines[i], batch); can {
			all = append(all, one)
		}
	}
	for i := range all {
		if !all[i].like(&all[0]) {
			return all
		}
	}
	if len(all) > 1 {
		all[0].Line = ""
		return all[:1]
	}
	return all
}

func (t *BatchTime) like(o *BatchTime) bool {
	if t.Hours != o.Hours || len(t.Reels) != len(o.Reels) || strings.Join(t.Machines, ",") != strings.Join(o.Machines, ",") {
		return false
	}
	for i := range t.Reels {
		if t.Reels[i] != o.Reels[i] {
			return false
		}
	}
	return true
}

// batchTime is a batch on one line. can is false where nothing on it draws from orders.
func (out *Figures) batchTime(s *scenario.Scenario, line *scenario.ProductionLine, batch float64) (t BatchTime, can bool) {
	t.Line = line.Name
	perMinute := 0.0
	var heads []int
	for _, i := range line.Stations {
		if n := s.Line.Stations[i].BatchPerCycle; n > 0 && out.Stations[i].Set.Cycles > 0 {
			heads = append(heads, i)
			perMinute += float64(n) / out.Stations[i].meanCycle(out.Stations[i].Set)
		}
	}
	for _, i := range heads {
		station, bare := &out.Stations[i], strings.TrimPrefix(out.Stations[i].Name, line.Name+".")
		t.Machines = append(t.Machines, bare)
		cycles := batch / perMinute / station.meanCycle(station.Set)
		for k := range s.Line.Stations[i].Materials {
			if s.Stations[i].Materials[k].Kind != "reel" {
				continue
			}
			m := &s.Line.Stations[i].Materials[k]
			reels := Reels{Material: m.Name, N: cycles * float64(m.PerCycle) / float64(m.Amount)}
			if len(heads) > 1 {
				reels.Machine = bare
			}
			t.Reels = append(t.Reels, reels)
		}
	}
	t.Hours = ratio(batch, 60*perMinute)
	return t, len(heads) > 0
}
