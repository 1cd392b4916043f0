package report

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// calendar is the working time: shifts, and what else there is of a week.
func (l *inputList) calendar(c *scenario.Calendar) {
	if c == nil {
		return
	}
	l.of = say("input.calendar", nil)
	for i := range c.Shifts {
		shift := &c.Shifts[i]
		l.named(say("input.shift", facts{"Name": shift.Name}), "shift", facts{
			"When": shift.When(), "Scheduled": roundLength(shift.Scheduled), "Net": roundLength(shift.Net),
		})
	}
	l.add("week", facts{"Scheduled": roundLength(c.Week), "Net": roundLength(c.NetWeek), "Year": roundLength(c.Year)})
	if c.Relief > 0 {
		l.add("breaks", facts{"N": c.Relief})
	}
}

// orders are the batches, in their order.
func (l *inputList) orders(o *scenario.Orders, line *sim.Line, unit string) {
	if o == nil {
		return
	}
	l.of = say("input.orders", nil)
	for i := range o.Batches {
		batch, order := &o.Batches[i], &line.Orders.List[i]
		amount, kind := order.Batch, o.Unit
		if batch.Good > 0 {
			amount, kind = batch.Good, say("input.order.good", facts{"Unit": unit})
		}
		l.named(batch.Name, "order", facts{
			"N": whole(float64(amount)), "Unit": kind, "Due": batch.DueAt, "Before": batch.Changeover, "Lasts": setUpWords(order.Before),
		})
	}
	if o.WithoutEnd {
		l.add("again", nil)
	}
}

// setUpWords are length and people of a changeover; empty where it takes no time.
func setUpWords(s sim.SetUp) string {
	if s.Lasts.Mean() == 0 {
		return ""
	}
	words := timeWords(s.Lasts)
	if crew := crewWords(s.Crew); crew != "" {
		words += ", " + crew
	}
	return words
}

// presence is where people are, and how they come to the work.
func (l *inputList) presence(c *sim.Crew, calendar *scenario.Calendar) {
	for i, n := range c.ByShift {
		name := whole(float64(i + 1))
		if calendar != nil && i < len(calendar.Shifts) {
			name = calendar.Shifts[i].Name
		}
		l.named(say("input.on.shift", facts{"Shift": name}), "on.shift", facts{"N": n})
	}
	switch {
	case c.Relief:
		l.add("relief", facts{"N": c.InBreaks})
	case c.InBreaks > 0:
		l.add("in.breaks", facts{"N": c.InBreaks})
	}
	if c.Walk.Mean() > 0 {
		l.add("walk", facts{"Law": timeWords(c.Walk)})
	}
	if c.Response.Mean() > 0 {
		l.add("response", facts{"Law": timeWords(c.Response)})
	}
	if len(c.CanAlso) > 0 {
		l.add("can.also", facts{"Crews": listed(c.CanAlso)})
	}
}

// atOrderEnd is what a station does with orders.
func (l *inputList) atOrderEnd(line *sim.Station) {
	if line.BatchPerCycle > 0 && line.BatchPerCycle != line.Takes {
		l.add("batch.per.cycle", facts{"N": whole(float64(line.BatchPerCycle))})
	}
	if line.LastPart == sim.PartClosed {
		l.add("last.part", nil)
	}
}
