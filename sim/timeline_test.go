package sim_test

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tuckline/sim"
)

// course is a line whose course was computed by hand.
type course struct {
	line    sim.Line
	warmUp  sim.Micros
	measure sim.Micros
	// want has a line for every instant at which a state or a level changes:
	// the time in seconds, then the changes; what follows # is the computation.
	want string
	// counts has some or all figures of the record, see figures.
	counts string
	// end is the reason for the end; empty means the horizon.
	end string
}

// follow runs the line and compares every change with the hand computation.
func (c course) follow(t *testing.T) sim.Record {
	t.Helper()
	m := compile(t, c.line)
	var trace sim.Trace
	o := sim.Options{Seed: 1, WarmUp: c.warmUp, Measure: c.measure, Trace: &trace}
	rec := m.NewEngine().Run(o)
	sameText(t, "course", plainLines(c.want), timeline(c.line, m, &trace))
	compareCounts(t, figures(m, c.line, &rec), c.counts)
	if end := cmp.Or(c.end, "horizon"); rec.End.String() != end {
		t.Errorf("the run ended with %q, not %q", rec.End, end)
	}
	for _, fault := range faults(c.line, m, o, &rec, &trace) {
		t.Error(fault)
	}
	return rec
}

// plainLines takes comments and blank lines away.
func plainLines(text string) []string {
	var lines []string
	for line := range strings.Lines(text) {
		line, _, _ = strings.Cut(line, "#")
		if fields := strings.Fields(line); len(fields) > 0 {
			lines = append(lines, strings.Join(fields, " "))
		}
	}
	return lines
}

func sameText(t *testing.T, what string, want, got []string) {
	t.Helper()
	if slices.Equal(want, got) {
		return
	}
	for i := range max(len(want), len(got)) {
		w, g := "-", "-"
		if i < len(want) {
			w = want[i]
		}
		if i < len(got) {
			g = got[i]
		}
		mark := "  "
		if w != g {
			mark = "! "
		}
		t.Logf("%s%-60s | %s", mark, w, g)
	}
	t.Errorf("the %s differs: by hand on the left, by the engine on the right", what)
}

// change is one entry of a timeline; order puts stations before places.
type change struct {
	at    sim.Micros
	order int
	text  string
}

// timeline writes a trace as text, an instant a line.
func timeline(line sim.Line, m *sim.Model, trace *sim.Trace) []string {
	changes := append(stateChanges(line, m, trace), levelChanges(line, m, trace)...)
	slices.SortStableFunc(changes, func(a, b change) int {
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.order, b.order))
	})
	var lines []string
	for i, c := range changes {
		if i > 0 && changes[i-1].at == c.at {
			lines[len(lines)-1] += ", " + c.text
			continue
		}
		lines = append(lines, seconds(c.at)+" "+c.text)
	}
	return lines
}

func seconds(t sim.Micros) string {
	return strconv.FormatFloat(float64(t)/1e6, 'f', -1, 64)
}

func stateChanges(line sim.Line, m *sim.Model, trace *sim.Trace) []change {
	var all []change
	for _, s := range trace.States {
		text := line.Stations[s.Station].Name + " " + s.State.String()
		switch {
		case s.By >= 0 && s.By == s.Station:
			text += " (" + m.StopNames(s.By)[s.Stop] + ")"
		case s.By >= 0:
			text += " (" + line.Stations[s.By].Name + " " + m.StopNames(s.By)[s.Stop] + ")"
		}
		all = append(all, change{s.At, s.Station, text})
	}
	return all
}

// levelChanges leaves out that a place is empty at first.
func levelChanges(line sim.Line, m *sim.Model, trace *sim.Trace) []change {
	var all []change
	last := map[int]int64{}
	for _, l := range trace.Levels {
		if l.Level == last[l.Buffer] {
			continue
		}
		last[l.Buffer] = l.Level
		text := m.Places()[l.Buffer].Name + " " + strconv.FormatInt(l.Level, 10)
		all = append(all, change{l.At, len(line.Stations) + l.Buffer, text})
	}
	return all
}
