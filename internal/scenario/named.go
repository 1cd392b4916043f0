package scenario

import (
	"reflect"
	"slices"
	"strings"

	"tuckline/internal/scenario/tree"
)

// named is a map of the file whose keys are names, in the order as written.
type named[T any] struct {
	at
	list []entry[T]
}

// entry is a name with what belongs to it.
type entry[T any] struct {
	name  string
	place at // of the name
	value T
}

func (m *named[T]) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	if n.Kind != tree.Map {
		r.complain(m.at, "this is %s; here belong names with what each of them is, as NAME: …", n.KindWord())
		return
	}
	seen := map[string]bool{}
	for _, e := range n.Entries {
		if seen[e.Key.Text] {
			r.complain(at{e.Key, join(path, e.Key.Text)}, "%q is written twice; one of them has to go", e.Key.Text)
			continue
		}
		seen[e.Key.Text] = true
		m.add(r, e, path)
	}
}

// add reads one name with its value.
func (m *named[T]) add(r *reader, e tree.Entry, path string) {
	one := entry[T]{name: e.Key.Text, place: at{e.Key, join(path, e.Key.Text)}}
	r.checkName(one.place, one.name)
	if e.Value.Kind == tree.Null {
		r.complain(one.place, "%q has no value; say what it is, or leave it out", one.name)
		return
	}
	m.list = append(m.list, one)
	r.decode(e.Value, &m.list[len(m.list)-1].value, one.place.path, "")
}

// checkName refuses names that paths could not lead to.
func (r *reader) checkName(where at, name string) {
	switch {
	case strings.TrimSpace(name) == "":
		r.complain(where, "a name is missing")
	case strings.HasPrefix(where.path, "run.at start.") && len(r.lines) > 0:
		// "line 1.store" is that of one line
	case strings.ContainsAny(name, `.="'`):
		r.complain(where, "the name %q has a dot, an equals sign or a quote; names lead to values, as in cartoner.cycle=80/min: use letters, digits, spaces and hyphens", name)
	case strings.ContainsAny(name, "\n\r\t") || strings.TrimSpace(name) != name:
		r.complain(where, "the name %q begins or ends with a space, or has a line break", name)
	}
}

// oneOrMore is a single value or a list of them.
type oneOrMore[T any] struct {
	at
	list []T
}

func (l *oneOrMore[T]) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	items := []*tree.Node{n}
	if n.Kind == tree.List {
		items = n.Items
		switch {
		case len(items) > 0:
		case slices.Contains(strings.Split(tag.Get("of"), "|"), "nothing"):
			r.complain(l.at, "the list is empty; write nothing, which is a word here, or leave the key out")
		default:
			r.complain(l.at, "the list is empty; leave the key out")
		}
	}
	l.list = make([]T, len(items))
	for i, item := range items {
		r.decode(item, &l.list[i], path, tag)
	}
	r.index[path] = n
}

// container is implemented by words that hold several of a kind.
type container interface {
	// elem is the type of one, byName says that each has a name.
	elem() reflect.Type
	byName() bool
}

func (m *named[T]) elem() reflect.Type { return reflect.TypeFor[T]() }
func (m *named[T]) byName() bool       { return true }

func (l *oneOrMore[T]) elem() reflect.Type { return reflect.TypeFor[T]() }
func (l *oneOrMore[T]) byName() bool       { return false }
