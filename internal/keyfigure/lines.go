package keyfigure

import (
	"slices"
	"strings"

	"tuckline/internal/scenario"
)

// constraintsText says what limits each of several lines.
func (f *Figures) constraintsText() string {
	var each []string
	alike := true
	for i := range f.several {
		names := f.limitingIn(&f.several[i])
		each = append(each, listed(names))
		alike = alike && each[i] == each[0]
	}
	switch {
	case alike && each[0] == "":
		return "No line has a single constraint."
	case alike:
		return "The constraint of each line is " + each[0] + "."
	}
	var parts []string
	for i := range f.several {
		if each[i] == "" {
			each[i] = "no single station"
		}
		is := " "
		if i == 0 {
			is = " the constraint is "
		}
		parts = append(parts, f.several[i].Name+is+each[i])
	}
	return "Of " + strings.Join(parts, ", of ") + "."
}

// limitingIn are the names, within a line, of what limits it.
func (f *Figures) limitingIn(line *scenario.ProductionLine) (names []string) {
	for _, name := range f.Bounds.Constraint {
		if bare, in := strings.CutPrefix(name, line.Name+"."); in {
			names = append(names, bare)
		}
	}
	slices.Sort(names)
	return names
}

// lineMakes is who makes what the bounds say.
func (f *Figures) lineMakes() string {
	if len(f.several) > 0 {
		return "the lines together make"
	}
	return "the line makes"
}
