package scenario

import (
	"slices"

	"tuckline/sim"
)

// KeyFigures says how key figures are counted.
type KeyFigures struct {
	Counting
	// Reported is how another report counts; nil where none is named.
	Reported *Reported
}

// Reported is another report.
type Reported struct {
	Counting
	// OEE is what it shows, 0 to 1; 0 where it is not known.
	OEE float64
}

// Counting are the choices in which key figures of one name differ.
type Counting struct {
	// AtTopSpeed takes the planned run time of a piece from the top speed of the station, not its set speed.
	AtTopSpeed bool
	// MinorUpTo is the length below which a standstill is a minor stop.
	MinorUpTo sim.Micros
	// MinorIn and MaterialIn say what minor stops and stops for material take away.
	MinorIn, MaterialIn Taken
	// NotBusy is the scheduled time left out of the planned busy time: names of spans of the calendar in the plural as
	// written (BusyWords), and changeover.
	NotBusy []string
}

// Leaves says that the planned busy time is without such time.
func (c Counting) Leaves(word string) bool { return slices.Contains(c.NotBusy, word) }

// Taken is what a loss takes away.
type Taken string

// What losses take away.
const (
	FromPerformance  Taken = "performance"
	FromAvailability Taken = "availability"
	FromPlanned      Taken = "planned"
)

// BusyWords are what can be left out of the planned busy time.
var BusyWords = []string{"breaks", "start-up", "tidy", "cleaning", "changeover"}

// Agreement is what an acceptance run has to show.
type Agreement struct {
	// Efficiency is the agreed line efficiency, 0 to 1; 0 means that nothing is agreed.
	Efficiency float64
	// OfTopSpeed refers it to the top speed of the slowest station, not to its set speed.
	OfTopSpeed bool
	// Run is the length of the run, From the time from the start of the line to its beginning, both in scheduled time.
	Run, From sim.Micros
}

// MinorLimits are the lengths below which standstills are minor stops, of this report and of the other.
func (k *KeyFigures) MinorLimits() []sim.Micros {
	limits := []sim.Micros{k.MinorUpTo}
	if k.Reported != nil && k.Reported.MinorUpTo != k.MinorUpTo {
		limits = append(limits, k.Reported.MinorUpTo)
	}
	return limits
}

// unusualLimits are the limits, or none where there is only the usual one.
func (k *KeyFigures) unusualLimits() []sim.Micros {
	if limits := k.MinorLimits(); len(limits) > 1 || limits[0] != usualCounting.MinorUpTo {
		return limits
	}
	return nil
}
