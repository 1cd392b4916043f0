package scenario

import (
	"slices"

	"tuckline/internal/scenario/tree"
)

// likened gives the entries of a line with what like: copies filled in. The
// copied values keep their place in the file.
func (r *reader) likened(line *tree.Node) []*tree.Node {
	l := &likening{r: r, line: line, done: map[*tree.Node]*tree.Node{}}
	full := make([]*tree.Node, len(line.Items))
	for i, item := range line.Items {
		full[i] = l.fill(item)
	}
	return full
}

type likening struct {
	r    *reader
	line *tree.Node
	done map[*tree.Node]*tree.Node
	// open are the entries being filled: one that comes up again copies itself.
	open []*tree.Node
}

// fill gives an entry with everything that its like: copies.
func (l *likening) fill(item *tree.Node) *tree.Node {
	if full, done := l.done[item]; done {
		return full
	}
	like, found := item.Get("like")
	if !found || like.Kind != tree.Scalar {
		return item
	}
	_, name := kindOf(item)
	where := at{like, join(name, "like")}
	model := l.model(where, item, like.Text)
	if model == nil {
		return item
	}
	if slices.Contains(l.open, model) || model == item {
		l.r.complain(where, "%q copies itself; one entry has to be written out", like.Text)
		return item
	}
	l.open = append(l.open, item)
	full := overlay(l.fill(model), item)
	l.open = l.open[:len(l.open)-1]
	l.done[item] = full
	return full
}

// model finds the entry to be copied, which must be of the same kind.
func (l *likening) model(where at, item *tree.Node, wanted string) *tree.Node {
	kind, _ := kindOf(item)
	var names []string
	for _, other := range l.line.Items {
		otherKind, name := kindOf(other)
		if name == wanted && otherKind == kind {
			return other
		}
		if name == wanted {
			l.r.complain(where, "%q is a %s, and a %s can only be like a %s", wanted, otherKind, kind, kind)
			return nil
		}
		if otherKind == kind && other != item {
			names = append(names, name)
		}
	}
	l.r.noSuchName(where, wanted, "entry of the line", names)
	return nil
}

// overlay lays the words of own over those of base. Groups of names are laid
// over each other name by name; a law replaces the whole value, and so do the places
// that an assembly takes from, with what feeds it.
func overlay(base, own *tree.Node) *tree.Node {
	if base.Kind != tree.Map || own.Kind != tree.Map || isLaw(own) {
		return own
	}
	full := *own
	full.Entries = slices.Clone(own.Entries)
	for i, e := range full.Entries {
		if below, found := base.Get(e.Key.Text); found && e.Key.Text != "takes" {
			full.Entries[i].Value = overlay(below, e.Value)
		}
	}
	for _, e := range base.Entries {
		if _, found := own.Get(e.Key.Text); !found && !slices.Contains(ownWords, e.Key.Text) && !feedsOtherwise(own, e) {
			full.Entries = append(full.Entries, e)
		}
	}
	return &full
}

// ownWords are those that an entry never copies.
var ownWords = append([]string{"like", "random numbers as"}, entryKinds...)

// feedsOtherwise says that an entry of the copied one is about feeders, while own says
// itself what feeds it.
func feedsOtherwise(own *tree.Node, e tree.Entry) bool {
	if e.Key.Text == "from" {
		takes, found := own.Get("takes")
		return found && takes.Kind == tree.Map && !hasKey(takes, "likely")
	}
	return e.Key.Text == "takes" && e.Value.Kind == tree.Map && !hasKey(e.Value, "likely") && hasKey(own, "from")
}

func isLaw(n *tree.Node) bool {
	for _, word := range []string{"dist", "mixture", "likely"} {
		if _, found := n.Get(word); found {
			return true
		}
	}
	return false
}
