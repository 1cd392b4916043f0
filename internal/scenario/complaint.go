package scenario

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/internal/scenario/tree"
)

// Complaint is one thing that is wrong in a scenario file, where it stands and
// what would be right.
type Complaint struct {
	// File is the name as given, or "--set" for a value of the command line.
	File         string
	Line, Column int
	// Path has the names that lead to the place, joined by dots.
	Path string
	Text string
	// Excerpt is the source line, and a line with a caret under the place.
	Excerpt string
}

// String is the complaint in one line with its excerpt below.
func (c Complaint) String() string {
	return fmt.Sprintf("%s:%d:%d: %s\n%s", c.File, c.Line, c.Column, c.Text, c.Excerpt)
}

// Complaints is all that is wrong, in the order of the file.
type Complaints []Complaint

// Error lists all of them.
func (c Complaints) Error() string {
	texts := make([]string, len(c))
	for i, one := range c {
		texts[i] = one.String()
	}
	return strings.Join(texts, "\n")
}

// sorted puts complaints of the file in order of place, those of --set last, and
// drops what is said twice, as happens to values that like: copies.
func (c Complaints) sorted() Complaints {
	slices.SortStableFunc(c, func(a, b Complaint) int {
		if set := strings.Compare(setLast(a), setLast(b)); set != 0 {
			return set
		}
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		if a.Column != b.Column {
			return a.Column - b.Column
		}
		return strings.Compare(a.Text, b.Text)
	})
	return slices.CompactFunc(c, func(a, b Complaint) bool {
		return a.File == b.File && a.Line == b.Line && a.Column == b.Column && a.Text == b.Text
	})
}

func setLast(c Complaint) string {
	if c.File == setSource {
		return "2" + c.Excerpt
	}
	return "1"
}

// excerpt is the line of a place with a caret under it. Tabs stay tabs, so that
// the caret stands right.
func excerpt(n *tree.Node) string {
	line := n.From.Line(n.Line)
	var pad strings.Builder
	for i, r := range []rune(line) {
		if i >= n.Column-1 {
			break
		}
		if r == '\t' {
			pad.WriteRune('\t')
		} else {
			pad.WriteByte(' ')
		}
	}
	return "    " + line + "\n    " + pad.String() + "^"
}
