package quantity

import (
	"fmt"
	"strings"
)

// Length reads a length, such as "132 mm", "250 um" or "8 m", in micrometres.
func Length(text string) (micrometres float64, err error) { return length.parse(text) }

// FormatLength writes micrometres so that they read back as the same.
func FormatLength(micrometres float64) string { return length.format(micrometres) }

// Mass reads a mass, such as "250 mg", in milligrams.
func Mass(text string) (milligrams float64, err error) { return mass.parse(text) }

// FormatMass writes milligrams so that they read back as the same.
func FormatMass(milligrams float64) string { return mass.format(milligrams) }

// Speed reads a speed, such as "24 m/min", in micrometres per second.
func Speed(text string) (float64, error) {
	number, rest, err := split(text)
	if err != nil {
		return 0, err
	}
	over, per, found := strings.Cut(rest, "/")
	if !found {
		return 0, fmt.Errorf("%s is not a speed; write it as 24 m/min or 400 mm/s", quote(text))
	}
	way, knownWay := length.factor(strings.TrimSpace(over))
	span, knownSpan := duration.factor(strings.TrimSpace(per))
	if !knownWay || !knownSpan {
		return 0, fmt.Errorf("%s is not a unit of speed; write m/min, mm/s or m/s", quote(rest))
	}
	return finite(text, number*way/(span/1e6))
}

// FormatSpeed writes micrometres per second so that they read back as the same.
func FormatSpeed(speed float64) string {
	best := FormatNumber(speed) + " um/s"
	for _, unit := range []string{"mm/s", "m/min", "m/s"} {
		way, per, _ := strings.Cut(unit, "/")
		one, _ := length.factor(way)
		span, _ := duration.factor(per)
		number := speed * (span / 1e6) / one
		text := FormatNumber(number) + " " + unit
		if number*one/(span/1e6) == speed && len(text) < len(best) {
			best = text
		}
	}
	return best
}
