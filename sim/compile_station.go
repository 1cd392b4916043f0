package sim

import (
	"cmp"
	"math"
	"slices"

	"tuckline/sim/internal/plan"
)

// stations fills in what is inside each station.
func (c *compiler) stations() {
	for i := range c.plan.Stations {
		st := &c.plan.Stations[i]
		s := &c.line.Stations[st.Declared]
		st.In, st.Supply = plan.None, -1
		if in, has := c.from[s.Name]; has {
			st.In = in
		} else if s.Supply > 0 {
			st.Supply = s.Supply
		}
		st.Takes, st.Gives = s.Takes, s.Gives
		st.BlocksBefore, st.RejectShare = s.BlocksBefore, s.RejectShare
		st.Group = plan.None
		st.Pace = pace(s)
		st.AfterStop, st.AfterStandstill = scraps(s.AfterStop), scraps(s.AfterStandstill)
		st.Stops = c.stops(s)
		st.Stocks = c.stocks(s)
	}
}

func pace(s *Station) plan.Pace {
	p := plan.Pace{Law: s.Cycle, Every: s.Group.Every, Adds: s.Group.Adds, Ramp: s.Ramp}
	set := max(1, Micros(math.Round(s.Cycle.Mean())))
	if s.Cycle.IsFixed() {
		p.Fixed = set
	}
	p.RampAfter = set
	for _, step := range s.Steps {
		p.Steps = append(p.Steps, plan.Step{From: step.From, BackAt: step.BackAt, Cycle: step.Cycle})
	}
	return p
}

func scraps(rules []ScrapRule) []plan.Scrap {
	var out []plan.Scrap
	for _, r := range rules {
		out = append(out, plan.Scrap{LongerThan: r.LongerThan, Cycles: r.Cycles})
	}
	return out
}

// sortedStops are the indices of the stops of a station in the order of names, in
// which stops that are due together strike.
func sortedStops(s *Station) []int {
	return sortedBy(len(s.Stops), func(i int) string { return s.Stops[i].Name })
}

// sortedStocks are the indices of the materials that can run out, in the order of names.
func sortedStocks(s *Station) []int {
	all := sortedBy(len(s.Materials), func(i int) string { return s.Materials[i].Name })
	return slices.DeleteFunc(all, func(i int) bool { return s.Materials[i].FilledInTime })
}

func sortedBy(n int, name func(int) string) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	slices.SortFunc(all, func(a, b int) int { return cmp.Compare(name(a), name(b)) })
	return all
}

func (c *compiler) stops(s *Station) []plan.Stop {
	var out []plan.Stop
	for _, i := range sortedStops(s) {
		stop := &s.Stops[i]
		p := plan.Stop{Name: stop.Name, Every: stop.Every, Class: uint8(stop.Class), Work: c.work(stop.Lasts, stop.Crew)}
		switch stop.Clock {
		case CycleClock:
			p.Every = p.Every.Scale(plan.Cycle)
		case PieceClock:
			p.Every = p.Every.Scale(plan.Cycle / float64(s.Gives))
		case RunningClock:
			p.Clock = plan.RunningClock
		case CalendarClock:
			p.Clock = plan.CalendarClock
		}
		if stop.RateFactor > 0 {
			p.Every = p.Every.Scale(1 / stop.RateFactor)
		}
		out = append(out, p)
	}
	return out
}

func (c *compiler) stocks(s *Station) []plan.Stock {
	var out []plan.Stock
	for _, i := range sortedStocks(s) {
		m := &s.Materials[i]
		out = append(out, plan.Stock{
			Name: m.Name, Full: m.Amount, PerCycle: m.PerCycle, Refill: m.Refill,
			Work: c.work(m.Lasts, m.Crew), PartUsed: m.PartUsed,
		})
	}
	return out
}

func (c *compiler) work(lasts Law, w Work) plan.Work {
	p := plan.Work{Lasts: lasts, Crew: plan.None, People: max(1, w.People), Priority: w.Priority}
	if p.Priority == 0 {
		p.Priority = usualPriority
	}
	if w.Crew != "" {
		p.Crew = slices.IndexFunc(c.line.Crews, func(crew Crew) bool { return crew.Name == w.Crew })
	}
	return p
}

// groups joins stations that stop together, directly or through a third.
func (c *compiler) groups() {
	root := map[string]string{}
	var find func(string) string
	find = func(name string) string {
		if up, has := root[name]; has && up != name {
			return find(up)
		}
		return name
	}
	for i := range c.line.Stations {
		if s := &c.line.Stations[i]; s.StopsWith != "" {
			root[find(s.Name)] = find(s.StopsWith)
		}
	}
	members := map[string][]int{}
	for i := range c.plan.Stations {
		name := find(c.plan.Stations[i].Name)
		members[name] = append(members[name], i)
	}
	for i := range c.plan.Stations {
		st := &c.plan.Stations[i]
		name := find(st.Name)
		if len(members[name]) < 2 || st.Group != plan.None {
			continue
		}
		for _, j := range members[name] {
			c.plan.Stations[j].Group = len(c.plan.Groups)
		}
		c.plan.Groups = append(c.plan.Groups, plan.Group{Members: members[name]})
	}
}

func (c *compiler) crews() {
	for _, crew := range c.line.Crews {
		c.plan.Crews = append(c.plan.Crews, plan.Crew{
			Name: crew.Name, People: crew.People, Share: crew.ElsewhereShare, Spell: crew.ElsewhereSpell,
		})
	}
}
