package quantity

import "strings"

// The patterns describe the texts that are read, for the schema of the format.
// They are a little more tolerant than reading itself, never less.
const (
	numberPattern = `[0-9][0-9 _]*(\.[0-9]+)?([eE][+-]?[0-9]+)?|\.[0-9]+`
	namePattern   = `\p{L}[\p{L}\p{N}' -]*`
)

// NumberPattern matches a bare number.
func NumberPattern() string { return "^(" + numberPattern + ")$" }

// DurationPattern matches times: "90 s", "a week".
func DurationPattern() string { return "^" + duration.pattern() + "$" }

// LengthPattern matches lengths: "132 mm".
func LengthPattern() string { return "^" + length.pattern() + "$" }

// MassPattern matches masses: "250 mg".
func MassPattern() string { return "^" + mass.pattern() + "$" }

// SpeedPattern matches speeds of belts: "24 m/min".
func SpeedPattern() string { return "^" + length.pattern() + " ?/ ?" + duration.names() + "$" }

// RatePattern matches rates: "60/min".
func RatePattern() string {
	return "^(" + numberPattern + ") ?(" + namePattern + ")? ?/ ?" + duration.names() + "$"
}

// SharePattern matches percentages: "0.8 %".
func SharePattern() string { return "^(" + numberPattern + ") ?%$" }

// CountPattern matches numbers of pieces: "720 blisters", "720".
func CountPattern() string { return "^(" + numberPattern + ")( ?" + namePattern + ")?$" }

// AgePattern matches ages: "1500 cycles", "20 min running".
func AgePattern() string {
	return "^((" + numberPattern + ") ?" + namePattern + "|" + duration.pattern() + " (running|calendar))$"
}

// SpanPattern matches ranges of times: "0.45 s to 0.70 s".
func SpanPattern() string {
	return "^(" + numberPattern + ") ?" + duration.names() + "? to " + duration.pattern() + "$"
}

// pattern matches a number with a unit of the dimension.
func (d *dimension) pattern() string {
	return "((an? )|(" + numberPattern + ") ?)" + d.names()
}

// names matches the spellings of all units.
func (d *dimension) names() string {
	var names []string
	for _, u := range d.units {
		names = append(names, u.names...)
	}
	return "(" + strings.Join(names, "|") + ")"
}
