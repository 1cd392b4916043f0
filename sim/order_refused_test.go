package sim_test

import (
	"math"
	"slices"
	"testing"

	"tuckline/sim"
)

// Orders that no line can make are refused, with what would be right.
func TestOrdersRefused(t *testing.T) {
	two := func(change func(*sim.Line)) sim.Line {
		line := sim.Line{
			Stations: []sim.Station{one("A", "", 1), one("B", "A", 1)}, Crews: []sim.Crew{{Name: "fitters", People: 1}},
			Orders: batches("B", 4, "fitters", 3, 2),
		}
		change(&line)
		return line
	}
	for name, c := range map[string]struct {
		change func(*sim.Line)
		want   sim.Problem
	}{
		"both": {func(l *sim.Line) { l.Orders.List[1].Good = 5 }, sim.Problem{
			Path: "orders.2", Text: "it has the units of a batch and a number of good pieces; one of them says when it is over, leave the other out",
		}},
		"neither": {func(l *sim.Line) { l.Orders.List[0].Batch = 0 }, sim.Problem{
			Path: "orders.1", Text: "it has no number; give the units of the batch, or the number of good pieces",
		}},
		"negative": {func(l *sim.Line) { l.Orders.List[0].Batch = -1 }, sim.Problem{Path: "orders.1", Text: "a number of units is more than nothing"}},
		"unknown": {func(l *sim.Line) { l.Orders.CountedAfter = []string{"C"} }, sim.Problem{
			Path: "orders.counted after", Text: `there is no station "C"`,
		}},
		"nowhere": {func(l *sim.Line) { l.Orders.CountedAfter = nil }, sim.Problem{
			Path: "orders.counted after", Text: "it says nowhere behind which station good pieces are counted; name one in every line",
		}},
		"another line": {func(l *sim.Line) { l.Stations = append(l.Stations, one("P", "", 1)) }, sim.Problem{
			Path: "orders.counted after",
			Text: `nothing is counted in the line that begins with "P"; name the station behind which its good pieces are counted`,
		}},
		"twice": {func(l *sim.Line) { l.Orders.CountedAfter = []string{"A", "B"} }, sim.Problem{
			Path: "orders.counted after", Text: `pieces that are counted behind "A" would be counted behind "B" again; name one of them`,
		}},
		"no crew": {func(l *sim.Line) { l.Orders.List[1].Before.Crew.Crew = "painters" }, sim.Problem{
			Path: "orders.2.changeover.crew", Text: `there is no crew "painters"`,
		}},
		"too few people": {func(l *sim.Line) { l.Orders.List[1].Before.Crew.People = 2 }, sim.Problem{
			Path: "orders.2.changeover.crew", Text: "it asks for 2 of 1 fitters and would wait for ever",
		}},
		"supply": {func(l *sim.Line) { l.Stations[0].Supply = 7 }, sim.Problem{
			Path: "A.from.supply", Text: "it gets what the orders give; leave the supply or the orders out",
		}},
		"less than a cycle": {func(l *sim.Line) { l.Stations[0].BatchPerCycle = 3 }, sim.Problem{
			Path: "orders.2.batch", Text: `a cycle of "A" uses 3 units, so that a batch of 2 makes nothing; a batch is at least one cycle`,
		}},
		"units amid the line": {func(l *sim.Line) { l.Stations[1].BatchPerCycle = 3 }, sim.Problem{
			Path: "B.batch per cycle", Text: "only a station at the beginning uses units of a batch, 1 or more in a cycle",
		}},
		"several closed": {func(l *sim.Line) { l.Stations[1].Gives, l.Stations[1].LastPart = 2, sim.PartClosed }, sim.Problem{
			Path: "B.last part", Text: "it gives 2 a cycle, so that it is not known how many a part of its input makes; only what makes one piece can be closed, such as a bundle or a case",
		}},
		"too large": {func(l *sim.Line) { l.Orders.List[1] = sim.Order{Good: math.MaxInt64} }, sim.Problem{
			Path: "orders.2", Text: "the number is too large to be counted",
		}},
		"nothing to make": {func(l *sim.Line) { l.Orders.List = nil }, sim.Problem{
			Path: "orders", Text: "the list is empty; write an order, or leave all of it out",
		}},
	} {
		_, err := sim.Compile(two(c.change))
		problems, _ := err.(sim.Problems)
		if !slices.Contains(problems, c.want) {
			t.Errorf("%s: refused with\n%v, not with\n%v: %v", name, err, c.want.Path, c.want.Text)
		}
	}
}
