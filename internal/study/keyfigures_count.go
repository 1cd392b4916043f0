package study

import (
	"slices"

	"tuckline/internal/keyfigure"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// figuring is what key figures are computed from, for each station and for the line, replication by replication.
type figuring struct {
	view
	clock clockOf
	good  func(*sim.Record) int64
}

func (v view) figuring() figuring {
	return figuring{v, newClock(v.scenario, v.model), GoodPieces(v.scenario)}
}

// limitOf is the place of a limit of minor stops in what records were made for.
func (f figuring) limitOf(by scenario.Counting) int {
	return slices.Index(f.scenario.KeyFigures.MinorLimits(), by.MinorUpTo)
}

// rate is the speed from which the planned run time comes.
func (f figuring) rate(station int, by scenario.Counting) keyfigure.Rate {
	if by.AtTopSpeed {
		return f.figures.Stations[station].Top
	}
	return f.figures.Stations[station].Set
}

// station counts one station in its own pieces.
func (f figuring) station(r *sim.Record, station int, by scenario.Counting) keyfigure.Counted {
	one := &r.Stations[station]
	t := f.clock.times(r, station)
	c := f.counted(t, by)
	c.Counts = keyfigure.ISOCounts{
		Produced: float64(made(one)), Good: float64(goodGiven(one)), PlannedRunTime: 1 / f.rate(station, by).Pieces,
	}
	c.Run = keyfigure.ENRun{
		Operating: minutes(t.operating()), External: minutes(t.external), SetOutput: f.figures.Stations[station].Set.Pieces,
		Made: c.Counts.Produced, Good: c.Counts.Good,
	}
	return c
}

func (f figuring) counted(t machineTime, by scenario.Counting) keyfigure.Counted {
	return keyfigure.Counted{
		Times: t.count(by, f.limitOf(by)), Running: minutes(t.running), Scheduled: minutes(t.window - t.offShift), Weight: 1,
	}
}

// sideBySide are the stations that limit the line, of several one behind the other the first alone: what they make is
// the same pieces.
func (f figuring) sideBySide() (all []int) {
	for _, i := range f.figures.Limiting() {
		name := f.scenario.Line.Stations[i].Name
		if !slices.ContainsFunc(all, func(k int) bool {
			other := f.scenario.Line.Stations[k].Name
			return slices.Contains(upstream(f.scenario.Line, name), other) || slices.Contains(upstream(f.scenario.Line, other), name)
		}) {
			all = append(all, i)
		}
	}
	return all
}

// line counts the whole line at the station that limits it: its times, and as good what comes to the count. Quality is then
// what is lost anywhere from there, and what the places behind it hold more than before.
func (f figuring) line(r *sim.Record, by scenario.Counting) keyfigure.Counted {
	var c keyfigure.Counted
	for _, i := range f.sideBySide() {
		t, s := f.clock.times(r, i), &f.figures.Stations[i]
		one := f.counted(t, by)
		one.Counts.Produced = float64(made(&r.Stations[i]))
		one.Run = keyfigure.ENRun{Operating: minutes(t.operating()), External: minutes(t.externalToLine), Made: one.Counts.Produced}
		c.Add(one, f.rate(i, by).Answer, s.Set.Answer, s.PerPiece)
	}
	c.Counts.Good = float64(f.good(r))
	c.Run.Good = c.Counts.Good
	return c
}
