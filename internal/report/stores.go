package report

import (
	"cmp"
	"slices"

	"tuckline/internal/result"
)

// storesSection is about stores beside the line and hand magazines.
func storesSection(s *subject) (*section, error) {
	all := s.beside()
	if len(all) == 0 {
		return nil, nil
	}
	heading := s.storesHeading(all)
	hand := slices.ContainsFunc(all, func(b result.Buffer) bool { return b.Beside.ByHand.N > 0 })
	return &section{ID: "stores", Heading: heading, Reading: say("stores.reading", facts{"Hand": hand}), Table: s.storesTable(all, heading), Open: true}, nil
}

// beside are the stores beside the line and the hand magazines.
func (s *subject) beside() []result.Buffer {
	return slices.DeleteFunc(slices.Clone(s.Results.Buffers), func(b result.Buffer) bool { return b.Beside == nil })
}

// dryWords say whether a store beside the line runs dry.
func (s *subject) dryWords() string {
	all := s.beside()
	if len(all) == 0 {
		return ""
	}
	return say("sentence", facts{"Words": s.storesHeading(all)})
}

func (s *subject) storesHeading(all []result.Buffer) string {
	worst := slices.MaxFunc(all, func(a, b result.Buffer) int {
		return cmp.Compare(a.Beside.DryWindows.Mean, b.Beside.DryWindows.Mean)
	})
	f := facts{"Name": worst.Name, "Dry": "", "Time": "", "Windows": s.Window.Runs, "N": whole(float64(s.Results.Replications))}
	carried := worst.Beside.ByHand.N > 0 // a hand magazine, which may be full in the end and of no use
	f["Unused"] = carried && worst.Beside.GivenBack.Mean == 0
	if dry := worst.Beside.DryWindows; dry.Mean > 0 {
		f["Dry"], f["Time"] = percentWords(dry.Mean), percentWords(worst.Beside.RanDry.Mean)
	}
	return say("stores.heading", f)
}

// storesTable has the columns that a store of the line has: by hand only where people carry, returned
// only where something comes back.
func (s *subject) storesTable(all []result.Buffer, caption string) table {
	f := facts{"Window": s.Window.One, "Windows": s.Window.Runs}
	columns := []struct {
		word  string
		scale float64
		of    func(*result.Beside) result.Estimate
	}{
		{"kept", s.Window.Hours, func(b *result.Beside) result.Estimate { return b.Kept }},
		{"given.back", s.Window.Hours, func(b *result.Beside) result.Estimate { return b.GivenBack }},
		{"by.hand", s.Window.Hours, func(b *result.Beside) result.Estimate { return b.ByHand }},
		{"hand.minutes", 1, func(b *result.Beside) result.Estimate { return b.Minutes }},
		{"returned", s.Window.Hours, func(b *result.Beside) result.Estimate { return b.Returned }},
		{"dry", 100, func(b *result.Beside) result.Estimate { return b.RanDry }},
		{"dry.windows", 100, func(b *result.Beside) result.Estimate { return b.DryWindows }},
	}
	head, unit := heads("store", "pieces"), []string{}
	var name []string
	for _, b := range all {
		name, unit = append(name, b.Name), append(unit, s.placeNamed(b.Name).Unit)
	}
	cells := [][]cell{textColumn(name), textColumn(unit)}
	for _, c := range columns {
		var estimates []result.Estimate
		for _, b := range all {
			estimates = append(estimates, c.of(b.Beside))
		}
		if slices.ContainsFunc(estimates, func(e result.Estimate) bool { return e.N > 0 }) {
			head, cells = append(head, say("column."+c.word, f)), append(cells, columnOf(estimates, c.scale))
		}
	}
	return tableOf(caption, head, 2, cells...)
}
