package scenario

import (
	"fmt"
	"reflect"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
)

// pieceRate is a highest rate of pieces, as the time from one piece to the next in microseconds; unit is
// empty if no pieces were named.
type pieceRate struct{ count }

// rangeOfFlows says the range to people; it is that of cycles.
const rangeOfFlows = "a rate is from 1/day to 1000/s; write it as 300/min"

func (p *pieceRate) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&p.number, n, tag, p.parse)
}

func (p *pieceRate) parse(text string) (float64, error) {
	if !quantity.IsRate(text) && !quantity.HasUnit(text) {
		return 0, fmt.Errorf("%q has no unit; write %[1]s/min", strings.TrimSpace(text))
	}
	rate, err := quantity.ParseRate(text)
	if err != nil {
		return 0, err
	}
	p.unit = rate.Of
	if quantity.SameUnit(rate.Of, "cycles") {
		return 0, fmt.Errorf("%q counts cycles, and pieces go here; write it as 300/min", text)
	}
	if outsideCycles(rate.Period()) {
		return 0, fmt.Errorf("%q is out of range; %s", text, rangeOfFlows)
	}
	return rate.Period(), nil
}

// perCycles is how often something happens, as a share of the cycles.
type perCycles struct{ number }

func (p *perCycles) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&p.number, n, tag, parsePerCycles)
}

func parsePerCycles(text string) (float64, error) {
	times, of, found := strings.Cut(text, " per ")
	if !found {
		return 0, fmt.Errorf("%q does not say in how many cycles; write it as 0.3 per 1000 cycles", strings.TrimSpace(text))
	}
	events, err := quantity.Number(times)
	if err != nil {
		return 0, err
	}
	cycles, err := parseMeanCycles(of)
	switch {
	case err != nil:
		return 0, fmt.Errorf("%q does not count cycles; write it as 0.3 per 1000 cycles", strings.TrimSpace(text))
	case cycles <= 0:
		return 0, fmt.Errorf("%q is out of range; the cycles must be more than 0", text)
	case events > cycles:
		return 0, fmt.Errorf("%q is out of range; it must be at most once a cycle", text)
	}
	return events / cycles, nil
}

// meanCycles is a mean number of cycles, which may have a fraction.
type meanCycles struct{ number }

func (m *meanCycles) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&m.number, n, tag, parseMeanCycles)
}

func parseMeanCycles(text string) (float64, error) {
	age, err := quantity.ParseAge(text)
	switch {
	case err != nil && !quantity.HasUnit(text):
		return 0, fmt.Errorf("%q has no unit; write %[1]s cycles", strings.TrimSpace(text))
	case err != nil:
		return 0, err
	case age.Clock != quantity.Cycles:
		return 0, fmt.Errorf("%q is not in cycles; write it as 12 cycles", text)
	}
	return age.Value, nil
}

// heatUp is a time, or none.
type heatUp struct{ duration }

func (h *heatUp) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	if n.Kind == tree.Scalar && n.Text == "none" {
		return
	}
	if n.Kind == tree.Scalar && n.Text != "" && !strings.ContainsAny(n.Text, "0123456789") {
		r.complain(h.at, "%q is not known here; write a time such as 45 min, or none", n.Text)
		return
	}
	h.duration.read(r, n, path, tag)
}

// usualPockets are the empty pockets in a row of empty pocket alone.
const usualPockets = 5

// read takes the bare words wait and empty pocket too.
func (s *stackWords) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	if n.Kind != tree.Scalar {
		s.empty = true
		r.decodeStruct(n, reflect.ValueOf(s).Elem(), path)
		return
	}
	choices := []string{"wait", "empty pocket"}
	switch near, found := Nearest(n.Text, choices); {
	case n.Text == "wait" || n.Text == "":
	case n.Text == "empty pocket":
		s.empty, s.EmptyPocket.value = true, usualPockets
	case found:
		r.complain(s.at, "%q is not known here; did you mean %q? (known: wait, empty pocket, {empty pocket: 5 cycles})", n.Text, near)
	default:
		r.complain(s.at, "%q is not known here; write wait, empty pocket, or {empty pocket: 5 cycles}", n.Text)
	}
}

// read takes a bare time too.
func (w *resetWords) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	if n.Kind == tree.Map {
		r.decodeStruct(n, reflect.ValueOf(w).Elem(), path)
		return
	}
	w.Lasts.put(n, join(path, "lasts"))
	w.Lasts.read(r, n, path, "")
}
