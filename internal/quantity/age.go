package quantity

import (
	"fmt"
	"strings"
)

// Clock is what an age is counted on.
type Clock uint8

// The clocks. NoClock is a time that does not say which.
const (
	NoClock Clock = iota
	Cycles
	Pieces
	Running
	Calendar
)

// Age is how long something has been in use: cycles, pieces or time.
type Age struct {
	// Value is in cycles, pieces or microseconds.
	Value float64
	Clock Clock
	// Unit is the name of the pieces, as written.
	Unit string
}

// ParseAge reads an age: "1500 cycles", "1000 cartons", "20 min running", "20 min
// calendar". A time without its clock is read with NoClock: whoever asks decides.
func ParseAge(text string) (Age, error) {
	number, rest, err := split(text)
	if err != nil {
		return Age{}, err
	}
	if rest == "" {
		n := strings.TrimSpace(text)
		return Age{}, fmt.Errorf("%s has no unit; write %s cycles, %s of the pieces it gives (cartons), or a time with its clock, as 20 min running or 20 min calendar", quote(text), n, n)
	}
	if rest == "cycle" || rest == "cycles" {
		return Age{Value: number, Clock: Cycles}, nil
	}
	for word, clock := range map[string]Clock{"running": Running, "calendar": Calendar} {
		if before, found := strings.CutSuffix(text, " "+word); found {
			micros, err := Duration(before)
			return Age{Value: micros, Clock: clock}, err
		}
	}
	if _, isTime := duration.factor(rest); isTime {
		micros, err := Duration(text)
		return Age{Value: micros, Clock: NoClock}, err
	}
	return Age{number, Pieces, rest}, nameOfPieces(rest)
}

// Format writes the age so that it reads back as the same.
func (a Age) Format() string {
	switch a.Clock {
	case Cycles:
		return FormatNumber(a.Value) + " cycles"
	case Pieces:
		return FormatNumber(a.Value) + " " + a.Unit
	case Running:
		return FormatDuration(a.Value) + " running"
	case Calendar:
		return FormatDuration(a.Value) + " calendar"
	}
	return FormatDuration(a.Value)
}
