package sim

import (
	"math"

	"tuckline/sim/internal/plan"
)

// The names under which the work at a hand magazine asks for its crew.
const (
	CarryName   = "carry"
	ReturnsName = "returns"
)

// hand adds the tasks of a hand magazine: carrying, and the inspection of what comes back.
func (c *compiler) hand(s *plan.Store, link int, b *Buffer) {
	s.Load, s.PerPiece = b.Hand.Load, b.Hand.PerPiece
	task := plan.Task{Station: plan.None, Link: link, Rank: c.rank(b.Name), Streams: b.Name}
	task.Kind, task.Name = plan.CarryTask, CarryName
	task.Work = c.work(Fixed(float64(b.Hand.Load)*float64(b.Hand.PerPiece)), b.Hand.Crew)
	s.Hand = c.addTask(task)
	if !(b.Returns.Share > 0) {
		return
	}
	task.Kind, task.Name, task.Purpose = plan.ReturnTask, ReturnsName, "inspection"
	task.Work = c.work(b.Returns.Inspection, b.Returns.Crew)
	s.Returns = plan.Returns{Share: b.Returns.Share, Task: c.addTask(task), Stations: c.exits(link), Streams: b.Name}
}

// checkHand refuses a hand magazine that nobody can work.
func (c *compiler) checkHand(b *Buffer) {
	hand, returns := b.Hand != (Hand{}), b.Returns.Share != 0
	if b.Kind != HandMagazine {
		if hand {
			c.fault(b.Name+".hand rate", "nobody carries the pieces of this kind of store; write kind: hand magazine, or leave it out")
		}
		if returns {
			c.fault(b.Name+".returns", "pieces come back to a hand magazine only; write kind: hand magazine, or leave it out")
		}
		return
	}
	if b.Hand.PerPiece < 1 {
		c.fault(b.Name+".hand rate", "it says nowhere how fast pieces are carried, such as hand rate: 90/min")
	}
	if b.Hand.Load < 1 || b.Holds >= 0 && b.Hand.Load > b.Holds {
		c.fault(b.Name+".load", "%d at a time; a load is at least 1 and fits into the %d places", b.Hand.Load, b.Holds)
	}
	if b.In != 0 || b.Out != 0 || b.Surplus != 0 {
		c.fault(b.Name+".kind", "how fast pieces go into a hand magazine and out of it is said by its hand rate; leave in at most, out at most and surplus out")
	}
	if len(b.Stops) > 0 {
		c.fault(b.Name+".stops", "nothing of a hand magazine can jam; leave them out")
	}
	c.checkWork(b.Name, b.Hand.Crew)
	if !(b.Returns.Share >= 0 && b.Returns.Share <= 1) {
		c.fault(b.Name+".returns.share", "a share lies between 0 and 100 %%")
	}
	if returns {
		if b.Returns.Inspection.IsZero() || !(b.Returns.Inspection.Mean() > 0) || math.IsInf(b.Returns.Inspection.Mean(), 1) {
			c.fault(b.Name+".returns.inspection", "it says nowhere how long the inspection of one return takes, such as inspection: 0.2 min")
		}
		c.checkWork(b.Name+".returns", b.Returns.Crew)
	}
}

// checkCarried refuses a load that is smaller than what comes at once, and returns from stations that do not reject whole
// cycles.
func (c *compiler) checkCarried(link int, b *Buffer) {
	if gives, _ := c.most(link); b.Kind == HandMagazine && b.Hand.Load < gives {
		c.fault(b.Name+".load", "the feeder puts %d at once, which no load of %d takes away; it is at least %d", gives, b.Hand.Load, gives)
	}
	if b.Kind != HandMagazine || b.Returns.Share == 0 {
		return
	}
	for _, name := range c.takers[link] {
		i, isStation := c.nodes[name]
		switch {
		case !isStation:
			c.fault(b.Name+".returns", "%q is no station: nothing is rejected there that could come back; put the magazine right before the station", name)
		case c.units[i].Gives != 1 || len(c.units[i].members) > 1:
			c.fault(b.Name+".returns", "%q rejects a part of a cycle; what one cycle took comes back only where a station of its own drive gives 1 a cycle", name)
		}
	}
}
