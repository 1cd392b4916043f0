package tree

import (
	"strings"
	"testing"
)

// steps makes steps of a path; a number is an item of a list.
func steps(path string) []Step {
	var all []Step
	for _, name := range strings.Split(path, "/") {
		if len(name) == 1 && name[0] >= '0' && name[0] <= '9' {
			all = append(all, Step{Item: int(name[0] - '0')})
			continue
		}
		all = append(all, Step{Key: name})
	}
	return all
}

// TestEditLeavesTheRest changes single values; everything else stays byte for byte.
func TestEditLeavesTheRest(t *testing.T) {
	for _, c := range []struct{ text, path, value, want string }{
		{"a: 1 # one\nb: 2\n", "a", "3 s", "a: 3 s # one\nb: 2\n"},
		{"a: 1\nb: 2", "b", "3", "a: 1\nb: 3"},
		{"a: 'x # y' # one\n", "a", "z", "a: z # one\n"},
		{"a: \"q\\\"x\" # one\n", "a", "z", "a: z # one\n"},
		{"a: 'it''s' # one\n", "a", "z", "a: z # one\n"},
		{"a: 250 µm # µ\nb: 2\n", "a", "300 µm", "a: 300 µm # µ\nb: 2\n"},
		{"a: {b: 1, c: 250 µm, d: 2} # in\n", "a/d", "7", "a: {b: 1, c: 250 µm, d: 7} # in\n"},
		{"a: {b: 1} # in\n", "a/c", "7", "a: {b: 1, c: 7} # in\n"},
		{"a: {} # in\n", "a/c", "7", "a: {c: 7} # in\n"},
		{"a: {b: 1,\n    c: 2}  # in\n", "a/d", "7", "a: {b: 1,\n    c: 2, d: 7}  # in\n"},
		{"a:\n  b: 1   # one\nc: 2\n", "a/d", "7", "a:\n  b: 1   # one\n  d: 7\nc: 2\n"},
		{"a:\n  b: 1", "a/d", "7", "a:\n  b: 1\n  d: 7\n"},
		{"a:\n  b: 1\n  c: 2 # two\nd: 3\n", "a", "{x: 1}", "a: {x: 1} # two\nd: 3\n"},
		{"a:   # said\n  b: 1\nd: 3\n", "a", "9", "a: 9   # said\nd: 3\n"},
		{"a:\nb: 1\n", "a", "9", "a: 9\nb: 1\n"},
		{"a: ~\nb: 1\n", "a", "9", "a: 9\nb: 1\n"},
		{"l:\n  - x: 1\n    y: 2\n  - x: 3\n", "l/1/x", "4", "l:\n  - x: 1\n    y: 2\n  - x: 4\n"},
		{"l:\n  - x: 1\n    y: 2\n  - x: 3\n", "l/0/z/w", "4", "l:\n  - x: 1\n    y: 2\n    z: {w: 4}\n  - x: 3\n"},
		{"l: [{x: 1}, {x: 3}]\n", "l/1/x", "[1, 2]", "l: [{x: 1}, {x: [1, 2]}]\n"},
		{"a: 1\r\nb: 2 # two\r\n", "a", "3", "a: 3\r\nb: 2 # two\r\n"},
		{"\ufeffa: 1\n", "a", "3", "\ufeffa: 3\n"},
		{"a: 1\n", "a", "'x: y'", "a: \"x: y\"\n"},
		{"a: 1\n", "b", "x", "a: 1\nb: x\n"},
	} {
		value, faults := ParseValue("--set", "p="+c.value, 2)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		got, done := Edit(c.text, steps(c.path), value)
		if !done || got != c.want {
			t.Errorf("%q with %s = %s gives\n%q, want\n%q", c.text, c.path, c.value, got, c.want)
			continue
		}
		root, _ := Parse("", []byte(c.text))
		if !Put(root, steps(c.path), value) {
			t.Errorf("%q: the tree cannot be changed at %s", c.text, c.path)
			continue
		}
		again, faults := Parse("", []byte(got))
		if len(faults) > 0 || again.Render() != root.Render() {
			t.Errorf("%q: text and tree differ:\n%s\n%s", c.text, again.Render(), root.Render())
		}
	}
}

// TestEditRefuses has places that cannot be changed in the text.
func TestEditRefuses(t *testing.T) {
	value, _ := ParseValue("--set", "p=1", 2)
	for _, c := range [][2]string{
		{"a: x\n  y\n", "a"}, {"a: |\n  long\n", "a"}, {"a: 1\n", "a/b"}, {"a: [1]\n", "a/0"}, {"a: [1]\n", "a/7/b"}, {"", "a"}, {"- a\n", "b"},
	} {
		if got, done := Edit(c[0], steps(c[1]), value); done {
			t.Errorf("%q was changed at %s into %q", c[0], c[1], got)
		}
	}
}

func TestPlaces(t *testing.T) {
	root, faults := Parse("f", []byte("\ufefftuckline: 1\nµ: {a: 250 µm, b: x}\n"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	m, _ := root.Get("µ")
	b, _ := m.Get("b")
	if b.Line != 2 || b.Column != 19 || b.Text != "x" || root.Line != 1 || root.Column != 1 {
		t.Errorf("b is at %d:%d, the root at %d:%d", b.Line, b.Column, root.Line, root.Column)
	}
}

// TestLimits refuses texts that would only cost time.
func TestLimits(t *testing.T) {
	for name, text := range map[string]string{
		"deep":         strings.Repeat("[", 100),
		"deep dashes":  strings.Repeat("- ", 2000) + "a",
		"long":         "# " + strings.Repeat("x", mostBytes),
		"not UTF-8":    "a: \xff\n",
		"zero bytes":   "a: \x00\n",
		"merge key":    "<<: {a: 1}\n",
		"mark":         "? a\n: b\n",
		"tag":          "a: !!str b\n",
		"alias":        "a: *b\n",
		"second":       "a: 1\n---\nb: 2\n",
		"list as key":  "[a, b]: 1\n",
		"open bracket": "a: [1\n",
	} {
		if _, faults := Parse("f", []byte(text)); len(faults) == 0 {
			t.Errorf("%s was read", name)
		} else if at := faults[0].At; at.Line < 1 || at.Column < 1 || at.From == nil {
			t.Errorf("%s: no place: %+v", name, at)
		}
	}
}
