package scenario

import (
	"fmt"
	"reflect"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
)

// number is a value of the file in base units: microseconds, micrometres,
// shares. Its range is in the tag of the field; without one it is at least 0.
type number struct {
	at
	value float64
}

// parser reads the text of a value.
type parser func(text string) (float64, error)

// readNumber reads a number, or {likely, low, high} in its place.
func (r *reader) readNumber(into *number, n *tree.Node, tag reflect.StructTag, parse parser) {
	if n.Kind == tree.Map {
		n = r.guess(into.at, n, tag, parse)
	}
	if n == nil {
		return
	}
	text, ok := r.scalar(into.at, n)
	if !ok {
		return
	}
	value, err := parse(text)
	if err == nil {
		err = inRange(text, value, tag, parse)
	}
	if err != nil {
		if eg := tag.Get("eg"); eg != "" && !strings.ContainsAny(text, "0123456789") {
			err = fmt.Errorf("%w; write it as %s", err, eg)
		}
		r.complain(at{n, into.path}, "%v", err)
		return
	}
	into.value = value
}

// scalar is the text of a single value.
func (r *reader) scalar(where at, n *tree.Node) (string, bool) {
	switch {
	case n.Kind == tree.Scalar && n.Text != "":
		return n.Text, true
	case n.Kind == tree.Broken:
	case n.Kind == tree.Null || n.Kind == tree.Scalar:
		r.complain(at{n, where.path}, "a value is missing here")
	default:
		r.complain(at{n, where.path}, "this is %s; here belongs a single value", n.KindWord())
	}
	return "", false
}

// inRange checks a value against the tags least, above and most, which have the
// same units as the value itself.
func inRange(text string, value float64, tag reflect.StructTag, parse parser) error {
	bound := func(name string) (string, float64) {
		limit := tag.Get(name)
		if limit == "" {
			return "", 0
		}
		at, err := parse(limit)
		if err != nil {
			panic("a range in the words of the format cannot be read: " + limit)
		}
		return limit, at
	}
	if limit, low := bound("above"); limit != "" && value <= low {
		return fmt.Errorf("%q is out of range; it must be more than %s", text, limit)
	}
	if limit, low := bound("least"); limit != "" && value < low {
		return fmt.Errorf("%q is out of range; it must be at least %s", text, limit)
	}
	if limit, high := bound("most"); limit != "" && value > high {
		return fmt.Errorf("%q is out of range; it must be at most %s", text, limit)
	}
	if limit, high := bound("below"); limit != "" && value >= high {
		return fmt.Errorf("%q is out of range; it must be less than %s", text, limit)
	}
	if value < 0 {
		return fmt.Errorf("%q is negative; it must be at least 0", text)
	}
	return nil
}

// guess reads {likely, low, high}: the likely value is used, the range checked
// and noted, since this version does not vary it.
func (r *reader) guess(where at, n *tree.Node, tag reflect.StructTag, parse parser) *tree.Node {
	if _, found := n.Get("likely"); !found {
		r.complain(at{n, where.path}, "this is a group of words; here belongs a single value, or {likely: …, low: …, high: …}")
		return nil
	}
	ends := map[string]number{}
	for _, e := range n.Entries {
		key := e.Key.Text
		if key != "likely" && key != "low" && key != "high" {
			r.complain(at{e.Key, where.path}, "%q is not a word of a guessed range; it knows likely, low, high", key)
			continue
		}
		one := number{at: at{e.Value, join(where.path, key)}}
		if key != "likely" {
			r.readNumber(&one, e.Value, tag, parse)
		} else if text, ok := r.scalar(one.at, e.Value); ok {
			one.value, _ = parse(text)
		}
		r.index[one.path] = e.Value
		ends[key] = one
	}
	likely, _ := n.Get("likely")
	r.checkGuess(where, n, ends)
	return likely
}

func (r *reader) checkGuess(where at, n *tree.Node, ends map[string]number) {
	low, hasLow := ends["low"]
	high, hasHigh := ends["high"]
	likely := ends["likely"]
	switch {
	case !hasLow || !hasHigh:
		r.complain(at{n, where.path}, "a guessed range needs all of likely, low and high")
	case likely.value < min(low.value, high.value) || likely.value > max(low.value, high.value):
		r.complain(likely.at, "the likely value lies outside of low and high")
	default:
		r.warn("%s is a guessed range: the likely value is used, its range is not used yet.", where.path)
	}
}

// The single values, by what they measure.
type (
	// duration is a time in microseconds.
	duration struct{ number }
	// length is in micrometres, mass in milligrams, speed in micrometres a second.
	length struct{ number }
	mass   struct{ number }
	speed  struct{ number }
	// share is a percentage as a number from 0 to 1.
	share struct{ number }
	// fraction is a share that may be written bare: 0.45 or 45 %.
	fraction struct{ number }
	// factor is a bare number.
	factor struct{ number }
	// pace is a highest speed, as the time of one cycle in microseconds.
	pace struct{ number }
)

func (d *duration) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&d.number, n, tag, quantity.Duration)
}

func (l *length) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&l.number, n, tag, quantity.Length)
}

func (m *mass) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&m.number, n, tag, quantity.Mass)
}

func (s *speed) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&s.number, n, tag, quantity.Speed)
}

func (s *share) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&s.number, n, tag, quantity.Share)
}

func (f *fraction) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&f.number, n, tag, func(text string) (float64, error) {
		if quantity.IsShare(text) {
			return quantity.Share(text)
		}
		return quantity.Number(text)
	})
}

func (f *factor) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&f.number, n, tag, quantity.Number)
}

func (p *pace) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&p.number, n, tag, cycleTime)
}
