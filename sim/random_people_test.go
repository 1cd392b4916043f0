package sim_test

import (
	"fmt"

	"pgregory.net/rapid"

	"tuckline/sim"
)

// workingTime draws a calendar for one line in three. The first span is always one in which lines and crews work.
func (l *liner) workingTime() {
	if !l.chance("calendar", 3) {
		return
	}
	l.line.Calendar.Spans = []sim.Span{{Lasts: l.time("works", 50_000, 20*s)}}
	for range l.count("spans", 0, 5) {
		span := sim.Span{
			Lasts: l.time("span", 50_000, 12*s), Shift: l.count("shift", -1, 2),
			Line: sim.LineTime(l.count("line", 0, 2)), Crews: sim.CrewTime(l.count("crews are", 0, 2)),
		}
		if l.chance("break of all", 3) {
			span.Shift, span.Line, span.Crews = l.line.Calendar.Spans[len(l.line.Calendar.Spans)-1].Shift, sim.LineStands, sim.CrewsRest
		}
		l.line.Calendar.Spans = append(l.line.Calendar.Spans, span)
	}
}

func (l *liner) crews() {
	for i := range l.count("crews", 0, 2) {
		crew := sim.Crew{Name: fmt.Sprintf("crew %d", i), People: l.count("people", 1, 3)}
		if l.chance("elsewhere", 3) {
			crew.ElsewhereShare, crew.ElsewhereSpell = 0.3, l.time("spell", 100_000, 5*s)
		}
		if l.chance("walk", 4) {
			crew.Walk = l.law("way", 50_000, 2*s)
		}
		if l.chance("response", 4) {
			crew.Response = l.law("sets out", 50_000, 2*s)
		}
		l.byShift(&crew)
		l.line.Crews = append(l.line.Crews, crew)
	}
	if len(l.line.Crews) == 2 && l.chance("helps", 3) {
		helper := l.count("helper", 0, 1)
		l.line.Crews[helper].CanAlso = []string{l.line.Crews[1-helper].Name}
		if l.chance("each other", 2) {
			l.line.Crews[1-helper].CanAlso = []string{l.line.Crews[helper].Name}
		}
	}
}

// byShift gives a crew numbers by shift: all are there on the first.
func (l *liner) byShift(crew *sim.Crew) {
	spans := l.line.Calendar.Spans
	if len(spans) == 0 {
		return
	}
	if l.chance("by shift", 2) {
		crew.ByShift = []int{crew.People}
		for i := range spans {
			for len(crew.ByShift) <= spans[i].Shift {
				crew.ByShift = append(crew.ByShift, l.count("on a shift", 0, 3))
			}
		}
	}
	if l.chance("in breaks", 2) {
		crew.InBreaks = l.count("stay", 0, 4)
	}
}

// relief adds people who come for the breaks of a crew only.
func (l *liner) relief() {
	if len(l.line.Calendar.Spans) == 0 || len(l.line.Crews) == 0 || !l.chance("relief", 3) {
		return
	}
	of := rapid.SampledFrom(l.line.Crews).Draw(l.t, "relief of")
	l.line.Crews = append(l.line.Crews, sim.Crew{
		Name: "a relief", InBreaks: l.count("relief people", 1, 2), Relief: true, CanAlso: []string{of.Name},
	})
}
