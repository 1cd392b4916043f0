package scenario

import (
	"fmt"
	"reflect"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// takesWords is what a cycle takes: pieces of the place before the station, or
// pieces of several places by their names. The count is that of the first.
type takesWords struct {
	count
	inputs []takenFrom
}

// takenFrom is what a station that assembles takes from one place.
type takenFrom struct {
	name  string
	place at // of the name
	count
}

func (t *takesWords) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	if n.Kind != tree.Map || hasKey(n, "likely") {
		t.count.read(r, n, path, tag)
		return
	}
	if len(n.Entries) == 0 {
		r.complain(t.at, "nothing is written inside; write takes: 3 blisters, or the places that it takes from: {transfer store: 3 blisters, leaflets: 1}")
	}
	for _, e := range n.Entries {
		t.add(r, e, path, tag)
	}
	if len(t.inputs) > 0 {
		t.count = t.inputs[0].count
	}
}

// add reads what is taken from one place.
func (t *takesWords) add(r *reader, e tree.Entry, path string, tag reflect.StructTag) {
	one := takenFrom{name: e.Key.Text, place: at{e.Key, join(path, e.Key.Text)}}
	for i := range t.inputs {
		if t.inputs[i].name == one.name {
			r.complain(one.place, "%q is written twice; one of them has to go", one.name)
			return
		}
	}
	if e.Value.Kind == tree.Null {
		r.complain(one.place, "%q has no value; say how many of its pieces a cycle takes, such as 1 leaflet", one.name)
		return
	}
	one.put(e.Value, one.place.path)
	r.index[one.place.path] = e.Value
	one.count.read(r, e.Value, one.place.path, tag)
	t.inputs = append(t.inputs, one)
}

// counts are those of all places, the main one first.
func (t *takesWords) counts() []count {
	if len(t.inputs) == 0 {
		return []count{t.count}
	}
	var all []count
	for i := range t.inputs {
		all = append(all, t.inputs[i].count)
	}
	return all
}

// sendsWords is how a station with several places behind it chooses.
type sendsWords struct {
	at
	To   oneOrMore[text] `yaml:"to" need:"yes" about:"The places or stations behind it among which it chooses, at least two, in the order of the rule. One without from is fed by this station." eg:"[branch a, branch b]"`
	Rule choice          `yaml:"rule" need:"yes" of:"in turn|first with room|fewest pieces" about:"in turn goes through the list and waits for the one whose turn it is; first with room takes the first of the list that has room; fewest pieces the one with room that has the fewest, those on the machine behind it included." eg:"in turn"`
}

func (*sendsWords) section() string { return "sends" }

// sendRules are the words of the rules.
var sendRules = map[string]sim.SendRule{
	"in turn": sim.InTurn, "first with room": sim.FirstWithRoom, "fewest pieces": sim.FewestPieces,
}

// turnsWords is who of several feeders that wait for room goes first.
type turnsWords struct {
	at
	alternate bool
	// first is the name in NAME first.
	first string
}

// turnsChoices says them to people.
const turnsChoices = "write longest waiting, alternate, or NAME first with the name of a feeder"

func (t *turnsWords) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	text, ok := r.scalar(t.at, n)
	if !ok {
		return
	}
	name, first := strings.CutSuffix(text, " first")
	switch {
	case text == "longest waiting":
	case text == "alternate":
		t.alternate = true
	case first:
		t.first = strings.TrimSpace(name)
	default:
		if near, found := Nearest(text, []string{"longest waiting", "alternate"}); found {
			r.complain(t.at, "%q is not known here; did you mean %q? (%s)", text, near, turnsChoices)
			return
		}
		r.complain(t.at, "%q is not known here; %s", text, turnsChoices)
	}
}

// scrapAmount is how much is scrapped: cycles, or all cycles of a running time in
// microseconds.
type scrapAmount struct {
	cycles
	inTime bool
}

func (s *scrapAmount) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&s.number, n, tag, func(text string) (float64, error) {
		if micros, err := quantity.Duration(text); err == nil {
			s.inTime = true
			return micros, nil
		}
		cycles, err := parseCycles(text)
		if err != nil && !quantity.HasUnit(text) {
			err = fmt.Errorf("%q has no unit; write %[1]s cycles, or %[1]s s", strings.TrimSpace(text))
		}
		return cycles, err
	})
}
