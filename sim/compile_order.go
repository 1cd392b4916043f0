package sim

import (
	"cmp"
	"fmt"
	"math"
	"reflect"
	"slices"

	"tuckline/sim/internal/plan"
)

// SetUpName is the name under which a changeover without a name asks for its crew.
const SetUpName = "changeover"

// checkOrders refuses orders that say nothing, and stations that cannot have any.
func (c *compiler) checkOrders() {
	o := &c.line.Orders
	if len(o.List) == 0 {
		if len(o.CountedAfter) > 0 || o.Again {
			c.fault("orders", "the list is empty; write an order, or leave all of it out")
		}
		return
	}
	for i := range o.List {
		c.checkOrder(orderPath(i), &o.List[i])
	}
	if len(o.CountedAfter) == 0 {
		c.fault("orders.counted after", "it says nowhere behind which station good pieces are counted; name one in every line")
	}
	for i, name := range o.CountedAfter {
		switch _, is := c.nodes[name]; {
		case !is:
			c.fault("orders.counted after", "there is no station %q", name)
		case slices.Contains(o.CountedAfter[:i], name):
			c.fault("orders.counted after", "%q is named twice", name)
		}
	}
	for i := range c.line.Stations {
		c.checkOrdered(&c.line.Stations[i])
	}
}

func orderPath(i int) string { return fmt.Sprintf("orders.%d", i+1) }

func (c *compiler) checkOrder(path string, o *Order) {
	switch {
	case o.Batch < 0 || o.Good < 0:
		c.fault(path, "a number of units is more than nothing")
	case o.Batch == 0 && o.Good == 0:
		c.fault(path, "it has no number; give the units of the batch, or the number of good pieces")
	case o.Batch > 0 && o.Good > 0:
		c.fault(path, "it has the units of a batch and a number of good pieces; one of them says when it is over, leave the other out")
	}
	if o.Before.Lasts.IsZero() {
		if o.Before.Crew.Crew != "" {
			c.fault(path+".changeover.lasts", "somebody is asked for, but it says nowhere how long it lasts")
		}
		return
	}
	if !(o.Before.Lasts.Mean() >= 0) || math.IsInf(o.Before.Lasts.Mean(), 1) {
		c.fault(path+".changeover.lasts", "its mean has no limit; a law with a mean is needed")
	}
	c.checkWork(path+".changeover", o.Before.Crew)
}

// checkOrdered refuses what a station cannot have where there are orders.
func (c *compiler) checkOrdered(s *Station) {
	if s.Supply > 0 {
		c.fault(s.Name+".from.supply", "it gets what the orders give; leave the supply or the orders out")
	}
	if s.BatchPerCycle < 0 || s.BatchPerCycle > 0 && s.From != "" {
		c.fault(s.Name+".batch per cycle", "only a station at the beginning uses units of a batch, 1 or more in a cycle")
	}
	switch {
	case s.LastPart > PartClosed:
		c.fault(s.Name+".last part", "there is no such rule; it is rejected or closed")
	case s.LastPart == PartClosed && s.Gives > 1:
		c.fault(s.Name+".last part", "it gives %d a cycle, so that it is not known how many a part of its input makes; only what makes one piece can be closed, such as a bundle or a case", s.Gives)
	}
}

// orders puts the orders into the plan, with the lines that make them.
func (c *compiler) orders() {
	list := c.line.Orders.List
	if len(list) == 0 {
		return
	}
	p := &plan.Orders{Again: c.line.Orders.Again}
	var setUps []SetUp
	for i := range list {
		o := &list[i]
		one := plan.Order{Batch: o.Batch, Good: o.Good, SetUp: plan.None}
		if !o.Before.Lasts.IsZero() {
			one.SetUp = slices.IndexFunc(setUps, func(s SetUp) bool { return reflect.DeepEqual(s, o.Before) })
			if one.SetUp < 0 {
				one.SetUp = len(setUps)
				setUps = append(setUps, o.Before)
			}
		}
		p.List = append(p.List, one)
	}
	p.Lines = c.orderLines()
	if len(c.problems) > 0 {
		return
	}
	for i := range p.Lines {
		c.setUps(&p.Lines[i], i, setUps)
		c.checkAmounts(&p.Lines[i])
	}
	c.plan.Orders = p
}

// setUps adds the changeovers of a line: each is a task of its first station. Of several with one name each has its own
// random numbers.
func (c *compiler) setUps(l *plan.OrderLine, line int, setUps []SetUp) {
	first := &c.line.Stations[l.First]
	station := slices.IndexFunc(c.plan.Stations, func(s plan.Station) bool { return s.Members[0].Declared == l.First })
	same := map[string]int{}
	for i := range setUps {
		name := cmp.Or(setUps[i].Name, SetUpName)
		purpose := "changeover"
		if same[name]++; same[name] > 1 {
			purpose = fmt.Sprint(purpose, " ", same[name])
		}
		l.SetUps = append(l.SetUps, c.addTask(plan.Task{
			Kind: plan.SetUpTask, Station: station, Item: line, Link: plan.None, Name: name, Rank: c.rank(first.Name),
			Work: c.work(setUps[i].Lasts, setUps[i].Crew), Streams: streamsOf(first), Purpose: purpose,
			Cause: plan.Cause{Declared: l.First},
		}))
	}
}

// checkAmounts refuses orders for which a line would not run one cycle, or that are too large to be counted.
func (c *compiler) checkAmounts(l *plan.OrderLine) {
	least := l.Heads[0].Uses
	for _, h := range l.Heads {
		least = min(least, h.Uses)
	}
	first := c.line.Stations[l.First].Name
	for i := range c.line.Orders.List {
		o := &c.line.Orders.List[i]
		if o.Batch > 0 && o.Batch < least {
			c.fault(orderPath(i)+".batch", "a cycle of %q uses %d units, so that a batch of %d makes nothing; a batch is at least one cycle", first, least, o.Batch)
		}
		if o.Batch > plan.NoLimit || o.Good > plan.NoLimit/l.Worth {
			c.fault(orderPath(i), "the number is too large to be counted")
		}
	}
}
