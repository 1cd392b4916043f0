package scenario

import (
	"slices"
	"strings"

	"tuckline/internal/scenario/tree"
)

// walkLines follows a path that begins with the name of a line, or with that of an entry, which means all lines
// that have it. done says that it was one of these, well that it leads somewhere.
func (w *pathWalk) walkLines(lines *tree.Node, names []string) (done, well bool) {
	all := quietly(w.r, func() []fullLine { return w.r.fullLines(lines) })
	for i := range all {
		if all[i].name == names[0] {
			return true, w.inLine(&all[i], names)
		}
	}
	var have []*fullLine
	for i := range all {
		if all[i].entry(names[0]) >= 0 {
			have = append(have, &all[i])
		}
	}
	for _, line := range have {
		if line.like && !line.says(names) {
			continue // it has what the line has that it copies
		}
		if w.steps != nil {
			w.more = append(w.more, w.steps)
		}
		if !w.toEntry(line, names, nil) {
			return true, false
		}
	}
	return len(have) > 0, true
}

// inLine follows a path behind the name of a line.
func (w *pathWalk) inLine(line *fullLine, names []string) bool {
	switch {
	case len(names) == 1:
		w.r.complain(w.where, "%q is a whole line; say which word of which entry, such as %s", names[0], line.example())
	case names[1] == "like" && len(names) == 2 && line.like:
		w.steps = []tree.Step{{Key: "lines"}, {Key: line.name}, {Key: "like"}}
		return true
	case line.entry(names[1]) >= 0:
		return w.toEntry(line, names[1:], names[:1])
	default:
		w.walked = names[:1]
		w.refuse(nil, names[1], names[2:], line.names())
	}
	return false
}

// toEntry follows a path that begins with an entry of a line; before are the names before it. In a line that copies
// another it leads to an override.
func (w *pathWalk) toEntry(line *fullLine, names, before []string) bool {
	i := line.entry(names[0])
	w.steps = []tree.Step{{Key: "lines"}, {Key: line.name}, {Item: i}}
	if line.like {
		w.steps[2] = tree.Step{Key: names[0]}
	}
	w.entry = len(w.steps)
	return w.down(line.items[i], entryType(line.items[i]), names[1:], append(before[:len(before):len(before)], names[0]))
}

// entry is the place of an entry, or -1.
func (l *fullLine) entry(name string) int {
	for i, item := range l.items {
		if _, other := kindOf(item); other == name && name != "" {
			return i
		}
	}
	return -1
}

// says tells whether a line that copies another overrides what a path leads to.
func (l *fullLine) says(names []string) bool {
	n := l.own
	for _, name := range names {
		next, found := n.Get(name)
		if !found {
			return false
		}
		n = next
	}
	return true
}

func (l *fullLine) names() (names []string) {
	for _, item := range l.items {
		_, name := kindOf(item)
		names = append(names, name)
	}
	return names
}

func (l *fullLine) example() string {
	return strings.Join(append([]string{l.name}, append(l.names(), "cartoner")[0], "cycle"), ".")
}

// namesOfLines are those of the lines and of all that stands in them.
func (w *pathWalk) namesOfLines(lines *tree.Node) (names []string) {
	for _, line := range quietly(w.r, func() []fullLine { return w.r.fullLines(lines) }) {
		names = append(names, line.name)
		for _, name := range line.names() {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}
