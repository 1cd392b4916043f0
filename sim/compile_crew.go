package sim

import "tuckline/sim/internal/plan"

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
	for _, crew := range c.line.Crews {
		c.plan.Crews = append(c.plan.Crews, plan.Crew{
			Name: crew.Name, People: crew.People, Share: crew.ElsewhereShare, Spell: crew.ElsewhereSpell,
		})
	}
}
