package quantity

import (
	"fmt"
	"strings"
)

// unit is a unit of a dimension: all its spellings, the usual one first, and
// how many base units it has.
type unit struct {
	names  []string
	factor float64
}

// dimension is what is measured, with its units from small to large. The base
// unit, of factor 1, is among them.
type dimension struct {
	what     string // "a time"
	examples string // how %s, the number, could be written
	units    []unit
}

var duration = dimension{"a time", "%[1]s s, %[1]s min or %[1]s h", []unit{
	{[]string{"us", "µs", "μs"}, 1},
	{[]string{"ms"}, 1e3},
	{[]string{"s"}, 1e6},
	{[]string{"min"}, 60e6},
	{[]string{"h"}, 3600e6},
	{[]string{"day", "days"}, 24 * 3600e6},
	{[]string{"week", "weeks"}, 7 * 24 * 3600e6},
	{[]string{"year", "years"}, 365 * 24 * 3600e6},
}}

var length = dimension{"a length", "%[1]s mm, %[1]s um or %[1]s m", []unit{
	{[]string{"um", "µm", "μm"}, 1},
	{[]string{"mil"}, 25.4},
	{[]string{"mm"}, 1e3},
	{[]string{"cm"}, 1e4},
	{[]string{"in"}, 25_400},
	{[]string{"ft"}, 304_800},
	{[]string{"m"}, 1e6},
}}

var mass = dimension{"a mass", "%[1]s mg, %[1]s g or %[1]s kg", []unit{
	{[]string{"mg"}, 1},
	{[]string{"g"}, 1e3},
	{[]string{"kg"}, 1e6},
}}

// factor finds a unit by its spelling.
func (d *dimension) factor(name string) (float64, bool) {
	for _, u := range d.units {
		for _, spelling := range u.names {
			if spelling == name {
				return u.factor, true
			}
		}
	}
	return 0, false
}

// meant are spellings that are common elsewhere.
var meant = map[string]string{
	"sec": "s", "secs": "s", "second": "s", "seconds": "s", "sek": "s", "minute": "min", "minutes": "min", "mins": "min",
	"hour": "h", "hours": "h", "hr": "h", "hrs": "h", "d": "day", "w": "week", "y": "year", "msec": "ms",
	"micron": "um", "microns": "um", "inch": "in", "inches": "in", "feet": "ft", "foot": "ft",
	"metre": "m", "metres": "m", "meter": "m", "meters": "m", "\"": "in",
}

// known lists the usual spellings.
func (d *dimension) known() string {
	var names []string
	for _, u := range d.units {
		names = append(names, u.names[0])
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " or " + names[last]
}

// parse reads a number with a unit of the dimension, in base units.
func (d *dimension) parse(text string) (float64, error) {
	number, rest, err := split(text)
	if err != nil {
		return 0, err
	}
	if rest == "" {
		return 0, d.bare(text)
	}
	factor, known := d.factor(rest)
	if right, found := meant[rest]; !known && found {
		return 0, fmt.Errorf("%s is written %s here: %s", quote(rest), right, FormatNumber(number)+" "+right)
	}
	if !known {
		return 0, fmt.Errorf("%s is not a unit of %s; write %s", quote(rest), strings.TrimPrefix(d.what, "a "), d.known())
	}
	return finite(text, number*factor)
}

func (d *dimension) bare(text string) error {
	return fmt.Errorf("%s has no unit; write %s", quote(text), fmt.Sprintf(d.examples, strings.TrimSpace(text)))
}

func finite(text string, value float64) (float64, error) {
	if value > maxValue || value < -maxValue {
		return 0, fmt.Errorf("%s is too large", quote(text))
	}
	return value, nil
}

// maxValue keeps base units far from the limits of int64.
const maxValue = 1e17

// format writes a value in the unit that gives the shortest text which reads
// back as the same value.
func (d *dimension) format(value float64) string {
	best := FormatNumber(value) + " " + d.units[0].names[0]
	for _, u := range d.units {
		number := value / u.factor
		text := FormatNumber(number) + " " + u.names[0]
		if number*u.factor == value && len(text) <= len(best) {
			best = text
		}
	}
	return best
}
