package sim

import (
	"cmp"
	"math"
	"slices"

	"tuckline/sim/internal/plan"
)

// groups joins stations that stop together, directly or through a third; coupled ones are one unit.
func (c *compiler) groups() {
	root := make([]int, len(c.units))
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			i = root[i]
		}
		return i
	}
	for i := range c.line.Stations {
		if s := &c.line.Stations[i]; s.StopsWith != "" {
			root[find(c.nodes[s.Name])] = find(c.nodes[s.StopsWith])
		}
	}
	members := map[int][]int{}
	for i := range c.plan.Stations {
		r := find(c.nodes[c.plan.Stations[i].Name])
		members[r] = append(members[r], i)
	}
	for i := range c.plan.Stations {
		st := &c.plan.Stations[i]
		all := members[find(c.nodes[st.Name])]
		if len(all) < 2 || st.Group != plan.None {
			continue
		}
		for _, j := range all {
			c.plan.Stations[j].Group = len(c.plan.Groups)
		}
		c.plan.Groups = append(c.plan.Groups, plan.Group{Members: all})
	}
}

func (c *compiler) crews() {
	for i := range c.line.Crews {
		crew := &c.line.Crews[i]
		p := plan.Crew{
			Name: crew.Name, Share: crew.ElsewhereShare, Spell: crew.ElsewhereSpell,
			Walk: someTime(crew.Walk), Response: someTime(crew.Response), Duties: c.duties(crew), Helpers: c.helpers(crew.Name),
		}
		for _, d := range p.Duties {
			p.People = max(p.People, d.There, d.Whole)
		}
		c.plan.Crews = append(c.plan.Crews, p)
	}
}

// someTime is a law, or none where it is no time at all.
func someTime(law Law) Law {
	if law.IsFixed() && law.Mean() == 0 {
		return Law{}
	}
	return law
}

// helpers are the crews that can also do the work of one, by name.
func (c *compiler) helpers(crew string) []int {
	var all []int
	for i := range c.line.Crews {
		if slices.Contains(c.line.Crews[i].CanAlso, crew) {
			all = append(all, i)
		}
	}
	slices.SortFunc(all, func(a, b int) int { return cmp.Compare(c.line.Crews[a].Name, c.line.Crews[b].Name) })
	return all
}

func (c *compiler) checkCrew(crew *Crew) {
	path := "crews." + crew.Name
	c.checkPeople(path, crew)
	c.checkWay(path+".walk", crew.Walk)
	c.checkWay(path+".response", crew.Response)
	for i, name := range crew.CanAlso {
		switch {
		case name == crew.Name:
			c.fault(path+".can also", "its own work is its own anyway; name other crews")
		case slices.Contains(crew.CanAlso[:i], name):
			c.fault(path+".can also", "%q is named twice", name)
		case !slices.ContainsFunc(c.line.Crews, func(o Crew) bool { return o.Name == name }):
			c.fault(path+".can also", "there is no crew %q", name)
		}
	}
	if !(crew.ElsewhereShare >= 0 && crew.ElsewhereShare < 1) {
		c.fault(path+".busy elsewhere.share", "a share is at least 0 and less than 1")
	}
	if crew.ElsewhereShare > 0 && crew.ElsewhereSpell < 1 {
		c.fault(path+".busy elsewhere.spell", "a spell is longer than nothing")
	}
}

// checkPeople refuses crews of nobody, and numbers by shift that do not belong to the calendar.
func (c *compiler) checkPeople(path string, crew *Crew) {
	most := crew.People
	if crew.ByShift != nil {
		most = 0
	}
	for shift, n := range crew.ByShift {
		if n < 0 {
			c.fault(path+".people", "%d on shift %d; a number of people is 0 or more", n, shift+1)
		}
		most = max(most, n)
	}
	if shifts := c.line.Calendar.shifts(); crew.ByShift != nil && len(crew.ByShift) != shifts {
		c.fault(path+".people", "%d numbers for %d shifts of the calendar; give one for each shift", len(crew.ByShift), shifts)
	}
	if crew.InBreaks < 0 {
		c.fault(path+".in breaks", "%d; a number of people is 0 or more", crew.InBreaks)
	}
	switch {
	case crew.People < 0:
		c.fault(path+".people", "%d; a number of people is 0 or more", crew.People)
	case crew.Relief && crew.InBreaks < 1:
		c.fault(path+".in breaks", "relief for breaks is at least one person")
	case !crew.Relief && most < 1:
		c.fault(path, "a crew has at least one person")
	}
}

// checkWay refuses a way to the work without end.
func (c *compiler) checkWay(path string, law Law) {
	if !law.IsZero() && (math.IsInf(law.Mean(), 1) || !(law.Mean() >= 0)) {
		c.fault(path, "its mean has no limit; a law with a mean is needed")
	}
}
