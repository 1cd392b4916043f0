package sim

import (
	"math"

	"tuckline/sim/internal/plan"
)

// checks adds the in-process tests of a member to its unit, by name.
func (c *compiler) checks(st *plan.Station, member, declared int) {
	s := &c.line.Stations[declared]
	for _, i := range sortedBy(len(s.Checks), func(i int) string { return s.Checks[i].Name }) {
		check := &s.Checks[i]
		p := plan.Check{
			Name: check.Name, Every: check.Every, Takes: check.Takes, Streams: streamsOf(s),
			Member: member, Index: i,
		}
		p.Clock, p.Every = planClock(check.Clock, check.Every, s.Gives)
		st.Checks = append(st.Checks, p)
	}
}

// planClock is the clock of the plan and the law in its unit.
func planClock(clock Clock, every Law, gives int64) (plan.Clock, Law) {
	switch clock {
	case CycleClock:
		return plan.CycleClock, every.Scale(plan.Cycle)
	case PieceClock:
		return plan.CycleClock, every.Scale(plan.Cycle / float64(gives))
	case RunningClock:
		return plan.RunningClock, every
	}
	return plan.CalendarClock, every
}

func (c *compiler) checkTask(st *plan.Station, i, j int) {
	check := &st.Checks[j]
	declared := st.Members[check.Member].Declared
	s := &c.line.Stations[declared]
	written := &s.Checks[check.Index]
	check.Task = c.addTask(plan.Task{
		Kind: plan.CheckTask, Station: i, Item: j, Link: plan.None, Name: check.Name, Rank: c.rank(s.Name),
		Work: c.work(written.Lasts, written.Crew), Streams: check.Streams, Purpose: "check lasts",
		Cause: plan.Cause{Declared: declared, Index: check.Index},
	})
}

func (c *compiler) checkChecks(s *Station) {
	for i := range s.Checks {
		check := &s.Checks[i]
		path := s.Name + ".checks." + check.Name
		if check.Every.IsZero() || !(check.Every.Mean() > 0) || math.IsInf(check.Every.Mean(), 1) {
			c.fault(path+".every", "it says nowhere how often it comes, such as every: 45 min running")
		}
		if check.Clock > CalendarClock {
			c.fault(path+".every", "there is no such clock")
		}
		if check.Takes < 1 {
			c.fault(path+".takes", "a test takes at least 1 piece")
		}
		if check.Lasts.IsZero() {
			c.fault(path+".lasts", "it says nowhere how long a test lasts")
		}
		c.checkWork(path, check.Crew)
	}
}
