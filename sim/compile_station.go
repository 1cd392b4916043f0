package sim

import (
	"cmp"
	"math"
	"slices"

	"tuckline/sim/internal/plan"
)

// stations fills in what is inside each unit.
func (c *compiler) stations() {
	for i := range c.plan.Stations {
		st := &c.plan.Stations[i]
		unit := c.nodes[st.Name]
		u := &c.units[unit]
		st.Supply = -1
		if u.Supply > 0 {
			st.Supply = u.Supply
		}
		for j, link := range c.from[unit] {
			takes := u.Takes
			if j > 0 {
				takes = u.Also[j-1].Takes
			}
			st.Ins = append(st.Ins, plan.In{Link: link, Takes: takes})
		}
		st.Takes, st.Gives = u.Takes, u.Gives
		st.BlocksBefore, st.Loads = u.BlocksBefore, u.LoadsWhileStopped
		if u.EmptyPockets.On {
			st.EmptyPockets = u.EmptyPockets.Most
		}
		st.Group, st.StartLink = plan.None, plan.None
		st.Streams = streamsOf(&u.Station)
		st.Pace = pace(&u.Station)
		st.AfterStop, st.AfterStandstill = scraps(u.AfterStop), scraps(u.AfterStandstill)
		for m, declared := range u.members {
			c.member(st, m, declared)
			c.checks(st, m, declared)
		}
		c.causes(st, u)
	}
}

// streamsOf is the name by which the streams of a station are found.
func streamsOf(s *Station) string { return cmp.Or(s.RandomAs, s.Name) }

// member adds a station as written to its unit.
func (c *compiler) member(st *plan.Station, m, declared int) {
	s := &c.line.Stations[declared]
	st.Members = append(st.Members, plan.Member{Name: s.Name, Declared: declared, Takes: s.Takes, Gives: s.Gives})
	if s.rejects() {
		st.Rejects = append(st.Rejects, reject(s, m))
		st.LosesPacks = st.LosesPacks || s.LostPerStop > 0
	}
}

// causes adds the stops of all members, then their stocks, each by the name of the
// member and then by its own: the order in which they strike if they are due together.
func (c *compiler) causes(st *plan.Station, u *unit) {
	members := slices.Clone(u.members)
	slices.SortFunc(members, func(a, b int) int {
		return cmp.Compare(c.line.Stations[a].Name, c.line.Stations[b].Name)
	})
	var stocks []plan.Cause
	for _, declared := range members {
		s := &c.line.Stations[declared]
		first := len(st.Stops)
		signals(st, s, declared, first, len(st.Stocks))
		stops := c.stops(s)
		for i, stop := range stops {
			for r := range stop.Renews {
				stop.Renews[r] += first
			}
			st.Stops = append(st.Stops, stop)
			st.Causes = append(st.Causes, plan.Cause{Declared: declared, Index: i, Rank: c.rank(s.Name)})
		}
		for i, stock := range c.stocks(declared) {
			st.Stocks = append(st.Stocks, stock)
			stocks = append(stocks, plan.Cause{Declared: declared, Index: len(stops) + i, Rank: c.rank(s.Name)})
		}
	}
	oneHeatUp(st.Stops)
	st.Causes = append(st.Causes, stocks...)
}

// rank is the place of a name among those of all stations and buffers, bytewise.
func (c *compiler) rank(name string) int {
	rank := 0
	for i := range c.line.Stations {
		if c.line.Stations[i].Name < name {
			rank++
		}
	}
	for i := range c.line.Buffers {
		if c.line.Buffers[i].Name < name {
			rank++
		}
	}
	return rank
}

func pace(s *Station) plan.Pace {
	p := plan.Pace{Law: s.Cycle, Every: s.Group.Every, Adds: s.Group.Adds, Ramp: s.Ramp, Heat: s.HeatRecovery}
	set := max(1, Micros(math.Round(s.Cycle.Mean())))
	if s.Cycle.IsFixed() {
		p.Fixed = set
	}
	p.RampAfter = set
	for _, step := range s.Steps {
		p.Steps = append(p.Steps, plan.Step{From: step.From, BackAt: step.BackAt, Cycle: step.Cycle, Delay: step.Delay})
	}
	return p
}

func scraps(rules []ScrapRule) []plan.Scrap {
	var out []plan.Scrap
	for _, r := range rules {
		out = append(out, plan.Scrap(r))
	}
	return out
}

// sortedStocks are the indices of the materials, in the order of names.
func sortedStocks(s *Station) []int {
	return sortedBy(len(s.Materials), func(i int) string { return s.Materials[i].Name })
}

func sortedBy(n int, name func(int) string) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	slices.SortFunc(all, func(a, b int) int { return cmp.Compare(name(a), name(b)) })
	return all
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
