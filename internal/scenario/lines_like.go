package scenario

import (
	"slices"

	"tuckline/internal/scenario/tree"
)

// fullLine is a line with everything that it copies.
type fullLine struct {
	name string
	key  *tree.Node
	// written are the entries as in the file, items those with what like: copies.
	written, items []*tree.Node
	// like says that it copies another line; own are then its overrides.
	like bool
	own  *tree.Node
}

// fullLines are the lines of a file with what like: copies filled in. What is copied keeps its place in the file.
func (r *reader) fullLines(lines *tree.Node) (all []fullLine) {
	l := &lineLikening{r: r, lines: lines}
	for i, e := range lines.Entries {
		if slices.Contains(lines.Keys()[:i], e.Key.Text) {
			r.complain(at{e.Key, e.Key.Text}, "%q is written twice; one of them has to go", e.Key.Text)
			continue
		}
		full := fullLine{name: e.Key.Text, key: e.Key, own: e.Value, written: l.entries(e)}
		_, full.like = e.Value.Get("like")
		list := *e.Value
		list.Kind, list.Items = tree.List, full.written
		full.items = r.likened(&list)
		all = append(all, full)
	}
	return all
}

// lineLikening copies lines.
type lineLikening struct {
	r     *reader
	lines *tree.Node
	// open are the lines being copied: one that comes up again copies itself.
	open []string
}

// entries are those of a line as written, with the overrides laid over those that it copies.
func (l *lineLikening) entries(e tree.Entry) []*tree.Node {
	where := at{e.Value, e.Key.Text}
	like, found := e.Value.Get("like")
	switch {
	case e.Value.Kind == tree.Broken:
	case e.Value.Kind == tree.List && len(e.Value.Items) > 0:
		return e.Value.Items
	case e.Value.Kind == tree.List:
		l.r.complain(where, "the line is empty; write at least one - station: NAME")
	case !found:
		l.r.complain(where, "a line is a list of entries, each with a dash: - station: NAME; or a copy of another: {like: NAME}")
	case like.Kind != tree.Scalar:
		l.r.complain(at{like, join(e.Key.Text, "like")}, "this is %s; here belongs the name of a line", like.KindWord())
	default:
		return l.copied(e, like)
	}
	return nil
}

// copied are the entries of another line, with the overrides of this one laid over them.
func (l *lineLikening) copied(e tree.Entry, like *tree.Node) (all []*tree.Node) {
	where := at{like, join(e.Key.Text, "like")}
	model := slices.IndexFunc(l.lines.Entries, func(other tree.Entry) bool { return other.Key.Text == like.Text })
	switch {
	case model < 0:
		l.r.noSuchName(where, like.Text, "line", slices.DeleteFunc(l.lines.Keys(), func(name string) bool { return name == e.Key.Text }))
		return nil
	case like.Text == e.Key.Text || slices.Contains(l.open, like.Text):
		l.r.complain(where, "%q copies itself; one line has to be written out", like.Text)
		return nil
	}
	l.open = append(l.open, e.Key.Text)
	base := l.entries(l.lines.Entries[model])
	l.open = l.open[:len(l.open)-1]
	for _, item := range base {
		_, name := kindOf(item)
		over, _ := e.Value.Get(name)
		all = append(all, overridden(item, over))
	}
	l.checkOverrides(e, base, like.Text)
	return all
}

// checkOverrides refuses overrides of what the copied line does not have.
func (l *lineLikening) checkOverrides(line tree.Entry, base []*tree.Node, model string) {
	if len(base) == 0 {
		return // said already
	}
	names := []string{}
	for _, item := range base {
		_, name := kindOf(item)
		names = append(names, name)
	}
	for i, e := range line.Value.Entries {
		where := at{e.Key, join(line.Key.Text, e.Key.Text)}
		switch {
		case slices.Contains(line.Value.Keys()[:i], e.Key.Text):
			l.r.complain(where, "%q is written twice; one of them has to go", e.Key.Text)
		case e.Key.Text == "like":
		case !slices.Contains(names, e.Key.Text):
			l.r.noSuchName(where, e.Key.Text, "entry in "+model, names)
		case e.Value.Kind != tree.Map && e.Value.Kind != tree.Broken:
			l.r.complain(where, "this is %s; here belong the words of %q that are other than in %s, such as {cycle: 70/min}", e.Value.KindWord(), e.Key.Text, model)
		}
		for _, own := range e.Value.Entries {
			if slices.Contains(entryKinds, own.Key.Text) || own.Key.Text == "like" {
				l.r.complain(at{own.Key, where.path}, "what an entry is and what it copies is as in %s; leave %q out", model, own.Key.Text)
			}
		}
	}
}

// overridden is an entry of a copied line: what is laid over it, and everything else, but not whose random numbers
// it draws.
func overridden(base, over *tree.Node) *tree.Node {
	own := *base
	own.Entries = nil
	if over != nil && over.Kind == tree.Map {
		own.Entries = slices.DeleteFunc(slices.Clone(over.Entries), func(e tree.Entry) bool { return keptOfCopied(e.Key.Text) })
	}
	full := overlay(base, &own)
	for _, e := range base.Entries {
		if keptOfCopied(e.Key.Text) {
			full.Entries = append(full.Entries, e)
		}
	}
	return full
}

// keptOfCopied says that an entry has a word from the line that is copied, whatever is laid over it.
func keptOfCopied(word string) bool { return word == "like" || slices.Contains(entryKinds, word) }
