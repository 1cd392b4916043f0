package scenario

import (
	"fmt"

	"tuckline/internal/scenario/tree"
)

// Options say what to change while reading and how to reach other files.
type Options struct {
	// Sets are changes of single values, "PATH=VALUE" each.
	Sets []string
	// Files reads a file that the scenario names (a law with file:); nil means that there is none.
	Files func(name string) ([]byte, error)
}

// Read reads and checks a scenario. file is its name for complaints. The error
// is Complaints: everything that is wrong, each with its place.
func Read(file string, src []byte, o Options) (*Scenario, error) {
	r := &reader{file: file, files: o.Files, index: map[string]*tree.Node{}}
	root, text := r.parse(src, o.Sets)
	if root == nil {
		return nil, r.complaints.sorted()
	}
	r.root = root
	if r.otherFile(root) {
		return nil, r.complaints.sorted()
	}
	if lines, found := root.Get("lines"); found {
		r.lines = lines.Keys()
	}
	var words fileWords
	r.decode(root, &words, "", "")
	s := &Scenario{File: file, Source: text}
	if r.resolve(s, &words, root); len(r.complaints) > 0 {
		r.dropCopies()
		return nil, r.complaints.sorted()
	}
	s.Warnings = r.warnings
	s.asked = s.Run.Measure
	return s, nil
}

// reader collects what is found while a scenario is read.
type reader struct {
	file       string
	files      func(name string) ([]byte, error)
	root       *tree.Node
	complaints Complaints
	warnings   []string
	// broken says that something was not even read as a tree.
	broken bool
	// ambiguous says that a name is used twice, so that nobody knows who feeds whom.
	ambiguous bool
	// lines are the names of several lines.
	lines []string
	// index finds the place of a path.
	index map[string]*tree.Node
}

// otherFile recognises the other kinds of files of the format.
func (r *reader) otherFile(root *tree.Node) bool {
	for _, kind := range []string{"study", "observed"} {
		for _, e := range root.Entries {
			if e.Key.Text == "tuckline "+kind {
				r.complain(at{node: e.Key}, "%q is a kind of file that this version does not know yet; it reads scenarios, which begin with tuckline: 1", e.Key.Text)
				return true
			}
		}
	}
	return false
}

// parse reads the text and applies the changes; text has them in it.
func (r *reader) parse(src []byte, sets []string) (root *tree.Node, text []byte) {
	root, faults := tree.Parse(r.file, src)
	r.broken = len(faults) > 0
	for _, f := range faults {
		r.complain(at{node: f.At}, "%s", f.Text)
	}
	if root == nil {
		if len(faults) == 0 {
			empty := &tree.Source{Name: r.file, Text: string(src)}
			r.complain(at{node: &tree.Node{Line: 1, Column: 1, From: empty}}, "the file is empty; a scenario begins with tuckline: 1")
		}
		return nil, nil
	}
	return root, []byte(r.applySets(root, string(src), sets))
}

// complain says what is wrong at a place; at the head of the file if nobody
// wrote anything there.
func (r *reader) complain(where at, format string, args ...any) {
	n := where.or(at{node: r.root}).node
	r.complaints = append(r.complaints, Complaint{
		File: n.From.Name, Line: n.Line, Column: n.Column, Path: where.path,
		Text: fmt.Sprintf(format, args...), Excerpt: excerpt(n),
	})
}

// warn notes that something was read and is not what it may seem.
func (r *reader) warn(format string, args ...any) {
	r.warnings = append(r.warnings, fmt.Sprintf(format, args...))
}
