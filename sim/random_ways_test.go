package sim_test

import (
	"fmt"
	"slices"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// split gives every taker a buffer of its own; the feeder chooses.
func (l *liner) split(stage int, feeder int, takers []int) {
	l.afterCycle(feeder)
	var to []string
	for j, k := range takers {
		name := fmt.Sprintf("branch %d.%d", stage, j)
		l.buffer(name, l.names([]int{feeder}), []int{k}, l.chance("branch belt", 3))
		to = append(to, name)
	}
	rule := sim.SendRule(l.count("rule", 0, 2))
	l.line.Stations[feeder].Sends = sim.Sends{To: permuted(l.t, to), Rule: rule}
}

// afterCycle lets a station and all on its drive block after the cycle.
func (l *liner) afterCycle(i int) {
	drive := l.line.Stations[i].Coupled
	for k := range l.line.Stations {
		if st := &l.line.Stations[k]; k == i || drive != "" && st.Coupled == drive {
			st.BlocksBefore = false
		}
	}
}

// couple puts a station on the drive of the one before it, which hands over to it.
func (l *liner) couple(before, i int) {
	a, b := &l.line.Stations[before], &l.line.Stations[i]
	if a.Coupled == "" {
		a.Coupled = "drive of " + a.Name
	}
	b.Coupled = a.Coupled
	b.Takes, b.Gives = a.Gives, a.Gives // one for one: stations before it may reject
	b.Steps, b.Group, b.Ramp, b.HeatRecovery = nil, sim.Group{}, 0, 0
	b.LoadsWhileStopped, a.LoadsWhileStopped = false, false
	l.afterCycle(i)
}

// assemble gives a station a second input, from a source of its own.
func (l *liner) assemble(i int) {
	side := l.station(0, 100+i)
	takes := l.pieces("takes of the side", 1, 4)
	side.BlocksBefore = false
	b := sim.Buffer{Name: "side buffer " + side.Name, From: []string{side.Name}}
	b.Holds = side.Gives + takes - 1 + l.pieces("side places", 0, 6) // waits there for the other input
	l.line.Stations = append(l.line.Stations, side)
	l.line.Buffers = append(l.line.Buffers, b)
	l.line.Stations[i].Also = append(l.line.Stations[i].Also, sim.Input{From: b.Name, Takes: takes})
}

// extras gives stations, stops and buffers what few lines have.
func (l *liner) extras() {
	for i := range l.line.Stations {
		st := &l.line.Stations[i]
		if l.chance("priority", 4) {
			st.Priority = l.count("taker's priority", 1, 9)
		}
		if st.Coupled == "" && l.chance("loads", 5) {
			st.LoadsWhileStopped = true
		}
		l.pockets(st)
		for j := range st.Stops {
			l.stopExtras(st, j)
		}
		for j := range st.AfterStop {
			if l.chance("scrap by time", 4) {
				st.AfterStop[j].Lasts = l.time("scrap lasts", 50_000, 4*s)
			}
		}
	}
	for i := range l.line.Buffers {
		l.bufferExtras(&l.line.Buffers[i])
	}
}

func (l *liner) stopExtras(st *sim.Station, j int) {
	st.Stops[j].Scraps = l.chance("scraps", 5)
	for k := range st.Stops {
		if k != j && l.chance("renews", 5) {
			st.Stops[j].Renews = append(st.Stops[j].Renews, st.Stops[k].Name)
		}
	}
}

func (l *liner) bufferExtras(b *sim.Buffer) {
	if len(b.From) > 1 {
		switch l.count("turns", 0, 4) {
		case 1:
			b.Turns.Alternate = true
		case 2:
			b.Turns.First = rapid.SampledFrom(b.From).Draw(l.t, "goes first")
		}
	}
	gives, takes := int64(1), int64(0)
	for i := range l.line.Stations {
		st := &l.line.Stations[i]
		if slices.Contains(b.From, st.Name) {
			gives = max(gives, st.Gives)
		}
		if st.From == b.Name {
			takes = max(takes, st.Takes)
		}
	}
	high := b.Holds - gives + 1
	if b.StopUpstream > 0 {
		high = min(high, b.StopUpstream) // the level is sure to reach it
	}
	if b.Restart.On {
		high = min(high, b.Restart.Level+1) // with less the feeders go on
	}
	if takes > 0 && high >= takes && l.chance("start level", 3) {
		b.Start = sim.Level{On: true, Level: l.pieces("start downstream", takes, high)}
	}
}
