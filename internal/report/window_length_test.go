package report

import (
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/study"
	"tuckline/sim"
)

// Computed durations have two decimals at most, entered ones what was written: 18,002.4 s are 5.000667 h, 1,477 s are 24.616667 min,
// 70 min are 1.166667 h (by hand).
func TestComputedDurationsAreRounded(t *testing.T) {
	for d, want := range map[sim.Micros]string{
		18_002_400 * sim.Second / 1000: "5 h", 1_477 * sim.Second: "24.62 min", 70 * sim.Minute: "1.17 h", 8 * sim.Hour: "8 h",
		7*sim.Hour + 450*sim.Second: "7.125 h", 0: "0 s",
	} {
		if got := strings.ReplaceAll(roundLength(d), thin, " "); got != want {
			t.Errorf("%d: %q, want %q", d, got, want)
		}
	}
}

// Without a calendar times of orders are in minutes below an hour, then in hours to the hundredth: 0.0139 h are 50 s, 0.8 min.
func TestTimesOfOrders(t *testing.T) {
	for hours, want := range map[float64]string{0: "0" + thin + "h", 0.0139: "0.8" + thin + "min", 0.41: "24.6" + thin + "min", 0.9999: "1.00" + thin + "h", 4.1667: "4.17" + thin + "h"} {
		if got := timeOf(result.ClockTime{Within: true, Hours: hours}); got != want {
			t.Errorf("%v h: %q, want %q", hours, got, want)
		}
	}
}

// The finish of a delivery is said as far as runs have finished within the horizon of 20 h.
func TestFinishSentence(t *testing.T) {
	for within, want := range map[int]string{
		0: "Fewer than half of the runs have finished all orders within 20 h.",
		1: "Half of the runs have finished all orders by Fri 10:00, fewer than 90 % within 20 h.",
		2: "Half of the runs have finished all orders by Fri 10:00, 90 % by Fri 10:00, fewer than 95 % within 20 h.",
		3: "Half of the runs have finished all orders by Fri 10:00, 90 % by Fri 10:00, 95 % by Fri 10:00.",
	} {
		d := &result.Delivery{HorizonHours: 20}
		for i, p := range []float64{0.5, 0.9, 0.95} {
			d.Finish = append(d.Finish, result.DeliveryFinish{P: p, Within: i < within, At: "Fri 10:00"})
		}
		if got := strings.Join(strings.Fields(strings.ReplaceAll(finishSentence(d), thin, " ")), " "); got != want {
			t.Errorf("%d within: %q, want %q", within, got, want)
		}
	}
}

// A window of fixed length that ends before its orders do has no sentence on when they are finished.
func TestNoFinishOfOrdersThatTheWindowCuts(t *testing.T) {
	s := &subject{}
	for _, until := range []bool{false, true} {
		s.Outcome = &study.Outcome{Results: result.Results{Replications: 40, Orders: &result.Orders{
			Until: until, Unfinished: 40, Each: []result.OrderMade{{Name: "A"}}, Finish: &result.Clocked{},
		}}}
		if words := s.orderWords(); (words != "") != until {
			t.Errorf("runs end with their orders %t: %q", until, words)
		}
	}
}
