package scenario

import (
	"tuckline/internal/scenario/tree"
)

// resolver makes the model from the words: names become neighbours, levels
// become pieces, diameters become lengths.
type resolver struct {
	*reader
	s     *Scenario
	words *fileWords
	flow  flow
	units units
	// laned has, by the name of a station with lanes, the name of the station that they compile into.
	laned map[string]string
}

// resolve fills in the scenario.
func (r *reader) resolve(s *Scenario, words *fileWords, root *tree.Node) {
	r.firstKey(root)
	b := &resolver{reader: r, s: s, words: words, laned: map[string]string{}}
	b.joinLines()
	if len(words.Line.entries) == 0 || r.ambiguous {
		return
	}
	b.texts()
	b.calendar()
	b.crews()
	b.addLanes()
	b.findFlow()
	b.findUnits()
	for _, e := range b.flow.entries {
		s.names = append(s.names, e.name.value)
		switch {
		case e.station != nil:
			b.station(e)
		case e.conveyor != nil:
			b.conveyor(e)
		case e.buffer != nil:
			b.buffer(e)
		}
	}
	b.productionLines()
	b.speedSteps()
	b.stopsWith()
	b.streams()
	b.answer()
	b.product()
	b.orders()
	b.run()
	b.keyFigures()
	b.agreement()
	b.compile()
}

// firstKey wants the key that says what the file is at its head.
func (r *reader) firstKey(root *tree.Node) {
	if root.Kind != tree.Map || len(root.Entries) == 0 {
		return
	}
	if first := root.Entries[0].Key; first.Text != "tuckline" {
		if _, found := root.Get("tuckline"); found {
			r.complain(at{first, ""}, "the first key of a scenario is tuckline: 1; put it above this one")
		}
	}
}

// texts copies what is only read by people.
func (b *resolver) texts() {
	b.s.Title, b.s.Question = b.words.Title.value, b.words.Question.value
	p := b.words.Project
	b.s.Project = Project{p.Client.value, p.Number.value, p.Revision.value, p.Status.value}
}
