package study

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// oneOrder makes 1,000 pieces, one a second and a piece of 10 s at the end: an hour has 3,600.
func oneOrder(t *testing.T, run, orders string) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("orders.yaml", []byte(`tuckline: 1
run: {replications: 2`+run+`}
answer: {in: pieces, per: hour}
calendar: {days: Mon-Fri, shifts: {early: {from: "06:00", to: "14:00"}, late: {from: "14:00", to: "22:00"}}}
line: [{station: filler, cycle: 1 s, takes: 1 piece, gives: 1 piece}]
orders: [`+orders+`]
`), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// 72,000 pieces at one a second are 20 h: 16 h on Thursday and 4 h on Friday, until 10:00. To be ready at 14:00 they may begin
// 20 h of scheduled time before: on Thursday at 10:00 (by hand).
func TestDeliveryByHand(t *testing.T) {
	s := oneOrder(t, `, starts: "Thu 06:00"`, `{good: 72000 pieces}`)
	ask := func(by string) *DeliveryOutcome {
		o, err := Deliver(t.Context(), s, DeliveryOptions{By: by, Chance: 0.95, Replications: 10, Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	r := ask("Fri 14:00").Results
	if f := r.Finish[1]; f.At != "Fri 10:00" || !f.Within || r.Unfinished != 0 || r.Starts != "Thu 06:00" {
		t.Errorf("finished %+v after a start %s, %d unfinished", f, r.Starts, r.Unfinished)
	}
	if r.InTime.Mean != 1 || r.InTime.High != 1 || r.InTime.Low > 0.8 {
		t.Errorf("in time %+v", r.InTime)
	}
	if l := r.LatestStart; !l.Found || l.At != "Thu 10:00" || l.Confirmed.Mean != 1 || l.LaterAt != "Thu 10:15" || l.Later.Mean != 0 {
		t.Errorf("latest start %+v", l)
	}
	// By 09:00 it is too late; a start an hour before the beginning of Thursday's shift lies on Wednesday before 22:00.
	r = ask("Fri 09:00").Results
	if l := r.LatestStart; r.InTime.Mean != 0 || l.At != "Wed 21:00" || l.ShiftHours != -9 {
		t.Errorf("by 09:00 %+v, latest start %+v", r.InTime, l)
	}
	// 16 h on Wednesday from 22:00 back are 06:00: what is due on Monday at 06:00 is due on Friday at 22:00.
	if l := ask("week 2 Mon 06:00").Results.LatestStart; l.At != "Thu 18:00" {
		t.Errorf("latest start %+v", l)
	}
}

// 72,000 pieces are 20 h of scheduled time. From Thursday 10:00 they last until Friday 14:00, 28 h with the night; any start of a
// working day has a night in it. Runs of 27 h at most are never in time then, those of 29 h are with that start (by hand).
func TestLatestStartKeepsToAtMost(t *testing.T) {
	for most, found := range map[string]bool{"27 h": false, "29 h": true} {
		s := oneOrder(t, `, starts: "Thu 06:00", at most: `+most, `{good: 72000 pieces}`)
		o, err := Deliver(t.Context(), s, DeliveryOptions{By: "Fri 14:00", Chance: 0.95, Replications: 4, Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		if l := o.Results.LatestStart; l.Found != found || found && (l.At != "Thu 10:00" || l.Confirmed.Mean != 1) {
			t.Errorf("at most %s: latest start %+v", most, l)
		}
	}
}

// Orders with dates of their own: each has its own chance, the last date the start. 7,200 pieces are 2 h, both 4 h.
func TestDeliveryOfSeveralOrders(t *testing.T) {
	s := oneOrder(t, "", `{good: 7200 pieces, due: "Mon 07:00"}, {good: 7200 pieces, due: "Mon 11:00"}`)
	o, err := Deliver(t.Context(), s, DeliveryOptions{Chance: 0.5, Replications: 4, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	r := o.Results
	if len(r.Orders) != 2 || r.Orders[0].InTime.Mean != 0 || r.Orders[1].InTime.Mean != 1 || r.InTime.Mean != 0 {
		t.Errorf("%+v, all %+v", r.Orders, r.InTime)
	}
	// The first needs a start at 05:00, when nobody works: on Friday before that at 21:00.
	if l := r.LatestStart; l.At != "Fri 21:00 of the week before" {
		t.Errorf("latest start %+v", l)
	}
}

// What cannot be asked, and what is not finished within the horizon.
func TestDeliveryFaults(t *testing.T) {
	endless := oneOrder(t, `, measure: 8 h`, `{good: 7200 pieces, times: without end}`)
	without := oneOrder(t, "", `{good: 7200 pieces}`)
	without.Calendar = nil
	for s, want := range map[*scenario.Scenario]string{endless: "without end", without: "calendar", steady(): "no orders"} {
		_, err := Deliver(t.Context(), s, DeliveryOptions{Chance: 0.9})
		if input := new(InputError); !errors.As(err, &input) || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want something of %q", err, want)
		}
	}
	short := oneOrder(t, `, at most: 1 week`, `{good: 999999 pieces}`)
	o, err := Deliver(t.Context(), short, DeliveryOptions{By: "Fri 22:00", Chance: 0.9, Replications: 3, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	if r := o.Results; r.Unfinished != 3 || r.Finish[1].Within || r.InTime.Mean != 0 || !strings.Contains(strings.Join(r.Warnings, " "), "3 of 3 runs") {
		t.Errorf("%+v", r)
	}
}

// A shifted calendar says of every time what the other says so much later.
func TestShiftedCalendars(t *testing.T) {
	c := oneOrder(t, "", `{good: 1 piece}`).Line.Calendar
	rapid.Check(t, func(t *rapid.T) {
		by := sim.Micros(rapid.Int64Range(-30*24*60, 30*24*60).Draw(t, "by")) * sim.Minute
		from := sim.Micros(rapid.Int64Range(0, 20*24*60).Draw(t, "from")) * sim.Minute
		later := shifted(c, by)
		origin := by + 5*c.Cycle()
		if got, want := later.Scheduled(from), c.Scheduled(origin+from)-c.Scheduled(origin); got != want {
			t.Fatalf("%d of scheduled time, want %d", got, want)
		}
	})
}
