package sim_test

import (
	"slices"

	"tuckline/sim"
)

// buffer adds a buffer or belt of at least the least capacity: max(gives, takes) − 1,
// and gives + takes − 1 where pieces cannot pass straight through.
func (l *liner) buffer(name string, feeders []string, takers []int, transit bool) {
	gives, takes, reserved := int64(1), int64(1), false
	for i := range l.line.Stations {
		for _, f := range feeders {
			if st := &l.line.Stations[i]; st.Name == f {
				gives, reserved = max(gives, st.Gives), reserved || st.BlocksBefore
			}
		}
	}
	for _, i := range takers {
		st := &l.line.Stations[i]
		st.From, takes = name, max(takes, st.Takes)
	}
	b := sim.Buffer{Name: name, From: feeders}
	least := max(gives, takes) - 1
	if transit {
		b.Transit, b.Conveyor = l.time("transit", 50_000, 3*s), true
	}
	if transit || reserved {
		least = gives + takes - 1
	}
	b.Holds = least + max(0, l.pieces("more places", -3, 12))
	if !transit && l.chance("unlimited", 12) {
		b.Holds = sim.Unlimited
	}
	if l.chance("smallest", 12) {
		b.Holds = sim.Smallest
	}
	l.levels(&b, gives, takes)
	if b.Holds > 0 && l.chance("filled", 4) {
		b.AtStart = l.pieces("at start", 0, b.Holds)
	}
	l.line.Buffers = append(l.line.Buffers, b)
}

// levels adds levels with which the line cannot lock: below stop upstream there is one
// take, and restart is reached although less than one take may stay.
func (l *liner) levels(b *sim.Buffer, gives, takes int64) {
	if b.Holds < 0 { // unlimited, or the smallest number
		return
	}
	if b.Holds >= takes && l.chance("stop level", 3) {
		b.StopUpstream = l.pieces("stop upstream", takes, b.Holds)
	}
	high := b.Holds + l.places(b.From) - gives
	if b.StopUpstream > 0 {
		high = min(high, b.StopUpstream-1)
	}
	if high >= takes-1 && l.chance("restart level", 3) {
		b.Restart = sim.Level{On: true, Level: l.pieces("restart upstream", takes-1, high)}
	}
}

// places counts the places of those of the feeders that are buffers: the restart level
// counts their pieces too.
func (l *liner) places(feeders []string) int64 {
	total := int64(0)
	for i := range l.line.Buffers {
		if b := &l.line.Buffers[i]; slices.Contains(feeders, b.Name) {
			total += max(0, b.Holds) // at least; a buffer without limit counts as none here
		}
	}
	return total
}
