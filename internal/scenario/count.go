package scenario

import (
	"fmt"
	"reflect"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// count is a number of pieces; unit is empty if only the number was written.
type count struct {
	number
	unit string
}

// whole is a bare whole number, such as that of replications.
type whole struct{ number }

// cycles is a number of cycles.
type cycles struct{ number }

// places is the capacity of a buffer: pieces, or unlimited.
type places struct{ count }

// level is a level of a buffer: a percentage of its places, or pieces.
type level struct {
	count
	percent bool
}

// use is what a cycle draws from a stock: a length of web, or pieces.
type use struct {
	count
	web bool
}

func (c *count) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&c.number, n, tag, c.parse)
}

func (c *count) parse(text string) (float64, error) {
	pieces, err := quantity.ParseCount(text)
	if pieces.Unit != "" {
		c.unit = pieces.Unit
	}
	return float64(pieces.N), err
}

func (c *count) pieces() int64 { return int64(c.value) }

func (w *whole) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&w.number, n, tag, func(text string) (float64, error) {
		value, err := quantity.Whole(text)
		return float64(value), err
	})
}

func (c *cycles) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&c.number, n, tag, parseCycles)
}

func parseCycles(text string) (float64, error) {
	pieces, err := quantity.ParseCount(text)
	switch {
	case err == nil && pieces.Unit == "":
		err = fmt.Errorf("%q has no unit; write %[1]s cycles", text)
	case err == nil && !quantity.SameUnit(pieces.Unit, "cycles"):
		err = fmt.Errorf("%q is not in cycles; write it as 8 cycles", text)
	}
	return float64(pieces.N), err
}

func (p *places) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	if n.Kind == tree.Scalar && n.Text == "unlimited" {
		p.value = float64(sim.Unlimited)
		return
	}
	p.count.read(r, n, path, tag)
}

func (l *level) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	if n.Kind == tree.Scalar && n.Text == "empty" {
		return
	}
	r.readNumber(&l.number, n, tag, func(text string) (float64, error) {
		if !quantity.IsShare(text) {
			return l.parse(text)
		}
		l.percent = true
		value, err := quantity.Share(text)
		if err == nil && value > 1 {
			err = fmt.Errorf("%q is more than the buffer holds; the most is 100 %%", text)
		}
		return value, err
	})
}

func (u *use) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&u.number, n, tag, func(text string) (float64, error) {
		if micrometres, err := quantity.Length(text); err == nil {
			u.web = true
			return micrometres, nil
		}
		value, err := u.parse(text)
		if err == nil && u.unit == "" {
			err = fmt.Errorf("%q has no unit; write %[1]s mm for web, or %[1]s of the pieces, as 1 blank", strings.TrimSpace(text))
		}
		return value, err
	})
}
