package scenario

import (
	"slices"
	"strconv"
	"strings"

	"tuckline/sim"
)

// wrongIn says that something was complained about at a path or below it.
func (b *resolver) wrongIn(path string) bool {
	return slices.ContainsFunc(b.complaints, func(c Complaint) bool { return c.Path == path || strings.HasPrefix(c.Path, path+".") })
}

// inShift finds the length of a shift and the places of its breaks, and refuses what does not fit into it.
func (b *resolver) inShift(t *shiftTimes, from, to *clockTime, breaks *oneOrMore[breakWords]) {
	if !from.ok || !to.ok {
		return
	}
	if t.from == dayLength {
		b.complain(t.where, "24:00 is the end of a day; a shift that begins at midnight is from 00:00, of the day that begins then")
		return
	}
	if t.lasts = (t.to - t.from + dayLength) % dayLength; t.lasts == 0 {
		b.complain(to.at, "a shift lasts less than 24 h; write two or three that follow each other")
		return
	}
	left := t.lasts - t.startUp - t.tidy
	for i := range breaks.list {
		w := &breaks.list[i]
		if !w.At.ok || w.Lasts.value <= 0 {
			continue
		}
		pause := shiftBreak{w.At.at, (w.At.time - t.from + dayLength) % dayLength, micros(w.Lasts.value)}
		b.checkBreak(t, &pause)
		t.breaks = append(t.breaks, pause)
		left -= pause.lasts
	}
	if left <= 0 {
		b.complain(t.where, "%s is %s long, and nothing of it is left to work in: start-up, breaks and tidy are %s", t.said(), hoursText(t.lasts), hoursText(t.lasts-left))
	}
}

// said is the shift in words.
func (t *shiftTimes) said() string {
	if t.name == overtimeName {
		return overtimeName
	}
	return strconv.Quote(t.name)
}

// checkBreak wants a break inside its shift, beside start-up, tidy and the other breaks.
func (b *resolver) checkBreak(t *shiftTimes, pause *shiftBreak) {
	end := pause.begin + pause.lasts
	clock := func(after sim.Micros) string { return clockWords((t.from + after) % dayLength) }
	switch {
	case pause.begin >= t.lasts || end > t.lasts:
		b.complain(pause.where, "this break does not lie within %s, from %s to %s: it would be from %s to %s", t.said(), clockWords(t.from), clockWords(t.to), clock(pause.begin), clock(end))
	case pause.begin < t.startUp:
		b.complain(pause.where, "this break overlaps the start-up of %s, which lasts until %s; it can begin then", t.said(), clock(t.startUp))
	case end > t.lasts-t.tidy:
		b.complain(pause.where, "this break lasts until %s and overlaps the tidy of %s, which begins at %s", clock(end), t.said(), clock(t.lasts-t.tidy))
	}
	for i := range t.breaks {
		if other := &t.breaks[i]; pause.begin < other.begin+other.lasts && other.begin < end {
			b.complain(pause.where, "this break overlaps the one from %s to %s (%s)", clock(other.begin), clock(other.begin+other.lasts), placeWords(other.where))
		}
	}
}

// placeWords says where something else stands.
func placeWords(where at) string {
	return "line " + strconv.Itoa(where.node.Line) + ", column " + strconv.Itoa(where.node.Column)
}

// checkStretches refuses shifts that overlap, and cleaning that overlaps cleaning.
func (b *resolver) checkStretches(shifts, cleaning []*shiftTimes) {
	for _, all := range [][]*shiftTimes{shifts, cleaning} {
		for i, later := range all {
			for _, first := range all[:i] {
				b.checkOverlap(first, later)
			}
			b.checkOverlap(later, later)
		}
	}
}

// checkOverlap complains about the first day on which two overlap.
func (b *resolver) checkOverlap(first, later *shiftTimes) {
	for _, one := range first.stretches() {
		for _, other := range later.stretches() {
			if first == later && one.begin == other.begin || first.anyDay != later.anyDay || one.lasts == 0 || other.lasts == 0 {
				continue
			}
			_, inOne := one.holds(other.begin)
			_, inOther := other.holds(one.begin)
			if !inOne && !inOther {
				continue
			}
			b.complain(later.where, "%s from %s to %s overlaps %s from %s to %s (%s); one has to end before the other begins",
				later.said(), other.beginWords(), other.endWords(), first.said(), one.beginWords(), one.endWords(), placeWords(first.where))
			return
		}
	}
}

func (s *stretch) beginWords() string { return s.clockWords(s.begin) }
func (s *stretch) endWords() string   { return s.clockWords(s.begin + s.lasts) }

// clockWords is a time of the week, without the day where that is not known.
func (s *stretch) clockWords(t sim.Micros) string {
	if s.times.anyDay {
		return clockWords(t % dayLength)
	}
	return weekClock{time: t % weekLength}.words()
}
