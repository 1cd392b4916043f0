package scenario

import (
	"slices"
	"strings"
)

// reserved are names that paths already use for something else.
var reserved = []string{"title", "question", "project", "product", "answer", "run", "calendar", "crews", "key figures", "agreement", "line", "lines", "orders", "changeover", "tuckline", "supply"}

// checkNames refuses names used twice in a line and names that cannot be addressed.
func (r *reader) checkNames(entries []*entryWords) {
	first := map[string]*entryWords{}
	for _, e := range entries {
		name := e.name.value
		if !e.name.given() || name == "" {
			continue
		}
		r.checkName(e.name.at, name)
		if slices.Contains(reserved, name) {
			r.complain(e.name.at, "%q is a word of the format and cannot be a name", name)
		}
		if other, twice := first[name]; twice {
			r.ambiguous = true
			r.complain(e.name.at, "the name %q is used twice; the first is in line %d", name, other.name.node.Line)
			continue
		}
		first[name] = e
	}
}

// noSuchName says that a name leads nowhere, with the nearest one.
func (r *reader) noSuchName(where at, wanted, what string, names []string) {
	wanted, names = r.bareNames(wanted, names)
	near, found := Nearest(wanted, names)
	switch {
	case found:
		r.complain(where, "there is no %s called %q; did you mean %q?", what, wanted, near)
	case len(names) == 0:
		r.complain(where, "there is no %s called %q", what, wanted)
	default:
		r.complain(where, "there is no %s called %q; there is %s", what, wanted, strings.Join(names, ", "))
	}
}

// Names lists the names of the line in its order, stations, conveyors and buffers.
func (s *Scenario) Names() []string { return slices.Clone(s.names) }
