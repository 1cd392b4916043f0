package scenario

import (
	"errors"
	"strings"

	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// compile lets the model check what only the whole line shows, for example
// whether it can lock, and finds the place of each of its problems. About an
// entry that has been complained about already it says nothing more.
func (b *resolver) compile() {
	if b.broken || b.wrongFrom() {
		return
	}
	_, err := sim.Compile(b.s.Line)
	var problems sim.Problems
	if !errors.As(err, &problems) {
		return
	}
	known := map[string]bool{}
	for _, c := range b.complaints {
		known[b.entryOf(c.Path)] = true
	}
	for _, p := range problems {
		if path := b.written(p.Path); !known[b.entryOf(path)] {
			b.complain(b.find(path), "%s: %s", path, p.Text)
		}
	}
}

// entryOf is the entry to which a path leads; levels at the start belong to their buffer.
func (b *resolver) entryOf(path string) string {
	path = strings.TrimPrefix(path, "run.at start.")
	line := lineOf(path, b.lines)
	if line != "" {
		path = path[len(line)+1:]
	}
	name, _, _ := strings.Cut(path, ".")
	return join(line, name)
}

// find is the place of a path, or of the nearest one above it.
func (b *resolver) find(path string) at {
	for p := path; p != ""; {
		if n, found := b.index[p]; found {
			return at{n, path}
		}
		cut := strings.LastIndexByte(p, '.')
		if cut < 0 {
			break
		}
		p = p[:cut]
	}
	return at{b.top(), path}
}

func (b *resolver) top() *tree.Node { return b.words.node }
