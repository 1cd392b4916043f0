package sim

import (
	"slices"
)

// unit is what the engine runs as one station: a station as written, or neighbours
// on one drive. The embedded Station is the unit as a whole; members are indices
// into the line, in the order of the flow.
type unit struct {
	Station
	members []int
	names   []string
}

func (u *unit) last() string { return u.names[len(u.names)-1] }

// couple joins neighbours on the same drive to units.
func (c *compiler) couple() {
	next := map[string]int{} // the member that follows another, by its name
	for i := range c.line.Stations {
		s := &c.line.Stations[i]
		if s.Coupled == "" {
			continue
		}
		before := c.coupledBefore(s)
		if before == "" {
			continue
		}
		if _, twice := next[before]; twice {
			c.fault(s.Name+".coupled", "two stations that follow %q are coupled to it; a drive has one way", before)
		}
		next[before] = i
	}
	c.nodes = map[string]int{}
	for i := range c.line.Stations {
		if s := &c.line.Stations[i]; c.coupledBefore(s) == "" {
			c.addUnit(i, next)
		}
	}
}

// coupledBefore is the neighbour before a station on the same drive, or empty.
func (c *compiler) coupledBefore(s *Station) string {
	if s.Coupled == "" || s.From == "" {
		return ""
	}
	i := slices.IndexFunc(c.line.Stations, func(o Station) bool { return o.Name == s.From })
	if i < 0 || c.line.Stations[i].Coupled != s.Coupled {
		return ""
	}
	return s.From
}

// addUnit makes the unit that begins with station i.
func (c *compiler) addUnit(i int, next map[string]int) {
	u := unit{Station: c.line.Stations[i]}
	for {
		s := &c.line.Stations[i]
		if len(u.members) > 0 {
			c.join(&u, s)
		}
		u.members, u.names = append(u.members, i), append(u.names, s.Name)
		c.nodes[s.Name] = len(c.units)
		follower, has := next[s.Name]
		if !has || len(u.members) > len(c.line.Stations) {
			break
		}
		i = follower
	}
	c.checkUnit(&u)
	c.units = append(c.units, u)
}

// join lets a station follow on the drive of a unit: one cycle, the longest; the output of
// the last; the stops and materials of all, which are added where they are compiled.
func (c *compiler) join(u *unit, s *Station) {
	if s.Takes != u.Gives {
		c.fault(s.Name+".takes", "it is coupled to %q, which gives %d a cycle, but takes %d; on one drive both are the same", u.last(), u.Gives, s.Takes)
	}
	if s.Gives != s.Takes && samplesIn(c, u) {
		c.fault(s.Name+".gives", "a station before it on the same drive takes single pieces for checks, so that %d for %d cannot be kept; put the checks at or behind %q", s.Gives, s.Takes, s.Name)
	}
	if s.Gives != s.Takes && rejectsIn(c, u) {
		c.fault(s.Name+".gives", "a station before it on the same drive rejects single pieces, so that %d for %d cannot be kept; put the rejects at or behind %q", s.Gives, s.Takes, s.Name)
	}
	if len(s.Also) > 0 {
		c.fault(s.Name+".takes", "a station that assembles can only be the first on its drive")
	}
	if s.Cycle.Mean() > u.Cycle.Mean() {
		u.Cycle = s.Cycle
	}
	c.one(s, "speed steps", len(u.Steps) > 0, len(s.Steps) > 0)
	c.one(s, "group", u.Group.Every > 0, s.Group.Every > 0)
	c.one(s, "ramp", u.Ramp > 0, s.Ramp > 0)
	u.Steps = append(slices.Clone(u.Steps), s.Steps...)
	if s.Group.Every > 0 {
		u.Group = s.Group
	}
	u.Ramp = max(u.Ramp, s.Ramp)
	c.one(s, "heat recovery", u.HeatRecovery > 0, s.HeatRecovery > 0)
	u.HeatRecovery = max(u.HeatRecovery, s.HeatRecovery)
	if s.EmptyPockets.On {
		c.fault(s.Name+".incomplete stack", "only the first station on a drive takes from outside; write it there")
	}
	u.Gives, u.Sends = s.Gives, s.Sends
	u.BlocksBefore = u.BlocksBefore || s.BlocksBefore
	u.LoadsWhileStopped = u.LoadsWhileStopped || s.LoadsWhileStopped
	u.AfterStop = append(slices.Clone(u.AfterStop), s.AfterStop...)
	u.AfterStandstill = append(slices.Clone(u.AfterStandstill), s.AfterStandstill...)
}

func (c *compiler) one(s *Station, word string, before, here bool) {
	if before && here {
		c.fault(s.Name+"."+word, "one station on a drive can have it, and one before it has it already")
	}
}

func samplesIn(c *compiler, u *unit) bool {
	return slices.ContainsFunc(u.members, func(i int) bool { return len(c.line.Stations[i].Checks) > 0 })
}

func rejectsIn(c *compiler, u *unit) bool {
	return slices.ContainsFunc(u.members, func(i int) bool { return c.line.Stations[i].rejects() })
}

// checkUnit refuses what cannot be said of a unit.
func (c *compiler) checkUnit(u *unit) {
	if u.Coupled != "" && len(u.members) == 1 {
		c.fault(u.Name+".coupled", "it has no neighbour on the same drive: coupled stations stand directly one behind the other and name the same drive")
	}
}
