package study

import (
	"context"
	"crypto/sha256"
	"encoding/binary"
	"math"
	"slices"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// agreedLine is a line with the speed that its efficiency refers to.
type agreedLine struct {
	scenario *scenario.Scenario
	model    *sim.Model
	// full is an efficiency of 100 %, in answer pieces a minute.
	full float64
}

// spell is a part of a run in which the output counts, in scheduled time from the start of the line.
type spell struct{ from, lasts sim.Micros }

func (a *agreedLine) agreedRun() spell {
	return spell{a.scenario.Agreement.From, a.scenario.Agreement.Run}
}

// works is the time of a spell in which the calendar lets the line work: breaks and other times in which it stands are nothing that a run
// could show.
func (a *agreedLine) works(s spell) sim.Micros {
	calendar := &a.scenario.Line.Calendar
	begin := calendar.After(s.from)
	return a.worksBy(begin, calendar.After(s.from+s.lasts))
}

// worksBy is the same between two times of the clock.
func (a *agreedLine) worksBy(begin, end sim.Micros) sim.Micros {
	calendar := &a.scenario.Line.Calendar
	works := calendar.Scheduled(end) - calendar.Scheduled(begin)
	for _, stands := range standing(calendar, begin, end-begin) {
		works -= stands
	}
	return works
}

// withoutOrders is a scenario whose line makes the same product on and on: an acceptance run has no changeover.
func withoutOrders(s *scenario.Scenario) *scenario.Scenario {
	if len(s.Line.Orders.List) == 0 {
		return s
	}
	one := *s
	one.Line.Orders, one.Orders, one.Run.UntilOrders = sim.Orders{}, nil, false
	return &one
}

// options are those of a run; a spell of scheduled time lasts longer by the clock.
func (a *agreedLine) optionsOf(seed uint64, s spell, replication int) sim.Options {
	calendar := &a.scenario.Line.Calendar
	begin, end := calendar.After(s.from), calendar.After(s.from+s.lasts)
	return sim.Options{Seed: seed, Replication: replication, WarmUp: begin, Measure: end - begin}
}

// scaled is the model of the line with all stop rates multiplied by a factor.
func (a *agreedLine) scaled(factor float64) (*sim.Model, error) {
	if factor == 1 {
		return a.model, nil
	}
	line := a.scenario.Line
	line.Stations, line.Buffers = slices.Clone(line.Stations), slices.Clone(line.Buffers)
	scale := func(stops []sim.Stop) []sim.Stop {
		stops = slices.Clone(stops)
		for i := range stops {
			if stops[i].RateFactor == 0 {
				stops[i].RateFactor = 1
			}
			stops[i].RateFactor *= factor
		}
		return stops
	}
	for i := range line.Stations {
		line.Stations[i].Stops = scale(line.Stations[i].Stops)
	}
	for i := range line.Buffers {
		line.Buffers[i].Stops = scale(line.Buffers[i].Stops)
	}
	return sim.Compile(line)
}

// stops says that a factor changes anything.
func (a *agreedLine) stops() bool {
	for i := range a.scenario.Line.Stations {
		if len(a.scenario.Line.Stations[i].Stops) > 0 {
			return true
		}
	}
	return slices.ContainsFunc(a.scenario.Line.Buffers, func(b sim.Buffer) bool { return len(b.Stops) > 0 })
}

// efficiencies are the line efficiencies that runs of the line with a factor show. Runs of one purpose share their luck from factor to
// factor.
func (a *acceptance) efficiencies(purpose string, factor float64, s spell, runs int) ([]float64, error) {
	records, err := a.records(purpose, factor, runs, func(o *sim.Options) {}, s)
	if err != nil {
		return nil, err
	}
	good := GoodPieces(a.scenario)
	shown := make([]float64, len(records))
	for i := range records {
		shown[i] = float64(good(&records[i])) / (a.full * minutes(a.works(s)))
	}
	return shown, nil
}

func (a *acceptance) records(purpose string, factor float64, runs int, more func(*sim.Options), s spell) ([]sim.Record, error) {
	model, err := a.scaled(factor)
	if err != nil {
		return nil, err
	}
	seed := seedOf(purpose, a.scenario.Run.Seed)
	p := pass{
		from: 1, to: runs, workers: a.options.Workers, finished: a.count.finished,
		newEngine: func() engine { return model.NewEngine() },
		options: func(replication int) sim.Options {
			o := a.optionsOf(seed, s, replication)
			more(&o)
			return o
		},
	}
	records := p.run(a.ctx)
	if a.ctx.Err() != nil {
		return nil, context.Cause(a.ctx)
	}
	return records, locked(records)
}

// seedOf gives the runs of one purpose streams that no others have.
func seedOf(purpose string, seed uint64) uint64 {
	sum := sha256.Sum256(binary.BigEndian.AppendUint64([]byte(purpose), seed))
	return binary.BigEndian.Uint64(sum[:])
}

func cvOf(variance, mean float64) float64 {
	if mean == 0 {
		return 0
	}
	return math.Sqrt(max(0, variance)) / mean
}
