package tree

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// Fault is something that cannot be read as a tree.
type Fault struct {
	At   *Node
	Text string
}

// Limits of a scenario file; a line of a hundred stations has some 50,000 bytes.
const (
	mostBytes = 1 << 20
	mostDepth = 60
)

// Parse reads a text. The root is nil if there is nothing to go on with.
func Parse(name string, text []byte) (root *Node, faults []Fault) {
	src := &Source{Name: name, Text: strings.TrimPrefix(string(text), "\ufeff")}
	b := &builder{src: src, lines: lineStarts(src.Text)}
	if fault := unreadable(src); fault != "" {
		return nil, []Fault{{b.at(1, 1), fault}}
	}
	file, err := parse(src.Text)
	if err != nil {
		return nil, []Fault{b.syntax(err)}
	}
	for i, doc := range file.Docs {
		if i == 0 {
			root = b.body(doc)
		} else if doc.Body != nil {
			b.fault(b.place(doc.Body), "a second document begins here; a file is one scenario: put it into a file of its own")
		}
	}
	return root, b.faults
}

// unreadable says why a text is not even tried.
func unreadable(src *Source) string {
	switch {
	case len(src.Text) > mostBytes:
		return fmt.Sprintf("the file has %d bytes; a scenario has at most %d", len(src.Text), mostBytes)
	case !utf8.ValidString(src.Text):
		return "the file is not text in UTF-8; save it as UTF-8"
	case strings.ContainsRune(src.Text, 0):
		return "the file holds bytes that are not text"
	case deepest(src.Text) > mostDepth:
		return "brackets are nested too deeply"
	}
	return ""
}

// deepest counts brackets and indentation as a guard for the recursion below.
func deepest(text string) int {
	deep, most := 0, 0
	for _, r := range text {
		switch r {
		case '[', '{':
			deep++
		case ']', '}':
			deep--
		}
		most = max(most, deep)
	}
	for line := range strings.SplitSeq(text, "\n") {
		dashes := len(line) - len(strings.TrimLeft(line, "- ?:"))
		most = max(most, dashes/4)
	}
	return most
}

// parse calls the library, which panics on some malformed texts.
func parse(text string) (file *ast.File, err error) {
	defer func() {
		if recover() != nil {
			err = errors.New("this is not YAML that can be read")
		}
	}()
	return parser.ParseBytes([]byte(text), 0, parser.AllowDuplicateMapKey())
}

// syntax turns the library's complaint into a fault with its place.
func (b *builder) syntax(err error) Fault {
	var bad yaml.Error
	if errors.As(err, &bad) && bad.GetToken() != nil {
		at := bad.GetToken().Position
		return Fault{b.at(at.Line, at.Column), "this is not YAML: " + bad.GetMessage()}
	}
	return Fault{b.at(1, 1), "this is not YAML that can be read"}
}

// at makes a node that is only a place.
func (b *builder) at(line, column int) *Node {
	return &Node{Kind: Null, Line: max(line, 1), Column: max(column, 1), From: b.src, end: -1}
}
