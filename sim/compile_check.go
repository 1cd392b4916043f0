package sim

import (
	"math"
	"slices"
)

// check finds faults that need no neighbours: names, ranges, references.
func (c *compiler) check() {
	if len(c.line.Stations) == 0 {
		c.fault("line", "it has no station")
	}
	for i := range c.line.Stations {
		s := &c.line.Stations[i]
		c.name(s.Name)
		c.nodes[s.Name] = i
	}
	seen := map[string]bool{}
	for i := range c.line.Buffers {
		b := &c.line.Buffers[i]
		c.name(b.Name)
		if _, isStation := c.nodes[b.Name]; isStation || seen[b.Name] {
			c.fault(b.Name, "the name is used twice")
		}
		seen[b.Name] = true
		c.checkBuffer(b)
	}
	if len(c.nodes) < len(c.line.Stations) {
		c.repeatedStations()
	}
	c.checkCalendar()
	c.checkOrders()
	for i := range c.line.Crews {
		c.checkCrew(&c.line.Crews[i])
	}
	for i := range c.line.Stations {
		c.checkStation(&c.line.Stations[i])
	}
}

func (c *compiler) name(name string) {
	if name == "" {
		c.fault("line", "every entry needs a name")
	}
}

func (c *compiler) repeatedStations() {
	seen := map[string]bool{}
	for i := range c.line.Stations {
		name := c.line.Stations[i].Name
		if seen[name] {
			c.fault(name, "the name is used twice")
		}
		seen[name] = true
	}
}

func (c *compiler) checkStation(s *Station) {
	if s.Takes < 1 {
		c.fault(s.Name+".takes", "a cycle takes at least 1 piece")
	}
	if s.Gives < 1 {
		c.fault(s.Name+".gives", "a cycle gives at least 1 piece")
	}
	if s.Cycle.IsZero() || !(s.Cycle.Mean() > 0) || math.IsInf(s.Cycle.Mean(), 1) {
		c.fault(s.Name+".cycle", "it needs a cycle time longer than nothing")
	}
	if s.Cycle.Mean() > float64(24*Hour) {
		c.fault(s.Name+".cycle", "a cycle lasts a day at most")
	}
	c.checkRejects(s)
	c.checkIdling(s)
	if s.Supply < 0 {
		c.fault(s.Name+".from.supply", "a supply is 0 or more")
	}
	for _, in := range s.Also {
		if s.From == "" || in.From == "" || in.Takes < 1 {
			c.fault(s.Name+".takes", "a station that assembles names every place that it takes from, and takes at least 1 piece of each")
		}
	}
	c.checkSends(s)
	if s.Supply > 0 && s.From != "" {
		c.fault(s.Name+".from", "it takes from %q; only a station at the beginning has a supply", s.From)
	}
	if s.Ramp < 0 {
		c.fault(s.Name+".ramp", "a ramp is 0 or more")
	}
	c.checkPace(s)
	if s.StopsWith != "" {
		if _, is := c.nodes[s.StopsWith]; !is || s.StopsWith == s.Name {
			c.fault(s.Name+".stops with", "%q is no other station of the line", s.StopsWith)
		}
	}
	for i := range s.Stops {
		c.checkStop(s, &s.Stops[i])
	}
	for i := range s.Materials {
		c.checkMaterial(s, &s.Materials[i])
	}
	c.checkChecks(s)
	c.checkCauses(s)
}

func (c *compiler) checkSends(s *Station) {
	if len(s.Sends.To) == 1 {
		c.fault(s.Name+".sends.to", "one place needs no choice; name several, or leave sends out")
	}
	if s.Sends.Rule > FewestPieces {
		c.fault(s.Name+".sends.rule", "there is no such rule")
	}
}

func (c *compiler) checkPace(s *Station) {
	for i := range s.Steps {
		step := &s.Steps[i]
		if step.Cycle < 1 {
			c.fault(s.Name+".speed steps", "step %d has no cycle time", i+1)
		}
		if step.Delay < 0 {
			c.fault(s.Name+".speed steps", "step %d has a delay of less than nothing; it is 0 or more", i+1)
		}
		if step.From < 0 || step.BackAt < 0 || step.BackAt >= step.From {
			c.fault(s.Name+".speed steps", "step %d comes on from %d and goes back at %d pieces; back at must be lower than from level", i+1, step.From, step.BackAt)
		}
	}
	if s.Group.Every < 0 || s.Group.Adds < 0 || s.Group.Every > 0 && s.Group.Adds == 0 {
		c.fault(s.Name+".group", "every n-th cycle, n at least 1, takes a time longer than nothing more")
	}
	for _, rules := range [][]ScrapRule{s.AfterStop, s.AfterStandstill} {
		for _, r := range rules {
			if r.LongerThan < 0 || r.Cycles < 0 || r.Lasts < 0 {
				c.fault(s.Name, "scrap after a stop counts from a time of 0 or more and is 0 cycles or more")
			}
		}
	}
}

func (c *compiler) checkStop(s *Station, stop *Stop) {
	path := s.Name + ".stops." + stop.Name
	if stop.Every.IsZero() {
		c.fault(path+".every", "it says nowhere how often it comes")
	}
	if stop.Lasts.IsZero() {
		c.fault(path+".lasts", "it says nowhere how long it lasts")
	}
	if !(stop.RateFactor >= 0) || math.IsInf(stop.RateFactor, 1) {
		c.fault(s.Name+".stop rate factor", "a factor is more than 0")
	}
	if stop.Class > External {
		c.fault(path+".class", "there is no such class")
	}
	for _, name := range stop.Renews {
		if !slices.ContainsFunc(s.Stops, func(o Stop) bool { return o.Name == name && name != stop.Name }) {
			c.fault(path+".renews", "%q is no other stop of %q", name, s.Name)
		}
	}
	c.checkWork(path, stop.Crew)
}

// checkCauses sees to it that every cause of a station has a name of its own.
func (c *compiler) checkCauses(s *Station) {
	seen := map[string]bool{}
	see := func(path, name string) {
		if name == "" || seen[name] {
			c.fault(path+"."+name, "stops, materials and checks of a station need names of their own")
		}
		seen[name] = true
	}
	for _, cause := range stopCauses(s) {
		see(s.Name+".stops", cause.name)
	}
	for i := range s.Materials {
		see(s.Name+".consumes", s.Materials[i].Name)
	}
	for i := range s.Checks {
		see(s.Name+".checks", s.Checks[i].Name)
	}
}

func (c *compiler) checkWork(path string, w Work) {
	if w.Crew == "" {
		return
	}
	if w.People < 0 {
		c.fault(path+".people", "%d; a number of people is 1 or more", w.People)
	}
	if !slices.ContainsFunc(c.line.Crews, func(crew Crew) bool { return crew.Name == w.Crew }) {
		c.fault(path+".crew", "there is no crew %q", w.Crew)
		return
	}
	if most := c.peopleFor(w.Crew); max(1, w.People) > most {
		c.fault(path+".crew", "it asks for %d of %d %s and would wait for ever", max(1, w.People), most, w.Crew)
	}
}
