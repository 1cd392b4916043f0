package keyfigure

import (
	"fmt"
	"strings"
)

// sentences say what limits the line and between which ends it lies.
func (f *Figures) sentences() []string {
	b := &f.Bounds
	if b.Unlimited <= 0 {
		return nil
	}
	out := []string{
		fmt.Sprintf("%s With buffers without limit the line makes at most %s %s/h on average (%s a minute).",
			f.constraintText(), fixed(60*b.Unlimited, 0), f.Unit, number(b.Unlimited)),
		fmt.Sprintf("%s about %s %s/h: %s of the tied speed, which is %s %s/h with rejects taken off.",
			f.rigidText(), fixed(60*b.Rigid, 0), f.Unit, percent(b.RigidEfficiency), fixed(60*b.Tied, 0), f.Unit),
	}
	if left := f.leftOut(); left != "" {
		out = append(out, "This is arithmetic without "+left+"; a run counts them too.")
	}
	return out
}

func (f *Figures) constraintText() string {
	names := f.Bounds.Constraint
	switch {
	case len(names) == 1:
		return "The constraint is " + names[0] + "."
	case f.sameStage(names):
		return "The constraint is " + strings.Join(names, " and ") + " together."
	default:
		return "No single constraint: equally narrow are " + strings.Join(names, ", ") + "."
	}
}

func (f *Figures) rigidText() string {
	if f.Bounds.Buffered {
		return "Without any buffer it makes"
	}
	return "It has no buffer; as one rigid line it makes"
}

// sameStage tells whether all these stations stand side by side.
func (f *Figures) sameStage(names []string) bool {
	for _, stage := range f.Stages {
		found := 0
		for _, i := range stage.Stations {
			for _, name := range names {
				if f.Stations[i].Name == name {
					found++
				}
			}
		}
		if found == len(names) {
			return true
		}
	}
	return false
}

// leftOut lists what some station has and no figure contains.
func (f *Figures) leftOut() string {
	var all []string
	seen := map[string]bool{}
	for _, s := range f.Stations {
		for _, what := range s.LeftOut {
			if !seen[what] {
				seen[what] = true
				all = append(all, what)
			}
		}
	}
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}
