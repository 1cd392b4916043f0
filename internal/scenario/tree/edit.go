package tree

import "strings"

// Edit sets a value in a text and leaves everything else, comments included, as
// it is. It reports whether it could: a place that YAML spreads over several
// lines without brackets may have to be changed by hand.
func Edit(text string, steps []Step, value *Node) (string, bool) {
	bom := ""
	if rest, found := strings.CutPrefix(text, "\ufeff"); found {
		bom, text = "\ufeff", rest
	}
	root, _ := Parse("", []byte(text))
	if root == nil || len(steps) == 0 {
		return text, false
	}
	at, left := descend(root, steps)
	if at == nil || at.Kind != Map || left[0].Key == "" {
		return text, false
	}
	edited, done := "", false
	if old := at.entry(left[0].Key); old != nil {
		edited, done = replace(text, old, value.Render())
	} else {
		line := word(left[0].Key, value).Render() + ": " + nest(left[1:], value).Render()
		edited, done = insert(text, at, line)
	}
	return bom + edited, done
}

func (n *Node) entry(key string) *Entry {
	for i := range n.Entries {
		if n.Entries[i].Key.Text == key {
			return &n.Entries[i]
		}
	}
	return nil
}

// replace writes a new value behind a key.
func replace(text string, e *Entry, value string) (string, bool) {
	old := e.Value
	switch {
	case old.end < 0 || e.Key.end < 0:
		return text, false
	case old.Kind == Null && old.end == old.start:
		colon := strings.IndexByte(text[e.Key.end:], ':')
		if colon < 0 {
			return text, false
		}
		after := e.Key.end + colon + 1
		return text[:after] + " " + value + text[after:], true
	case old.Flow || old.Kind == Scalar || old.Kind == Null:
		return text[:old.start] + value + text[old.end:], true
	}
	colon := e.Key.end + strings.IndexByte(text[e.Key.end:], ':') + 1
	line := colon + strings.IndexByte(text[colon:], '\n')
	if line < colon || line > old.start {
		return text, false
	}
	return text[:colon] + " " + value + strings.TrimRight(text[colon:line], " \r") + text[old.end:], true
}

// insert adds a key with its value at the end of a map.
func insert(text string, m *Node, line string) (string, bool) {
	if len(m.Entries) == 0 {
		if !m.Flow {
			return text, false
		}
		return text[:m.start+1] + line + text[m.start+1:], true
	}
	last := m.Entries[len(m.Entries)-1]
	end := max(last.Value.end, last.Key.end)
	if last.Value.end < 0 || end < 0 {
		return text, false
	}
	if m.Flow {
		return text[:end] + ", " + line + text[end:], true
	}
	indent := strings.Repeat(" ", m.Entries[0].Key.Column-1)
	rest := strings.IndexByte(text[end:], '\n')
	if rest < 0 {
		return text + "\n" + indent + line + "\n", true
	}
	end += rest
	return text[:end] + "\n" + indent + line + text[end:], true
}
