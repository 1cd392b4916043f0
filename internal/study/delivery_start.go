package study

import (
	"fmt"
	"strings"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

const (
	// startStep is how exactly the latest start is looked for, in scheduled time.
	startStep = 15 * sim.Minute
	// earliestWeeks is how many weeks before the last date it is looked for at most.
	earliestWeeks = 26
	week          = 7 * 24 * sim.Hour
)

// latestStart looks for the latest start with the wanted chance: by bisection over starts that lie whole steps of scheduled time before
// the last date, all with the same random numbers, then confirms it with others. The search begins where the scheduled time that
// the runs from the start of the scenario took says.
func (d *delivery) latestStart(records []sim.Record) (*result.LatestStart, error) {
	last := sim.Micros(0)
	for _, one := range d.due {
		last = max(last, one.at)
	}
	search := startSearch{delivery: d, last: last, grid: d.gridBefore(last), tried: map[int]result.Estimate{}}
	found := &result.LatestStart{
		Chance: d.options.Chance, StepMinutes: float64(startStep) / float64(sim.Minute), Earliest: d.clock(search.grid.at(search.grid.most)),
	}
	late, early, err := search.bracket(d.guess(records, search.grid))
	if err != nil {
		return nil, err
	}
	if early < 0 {
		found.InTime = search.tried[search.grid.most]
		return found, nil
	}
	for early-late > 1 {
		middle := (early + late) / 2
		enough, err := search.enough(middle)
		if err != nil {
			return nil, err
		}
		if enough {
			early = middle
		} else {
			late = middle
		}
	}
	return search.confirmed(found, early)
}

// guess is about how many steps before the date a start is needed.
func (d *delivery) guess(records []sim.Record, grid startGrid) int {
	var took []float64
	for _, finish := range d.lastFinishes(records) {
		took = append(took, float64(grid.calendar.Scheduled(sim.Micros(finish))))
	}
	if len(took) == 0 {
		return min(grid.most, max(1, int(d.horizon/startStep)))
	}
	return min(grid.most, 1+int(estimate.Quantile(took, d.options.Chance))/int(startStep))
}

// startSearch is such a search on its way.
type startSearch struct {
	*delivery
	last  sim.Micros
	grid  startGrid
	tried map[int]result.Estimate
}

// enough says whether a start so many steps before the date gives the wanted chance.
func (s *startSearch) enough(steps int) (bool, error) {
	if e, known := s.tried[steps]; known {
		return e.Mean >= s.options.Chance, nil
	}
	e, err := s.chance(steps, 1)
	s.tried[steps] = e
	return e.Mean >= s.options.Chance, err
}

// chance is the share of runs in time with such a start; they need not go on beyond the last date, and may not beyond the horizon.
func (s *startSearch) chance(steps, from int) (result.Estimate, error) {
	shift := s.grid.at(steps)
	if s.last <= shift {
		return s.inTime(make([]sim.Record, s.runs), s.due, shift), nil
	}
	s.count.expect(s.runs)
	records, err := s.simulate(shift, from, min(s.horizon, s.last-shift+1))
	if err != nil {
		return result.Estimate{}, err
	}
	return s.inTime(records, s.due, shift), nil
}

// bracket goes from a guess in growing strides to a start that is too late and one that is early enough; early is below 0
// where none is.
func (s *startSearch) bracket(guess int) (late, early int, err error) {
	enough, err := s.enough(guess)
	if err != nil {
		return 0, 0, err
	}
	late, early = guess, guess
	for stride := 2; enough && late > 0; stride *= 2 {
		early, late = late, max(0, late-stride)
		if enough, err = s.enough(late); err != nil {
			return 0, 0, err
		}
	}
	for stride := 2; !enough && late == early; stride *= 2 {
		if early == s.grid.most {
			return late, -1, nil
		}
		next := min(s.grid.most, early+stride)
		if enough, err = s.enough(next); err != nil {
			return 0, 0, err
		}
		late, early = early, next
		if !enough {
			late = early
		}
	}
	return late, early, nil
}

// confirmed runs as many other replications with the start that was found.
func (s *startSearch) confirmed(found *result.LatestStart, steps int) (*result.LatestStart, error) {
	shift := s.grid.at(steps)
	var err error
	if found.Confirmed, err = s.chance(steps, s.runs+1); err != nil {
		return nil, err
	}
	found.Found, found.At, found.ShiftHours, found.InTime = true, s.clock(shift), hours(shift), s.tried[steps]
	if later, known := s.tried[steps-1]; known {
		found.LaterAt, found.Later = s.clock(s.grid.at(steps-1)), later
	}
	return found, nil
}

// startGrid has the starts that are looked at, by whole steps of scheduled time before the last date.
type startGrid struct {
	calendar *sim.Calendar
	// origin is how long before the start of the scenario the calendar is looked at from, due the scheduled time from there
	// to the date.
	origin, due sim.Micros
	// most is the number of steps to the earliest start.
	most int
}

func (d *delivery) gridBefore(last sim.Micros) startGrid {
	g := startGrid{calendar: &d.scenario.Line.Calendar, origin: (earliestWeeks + 1) * week}
	g.due = g.calendar.Scheduled(g.origin + last)
	steps := func(from sim.Micros) int {
		return int((g.due - g.calendar.Scheduled(from) + startStep - 1) / startStep)
	}
	g.most = max(1, steps(week+last%week))
	return g
}

// at is the start so many steps before the date, from that of the scenario: at the end of a shift it is the beginning of the next.
func (g startGrid) at(steps int) sim.Micros {
	scheduled := max(0, g.due-sim.Micros(steps)*startStep)
	t := g.calendar.After(scheduled)
	if next := g.calendar.After(scheduled + 1); next > t+1 {
		t = next - 1
	}
	return t - g.origin
}

// clock is a time as people read it, also before the start of the scenario.
func (d *delivery) clock(t sim.Micros) string {
	if t >= 0 {
		return d.scenario.Calendar.Clock(t)
	}
	weeks := (-t + week - 1) / week
	text, number := d.scenario.Calendar.Clock(t+weeks*week), sim.Micros(1)
	if rest, later := strings.CutPrefix(text, "week "); later {
		var n int
		if _, err := fmt.Sscanf(rest, "%d", &n); err == nil {
			number, text = sim.Micros(n), rest[strings.IndexByte(rest, ' ')+1:]
		}
	}
	switch before := 1 - (number - weeks); before {
	case 0:
		return text
	case 1:
		return text + " of the week before"
	default:
		return fmt.Sprintf("%s, %d weeks before", text, before)
	}
}
