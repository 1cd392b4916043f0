package plan

// Crew is a number of people.
type Crew struct {
	Name   string
	People int
	// Share of each person's time that other work asks for, in spells of mean Spell.
	Share float64
	Spell Micros
}

// Gap is the mean time between two spells of other work.
func (c *Crew) Gap() Micros { return Micros(float64(c.Spell) * (1 - c.Share) / c.Share) }
