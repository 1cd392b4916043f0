package quantity

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Count is a number of pieces with their name.
type Count struct {
	N int64
	// Unit is as written: "blisters" or "blister"; empty if only a number was written.
	Unit string
}

var pieceName = regexp.MustCompile(`^\pL[\pL\pN' -]*$`)

func nameOfPieces(unit string) error {
	if !pieceName.MatchString(unit) {
		return fmt.Errorf("%s is not a name of pieces; write it as 720 blisters", quote(unit))
	}
	if _, isTime := duration.factor(unit); isTime {
		return fmt.Errorf("%s is a unit of time, and pieces are counted here, as 720 blisters", quote(unit))
	}
	if _, isLength := length.factor(unit); isLength {
		return fmt.Errorf("%s is a unit of length, and pieces are counted here, as 720 blisters", quote(unit))
	}
	return nil
}

// ParseCount reads a number of pieces: "720 blisters", "1 carton", or "720" with
// an empty unit.
func ParseCount(text string) (Count, error) {
	number, rest, err := split(text)
	if err != nil {
		return Count{}, err
	}
	if rest != "" {
		if err := nameOfPieces(rest); err != nil {
			return Count{}, err
		}
	}
	n, err := whole(text, number)
	return Count{n, rest}, err
}

// Format writes the count so that it reads back as the same.
func (c Count) Format() string {
	return strings.TrimSpace(strconv.FormatInt(c.N, 10) + " " + c.Unit)
}

// SameUnit compares two names of pieces, singular and plural.
func SameUnit(a, b string) bool { return Plural(a) == Plural(b) }

// Plural is the plural of a regular English name of pieces; a name that is
// one already stays.
func Plural(unit string) string {
	switch {
	case unit == "" || strings.HasSuffix(unit, "s") && !strings.HasSuffix(unit, "ss"):
		return unit
	case endsIn(unit, "ss", "x", "z", "ch", "sh"):
		return unit + "es"
	case strings.HasSuffix(unit, "y") && !endsIn(unit, "ay", "ey", "oy", "uy"):
		return strings.TrimSuffix(unit, "y") + "ies"
	}
	return unit + "s"
}

func endsIn(text string, endings ...string) bool {
	for _, ending := range endings {
		if strings.HasSuffix(text, ending) {
			return true
		}
	}
	return false
}
