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
	out := []string{f.constraintText()}
	out = append(out, fmt.Sprintf("Upper bound with buffers without limit: %s %s/h on average.", fixed(60*b.Unlimited, 0), f.Unit))
	rigid := "Without any buffer"
	if !b.Buffered {
		rigid = "This line has no buffer; as one rigid line"
	}
	out = append(out, fmt.Sprintf("%s: about %s %s/h, %s of the tied speed (%s %s/h, rejects taken off).",
		rigid, fixed(60*b.Rigid, 0), f.Unit, percent(b.RigidEfficiency), fixed(60*b.Tied, 0), f.Unit))
	if left := f.leftOut(); left != "" {
		out = append(out, "By arithmetic, without "+left+"; a run counts them too.")
	}
	return out
}

func (f *Figures) constraintText() string {
	b := &f.Bounds
	rate := fmt.Sprintf("at most %s %s/min get through in the long run", number(b.Unlimited), f.Unit)
	switch {
	case len(b.Constraint) == 1:
		return fmt.Sprintf("The constraint is %s: %s.", b.Constraint[0], rate)
	case f.sameStage(b.Constraint):
		return fmt.Sprintf("The constraint is %s together: %s.", strings.Join(b.Constraint, " and "), rate)
	default:
		return fmt.Sprintf("No single constraint: %s. As narrow as each other are: %s.", rate, strings.Join(b.Constraint, ", "))
	}
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
