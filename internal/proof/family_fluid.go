package proof

import (
	"fmt"
	"math"
	"strings"

	"tuckline/sim"
)

// leastPlaces and leastPieces are how finely a volume and its unit are cut into pieces.
const (
	leastPlaces = 200
	leastPieces = 20
)

// cut is the number of pieces in a unit of volume; where it is in pieces already, each is one. The
// smallest volumes are cut into half as many, or their cases would take longer than all others.
func cut(volume float64) float64 {
	switch {
	case volume >= leastPlaces:
		return 1
	case volume < 1:
		return leastPlaces / volume / 2
	}
	return math.Max(leastPieces, leastPlaces/volume)
}

// fluid: two stations whose material flows; many small pieces come near to it.
func fluid(e *entry) {
	e.unit = 60e6 // long units, so that a cycle of a fraction of one is many microseconds
	v1, v2, volume := e.number("speed1"), e.number("speed2"), e.number("buffer_volume")
	pieces := cut(volume)
	places := pieces * volume
	line := serial([]sim.Law{e.fixed(1 / (pieces * v1)), e.fixed(1 / (pieces * v2))}, int64(math.Round(places)))
	clock, words := sim.RunningClock, "by running time"
	mapping := fmt.Sprintf("The limit of many small pieces: %.0f places, so that the figure may differ by 1 in %.0f.", places, places)
	if strings.HasPrefix(e.given["failure_mode"], "TDF") {
		clock, words = sim.CalendarClock, "by calendar time"
		mapping += " Stops on the calendar strike idle machines too."
	} else if v1 != v2 {
		mapping += " A machine that waits for the other between cycles does not age, so that its stops come in proportion to its speed."
	}
	e.fails(&line, clock, []float64{e.number("fail_rate1"), e.number("fail_rate2")}, []float64{e.number("repair_rate1"), e.number("repair_rate2")})
	text := fmt.Sprintf("Two stations of speed %s and %s with a volume of %s between them; failures %s and %s, repairs %s and %s, %s",
		e.given["speed1"], e.given["speed2"], e.given["buffer_volume"], short(e.number("fail_rate1")), short(e.number("fail_rate2")), short(e.number("repair_rate1")), short(e.number("repair_rate2")), words)
	c := e.sim(text, mapping, line, e.settled(line))
	e.compare(c, "throughput", times(1/pieces, e.rate(1)))
	for _, f := range c.figures {
		f.allowance = f.exact / places
	}
}

func short(x float64) string { return fmt.Sprintf("%.4g", x) }
