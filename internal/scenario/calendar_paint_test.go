package scenario_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

const minutesAWeek = 7 * 24 * 60

// painted is a week in minutes, each painted with what holds in it: another way to the same calendar.
type painted [minutesAWeek]string

func (p *painted) paint(begin, lasts int, what string) {
	for m := begin; m < begin+lasts; m++ {
		p[(m%minutesAWeek+minutesAWeek)%minutesAWeek] = what
	}
}

// drawnShift is a shift of a random calendar.
type drawnShift struct {
	name                       string
	from, lasts, startUp, tidy int
	at, pause                  int // the break, from the beginning
	days                       []int
}

var dayNames = []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"}

func clockOf(minutes int) string {
	minutes %= 24 * 60
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
}

func (d *drawnShift) words() string {
	var days []string
	for _, day := range d.days {
		days = append(days, dayNames[day])
	}
	text := fmt.Sprintf("%s: {from: %s, to: %s, days: [%s], start-up: %d min, tidy: %d min", d.name, clockOf(d.from), clockOf(d.from+d.lasts), strings.Join(days, ", "), d.startUp, d.tidy)
	if d.pause > 0 {
		text += fmt.Sprintf(", breaks: [{at: %s, lasts: %d min}]", clockOf(d.from+d.at), d.pause)
	}
	return text + "}"
}

func (d *drawnShift) paint(p *painted, shift int, relief bool) {
	pause := "stands rest break"
	if relief {
		pause = "works rest "
	}
	for _, day := range d.days {
		begin := day*24*60 + d.from
		mark := func(what string) string { return fmt.Sprintf("%d %s", shift, what) }
		p.paint(begin, d.lasts, mark("works work "))
		p.paint(begin+d.at, d.pause, mark(pause))
		p.paint(begin, d.startUp, mark("stands work start-up"))
		p.paint(begin+d.lasts-d.tidy, d.tidy, mark("stands work tidy"))
	}
}

// drawShifts draws shifts one after the other round the day, so that none overlap.
func drawShifts(r *rapid.T) (all []drawnShift) {
	first := rapid.IntRange(0, 24*60-1).Draw(r, "first")
	n := rapid.IntRange(1, 3).Draw(r, "shifts")
	for i := range n {
		part := 24 * 60 / n
		d := drawnShift{name: fmt.Sprintf("s%d", i), from: (first + i*part) % (24 * 60), lasts: rapid.IntRange(120, min(part, 24*60-1)).Draw(r, "lasts")}
		d.startUp, d.tidy = rapid.IntRange(0, 20).Draw(r, "start-up"), rapid.IntRange(0, 20).Draw(r, "tidy")
		d.pause = rapid.IntRange(0, 30).Draw(r, "break")
		d.at = rapid.IntRange(d.startUp, d.lasts-d.tidy-d.pause).Draw(r, "at")
		days := rapid.IntRange(1, 127).Draw(r, "days")
		for day := range 7 {
			if days&(1<<day) != 0 {
				d.days = append(d.days, day)
			}
		}
		all = append(all, d)
	}
	return all
}

// TestRandomCalendars holds the spans of random calendars against weeks painted minute by minute, and the figures
// against what is counted there.
func TestRandomCalendars(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		var want painted
		want.paint(0, minutesAWeek, "-1 off away ")
		shifts, relief := drawShifts(r), rapid.Bool().Draw(r, "relief")
		text := "calendar:\n  days: Mon\n  shifts:\n"
		for i := range shifts {
			shifts[i].paint(&want, i, relief)
			text += "    " + shifts[i].words() + "\n"
		}
		if relief {
			text += "  during breaks: {relief: 2 people}\n"
		}
		if rapid.Bool().Draw(r, "cleaning") {
			begin, lasts := rapid.IntRange(0, minutesAWeek-1).Draw(r, "cleaning at"), rapid.IntRange(1, 60).Draw(r, "cleaning lasts")
			text += fmt.Sprintf("  cleaning: {on: %s, at: %s, lasts: %d min}\n", dayNames[begin/(24*60)], clockOf(begin), lasts)
			for m := begin; m < begin+lasts; m++ {
				was := strings.Fields(want[m%minutesAWeek])
				want[m%minutesAWeek] = was[0] + " stands " + was[2] + " cleaning"
			}
		}
		start := rapid.IntRange(0, minutesAWeek-1).Draw(r, "start")
		s := read(t, fmt.Sprintf("run: {starts: %s %s}\n%s%s", dayNames[start/(24*60)], clockOf(start), text, oneStation))
		at, scheduled, net := start, 0, 0
		for _, span := range s.Line.Calendar.Spans {
			got := fmt.Sprintf("%d %s %s %s", span.Shift, []string{"works", "stands", "off"}[span.Line], []string{"work", "rest", "away"}[span.Crews], span.Name)
			for range span.Lasts / sim.Minute {
				if w := want[at%minutesAWeek]; w != got {
					r.Fatalf("%s%s: %q, want %q", dayNames[at/(24*60)%7], clockOf(at), got, w)
				}
				if !strings.Contains(got, "off") {
					scheduled++
				}
				if strings.Contains(got, "works") {
					net++
				}
				at++
			}
		}
		if at != start+minutesAWeek || s.Calendar.Week != sim.Micros(scheduled)*sim.Minute || s.Calendar.NetWeek != sim.Micros(net)*sim.Minute {
			r.Fatalf("%d minutes, %d scheduled, %d net; the calendar says %+v", at-start, scheduled, net, s.Calendar)
		}
	})
}
