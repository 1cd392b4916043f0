package scenario

import (
	"errors"
	"fmt"
	"reflect"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
)

// ageUnit is what the values of one every: are counted on; all of them agree.
type ageUnit struct {
	clock quantity.Clock
	// pieces is their name on a piece clock.
	pieces string
	// bare is the first time that names no clock.
	bare at
}

var errOtherClock = errors.New("all values of one law are on one clock")

func (a *ageLaw) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	a.law.law, a.canon = r.readLaw(a.at, n, tag, a.age.measure)
	if a.age.bare.given() && a.age.clock != quantity.Running && a.age.clock != quantity.Calendar {
		r.complain(a.age.bare, "a time after %q names its clock: write %q (it stands still while the station does) or %q", "every",
			a.age.bare.text()+" running", a.age.bare.text()+" calendar")
	}
}

// measure parses ages and remembers their clock.
func (u *ageUnit) measure(where at) parser {
	return func(text string) (float64, error) {
		age, err := quantity.ParseAge(text)
		if err != nil {
			return age.Value, err
		}
		switch {
		case age.Clock == quantity.NoClock:
			if !u.bare.given() {
				u.bare = where
			}
		case u.clock == quantity.NoClock:
			u.clock, u.pieces = age.Clock, age.Unit
		case u.clock != age.Clock || !quantity.SameUnit(u.pieces, age.Unit):
			return 0, fmt.Errorf("%q: %w", text, errOtherClock)
		}
		return age.Value, nil
	}
}
