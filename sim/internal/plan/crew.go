package plan

import "tuckline/sim/internal/draw"

// Crew is a number of people.
type Crew struct {
	Name string
	// People is how many there are at once at most.
	People int
	// Duties are by span of the calendar; one without a calendar.
	Duties []Duty
	// Share of each person's time that other work asks for, in spells of mean Spell.
	Share float64
	Spell Micros
	// Walk and Response are the laws of the way to the work; zero laws are none.
	Walk, Response draw.Law
	// Helpers are other crews whose people can do its work too, in the order in which they are asked.
	Helpers []int
}

// Gap is the mean time between two spells of other work.
func (c *Crew) Gap() Micros { return Micros(float64(c.Spell) * (1 - c.Share) / c.Share) }

// Duty is where the people of a crew are in a span of the calendar.
type Duty struct {
	// There is how many are on duty, Whole how many the shift has, those included who have their break.
	There, Whole int
	// New says that the people change at its beginning: who was there goes home.
	New bool
	// Break says that they have their break, and of its first span how long it lasts; 0 is none.
	Break Micros
}
