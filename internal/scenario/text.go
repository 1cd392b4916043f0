package scenario

import (
	"reflect"
	"strings"

	"tuckline/internal/scenario/tree"
)

// formatNumber is the version of the format, which is 1.
type formatNumber struct{ at }

func (f *formatNumber) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	if text, ok := r.scalar(f.at, n); ok && text != "1" {
		r.complain(f.at, "this version reads format 1, not %q; write tuckline: 1", text)
	}
}

// text is what people read: a title, a name.
type text struct {
	at
	value string
}

func (t *text) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	t.value, _ = r.scalar(t.at, n)
}

// choice is one of the words listed in the tag of its field: of:"…|…".
type choice struct{ text }

func (c *choice) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	value, ok := r.scalar(c.at, n)
	if !ok {
		return
	}
	words := strings.Split(tag.Get("of"), "|")
	for _, w := range words {
		if w == value {
			c.value = value
			return
		}
	}
	switch near, found := Nearest(value, words); {
	case value == "true" || value == "false":
		r.complain(c.at, "%q is written yes or no in this format", value)
	case found && len(words) > 1:
		r.complain(c.at, "%q is not known here; did you mean %q? (known: %s)", value, near, strings.Join(words, ", "))
	default:
		r.complain(c.at, "%q is not known here; write %s", value, strings.Join(words, ", "))
	}
}
