package report

import (
	"strings"
	"testing"

	"tuckline/internal/result"
)

// shares of a station that runs for 77 % of the time.
func sharesOf(name string, down, blocked, starved result.Estimate) result.Station {
	return result.Station{Name: name, States: result.States{Running: about(0.77, 0.01), Down: down, Blocked: blocked, Starved: starved}}
}

// What cannot be told apart is not ranked in a heading, and no part of the
// rest is called most of it.
func TestHeadingOfStates(t *testing.T) {
	none, invented := result.Estimate{N: 40}, subjectOf(inventedOutcome())
	for want, stations := range map[string][]result.Station{
		"The web runs 77 % of the time; of the rest, down (10 %) and blocked (10 %) take the largest parts": {
			sharesOf("web", about(0.103, 0.008), about(0.101, 0.008), about(0.026, 0.004)),
		},
		"The web runs 77 % of the time; of the rest, down (13 %) takes the largest part": {
			sharesOf("web", about(0.133, 0.008), about(0.071, 0.008), about(0.026, 0.004)),
		},
		"The web runs 77 % of the time; the rest of the time it is blocked": {
			sharesOf("web", none, about(0.23, 0.01), none),
		},
		"The web 1 and web 2 run 77 % of the time on average; of the rest, down (15 %) takes the largest part": {
			sharesOf("web 1", about(0.14, 0.008), about(0.08, 0.008), about(0.01, 0.004)),
			sharesOf("web 2", about(0.16, 0.008), about(0.06, 0.008), about(0.01, 0.004)),
		},
		"The web 1 and web 2 run 77 % of the time on average; the rest of the time they are down": {
			sharesOf("web 1", about(0.23, 0.01), none, none), sharesOf("web 2", about(0.23, 0.01), none, none),
		},
	} {
		if got := strings.ReplaceAll(invented.statesHeading(stations), thin, " "); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	running := result.Station{Name: "web", States: result.States{Running: about(1, 0)}}
	if got := invented.statesHeading([]result.Station{running}); got != "The web runs all the time" {
		t.Errorf("got %q", got)
	}
}

// Headings name all stations that limit the line.
func TestHeadingsNameAllThatLimit(t *testing.T) {
	o := inventedOutcome()
	s := subjectOf(o)
	s.Figures.Bounds.Constraint = []string{"cartoner", "bundler"}
	for _, heading := range []string{s.timelineHeading(), s.waitsHeading(), s.statesHeading(s.constraints())} {
		if !strings.Contains(heading, "cartoner and bundler") {
			t.Errorf("%q", heading)
		}
	}
}
