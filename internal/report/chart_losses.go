package report

import (
	"html/template"

	"tuckline/internal/result"
)

// lossKind is one way to lose a piece at a station.
type lossKind struct {
	word string
	of   func(result.Pieces) result.Estimate
}

// lossKinds are in the order in which the fate of a piece is settled, scrap last.
var lossKinds = []lossKind{
	{"faulty", func(p result.Pieces) result.Estimate { return p.Faulty }},
	{"in.runs", func(p result.Pieces) result.Estimate { return p.InRuns }},
	{"mis.picked", func(p result.Pieces) result.Estimate { return p.MisPicked }},
	{"lost.packs", func(p result.Pieces) result.Estimate { return p.LostPacks }},
	{"no.reads", func(p result.Pieces) result.Estimate { return p.NoReads }},
	{"samples", func(p result.Pieces) result.Estimate { return p.Samples }},
	{"scrapped", func(p result.Pieces) result.Estimate { return p.Scrapped }},
}

func (k lossKind) Word() string { return say("losses."+k.word, nil) }

// loser is a station that loses pieces.
type loser struct {
	result.Station
	Unit string
}

func (l loser) loses(k lossKind) bool { return k.of(l.Pieces).Mean > 0 }

// share is what is lost of all that is made.
func (l loser) share() float64 { return 1 - l.Pieces.Good.Mean/l.Pieces.Made.Mean }

func (s *subject) losers() []loser {
	var all []loser
	for i, station := range s.Results.Stations {
		one := loser{station, s.givesUnit(i)}
		for _, kind := range lossKinds {
			if one.loses(kind) {
				all = append(all, one)
				break
			}
		}
	}
	return all
}

// lossesSection shows where pieces are lost, and how.
func lossesSection(s *subject) (*section, error) {
	all := s.losers()
	if len(all) == 0 {
		return nil, nil
	}
	heading := lossesHeading(all, s.Window)
	option, rows, err := s.lossesOption(all, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "losses", Heading: heading, Reading: say("losses.reading", facts{"Window": s.Window.One}),
		Charts: []chart{{"losses", 70 + 30*rows, option}},
		Table:  s.lossesTable(all, heading),
	}, nil
}

func lossesHeading(all []loser, w window) string {
	worst := all[0]
	for _, one := range all {
		if one.share() > worst.share() {
			worst = one
		}
	}
	most := lossKinds[0]
	for _, kind := range lossKinds {
		if kind.of(worst.Pieces).Mean > most.of(worst.Pieces).Mean {
			most = kind
		}
	}
	return say("losses.heading", facts{
		"Station": worst.Name, "Unit": worst.Unit, "Share": percentWords(worst.share()), "Several": len(all) > 1,
		"Kind": most.Word(), "Pieces": numberOf(most.of(worst.Pieces), w.Hours).Mean, "Window": w.One,
	})
}

// lossesOption has a bar for every way in which a station loses pieces, as a share of what it makes.
func (s *subject) lossesOption(all []loser, aria string) (option template.JS, rows int, err error) {
	var bars []barRow
	place := s.lossesPlace(all)
	for _, l := range all {
		for _, kind := range lossKinds {
			if !l.loses(kind) {
				continue
			}
			lost := kind.of(l.Pieces)
			f := facts{"Station": l.Name, "Kind": kind.Word(), "Pieces": atPlace(lost, s.Window.Hours, place), "Unit": l.Unit, "Window": s.Window.One}
			bars = append(bars, barRow{
				Label: say("losses.label", f), Tip: say("losses.tip", f), Count: say("losses.count", f),
				Share: lost, Scale: 100 / l.Pieces.Made.Mean,
			})
		}
	}
	option, err = barsWithCounts(aria, say("losses.axis", nil), "accent", bars)
	return option, len(bars), err
}

// lossesPlace is the power of ten for the pieces of all ways to lose one.
func (s *subject) lossesPlace(all []loser) int {
	var lost []result.Estimate
	for _, l := range all {
		for _, kind := range lossKinds {
			lost = append(lost, kind.of(l.Pieces))
		}
	}
	return columnPlace(lost, s.Window.Hours)
}

// lossesTable adds up, station by station: made is good and all that follows. A row has one precision.
func (s *subject) lossesTable(all []loser, caption string) table {
	shown := []lossKind{}
	for _, kind := range lossKinds {
		for _, l := range all {
			if l.loses(kind) {
				shown = append(shown, kind)
				break
			}
		}
	}
	t := table{
		Caption: caption, Words: 2, Note: say("losses.note", facts{"Window": s.Window.One}),
		Head: append(heads("station", "pieces"), say("losses.made", nil), say("losses.good", nil)),
	}
	for _, kind := range shown {
		t.Head = append(t.Head, kind.Word())
	}
	for _, l := range all {
		row := []result.Estimate{l.Pieces.Made, l.Pieces.Good}
		for _, kind := range shown {
			row = append(row, kind.of(l.Pieces))
		}
		t.Rows = append(t.Rows, append([]cell{text(l.Name), text(l.Unit)}, rowOf(row, s.Window.Hours)...))
	}
	return t
}

// rowOf shows counts that add up with one precision: whole pieces, or tenths where few are lost.
func rowOf(estimates []result.Estimate, scale float64) []cell {
	place := 0
	for _, e := range estimates {
		if mean := e.Mean * scale; mean > 0 && mean < 10 {
			place = -1
		}
	}
	cells := make([]cell, len(estimates))
	for i, e := range estimates {
		cells[i] = estimateCell(atPlace(e, scale, place))
	}
	return cells
}
