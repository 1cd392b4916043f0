package keyfigure

import (
	"fmt"
	"slices"
	"strings"
)

// sentences say what limits the line and between which ends it lies.
func (f *Figures) sentences() []string {
	b := &f.Bounds
	if b.Unlimited <= 0 {
		return []string{f.nothingText()}
	}
	out := []string{
		f.withDwell(fmt.Sprintf("%s With buffers without limit %s at most %s %s/h on average (%s a minute).",
			f.constraintText(), f.lineMakes(), fixed(60*b.Unlimited, 0), f.Unit, number(b.Unlimited)), atFastest),
		f.withDwell(fmt.Sprintf("%s about %s %s/h: %s of the tied speed, which is %s %s/h%s.",
			f.rigidText(), fixed(60*b.Rigid, 0), f.Unit, percent(b.RigidEfficiency), fixed(60*b.Tied, 0), f.Unit, f.lessRejects(" with ")), atSet),
	}
	if left := f.leftOut(); left != "" {
		out = append(out, "This is arithmetic without "+left+"; a run counts them too.")
	}
	return out
}

// lessRejects says that rejects, or losses of other kinds too, are taken off, behind a word that leads to
// it, where some station has them.
func (f *Figures) lessRejects(before string) string {
	what := ""
	for i := range f.Stations {
		for _, loss := range f.Stations[i].Losses {
			if loss.Name != rejected {
				return before + "losses taken off"
			}
			what = before + "rejects taken off"
		}
	}
	return what
}

// nothingText says why no good pieces come out.
func (f *Figures) nothingText() string {
	text := fmt.Sprintf("No good %s come out", f.Unit)
	if all := f.RejectingAll(); len(all) == 1 {
		return text + ": " + all[0] + " rejects all that it gives."
	} else if len(all) > 1 {
		return text + ": " + listed(all) + " reject all that they give."
	}
	return text + "."
}

// RejectingAll names the stations that give nothing good.
func (f *Figures) RejectingAll() []string {
	var all []string
	for i := range f.Stations {
		if f.Stations[i].GoodShare <= 0 {
			all = append(all, f.Stations[i].Name)
		}
	}
	return all
}

func (f *Figures) constraintText() string {
	names := f.Bounds.Constraint
	switch {
	case len(f.several) > 0:
		return f.constraintsText()
	case len(names) == 1 && f.Bounds.Gated:
		return "The constraint is " + names[0] + ", by its own rate."
	case len(names) == 1:
		return "The constraint is " + names[0] + "."
	case f.Bounds.together:
		return "The constraint is " + listed(names) + " together."
	default:
		return "No single constraint: equally narrow are " + strings.Join(names, ", ") + "."
	}
}

func (f *Figures) rigidText() string {
	if len(f.several) > 0 {
		return "Without any buffer or belt they make"
	}
	for _, p := range f.Places {
		if p.Kind == "conveyor" {
			return "Without any buffer or belt it makes"
		}
	}
	if f.Bounds.Buffered {
		return "Without any buffer it makes"
	}
	return "It has no buffer; as one rigid line it makes"
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
	if slices.ContainsFunc(f.Places, func(p Place) bool { return p.stops }) {
		all = append(all, "stops of stores")
	}
	return listed(all)
}

// listed joins names as a sentence does, either where one of them would do.
func listed(names []string) string { return joined(names, " and ") }
func either(names []string) string { return joined(names, " or ") }

func joined(names []string, last string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + last + names[len(names)-1]
}
