package report

import (
	"cmp"
	"html/template"
	"slices"

	"tuckline/internal/result"
)

// wait is a part of the blocked or starved time of a station that goes back to one cause.
type wait struct {
	Station       string
	look          stateLook
	origin        result.Origin
	share, spells result.Estimate
}

// leastWait is the share of time below which a wait is not worth a row.
const leastWait = 0.001

// waitsOf are the waits of a station, the longest first.
func waitsOf(station result.Station) []wait {
	var all []wait
	for _, o := range station.Origins {
		all = append(all,
			wait{station.Name, waiting[0], o, o.Starved, o.StarvedSpellsPerHour},
			wait{station.Name, waiting[1], o, o.Blocked, o.BlockedSpellsPerHour})
	}
	all = slices.DeleteFunc(all, func(w wait) bool { return w.share.Mean < leastWait })
	slices.SortStableFunc(all, func(a, b wait) int { return cmp.Compare(b.share.Mean, a.share.Mean) })
	return all
}

// causeName says the cause as a sentence does.
func (w wait) causeName() string {
	f := facts{"Station": w.origin.Station, "Stop": w.origin.Cause}
	switch w.origin.Cause {
	case result.Pace:
		return say("origin.pace", f)
	case result.Rate:
		return say("origin.rate", f)
	case result.Rejects:
		return say("origin.rejects", f)
	case result.Store:
		return say("origin.store", f)
	case result.Supply:
		return say("origin.supply", f)
	case result.Outage:
		return say("origin.outage", f)
	case result.Order:
		return say("origin.order", f)
	}
	return say("stop.at", f)
}

// longOnPaper is the number of rows from which the table stays folded on paper: the chart has what limits the line.
const longOnPaper = 30

// drawnOrigins is how many waits the chart has at most; the table has all.
const drawnOrigins = 12

// waits are those of the stations that limit the line, the longest first, or of all where these never
// wait; and all of all stations.
func (s *subject) waits() (limiting, all []wait) {
	names := stationsOf(s.limiting())
	for _, station := range s.Results.Stations {
		waits := waitsOf(station)
		all = append(all, waits...)
		if slices.Contains(names, station.Name) {
			limiting = append(limiting, waits...)
		}
	}
	if len(limiting) == 0 {
		limiting = slices.Clone(all)
	}
	slices.SortStableFunc(limiting, func(a, b wait) int { return cmp.Compare(b.share.Mean, a.share.Mean) })
	return limiting, all
}

// waitWords say in a sentence why what limits the line waits.
func (s *subject) waitWords() string {
	limiting, _ := s.waits()
	if len(limiting) == 0 {
		return ""
	}
	return say("sentence", facts{"Words": originsHeading(limiting)})
}

// originsSection says why the stations that limit the line wait, and in its table why all do.
func originsSection(s *subject) (*section, error) {
	drawn, all := s.waits()
	if len(all) == 0 {
		return nil, nil
	}
	heading := originsHeading(drawn)
	drawn = drawn[:min(drawnOrigins, len(drawn))]
	option, err := s.originsOption(drawn, described(heading))
	if err != nil {
		return nil, err
	}
	return &section{
		ID: "origins", Heading: heading, Reading: say("origins.reading", facts{"Window": s.Window.One}),
		Charts: []chart{{"origins", 70 + 30*len(drawn), option}},
		Table:  s.originsTable(all, heading),
	}, nil
}

// namedOrigins is how many causes a heading names at most.
const namedOrigins = 3

// originsHeading names the cause of the longest wait, and those that the intervals do not tell from it.
func originsHeading(waits []wait) string {
	worst := waits[0]
	var causes []string
	for _, w := range waits {
		if w.Station == worst.Station && w.look.State == worst.look.State && w.share.High >= worst.share.Low && len(causes) < namedOrigins {
			causes = append(causes, say("origins.part", facts{"Cause": w.causeName(), "Share": percentWords(w.share.Mean)}))
		}
	}
	return say("origins.heading", facts{
		"Station": worst.Station, "State": worst.look.Word(), "Causes": listed(causes), "Several": len(waits) > len(causes),
	})
}

func (s *subject) originsOption(waits []wait, aria string) (template.JS, error) {
	several := len(s.limiting()) > 1
	var rows []barRow
	place := placeIn(waits, func(w wait) result.Estimate { return w.spells }, s.Window.Hours)
	for _, w := range waits {
		f := facts{
			"Station": w.Station, "State": w.look.Word(), "Cause": w.causeName(), "Several": several, "Window": s.Window.One,
			"Share": numberOf(w.share, 100), "Count": atPlace(w.spells, s.Window.Hours, place).Mean,
		}
		rows = append(rows, barRow{
			Label: say("origins.label", f), Tip: say("origins.tip", f), Count: say("origins.count", f),
			Share: w.share, Scale: 100, Fill: "state:" + w.look.Key,
		})
	}
	return barsWithCounts(aria, say("share", nil), "accent", rows)
}

// originsTable has all waits of all stations; overlap is of both states together.
func (s *subject) originsTable(all []wait, caption string) table {
	var station, state, cause []string
	var share, spells, overlap []result.Estimate
	for _, w := range all {
		station, state, cause = append(station, w.Station), append(state, w.look.Word()), append(cause, w.causeName())
		share, spells, overlap = append(share, w.share), append(spells, w.spells), append(overlap, w.origin.Overlap)
	}
	head := append(heads("station", "waits.state", "waits.cause", "waits.share"), say("column.spells", facts{"Window": s.Window.One}), say("column.overlap", nil))
	t := tableOf(caption, head, 3, textColumn(station), textColumn(state), textColumn(cause),
		sharesColumn(share), columnOf(spells, s.Window.Hours), sharesColumn(overlap))
	t.Long = len(t.Rows) > longOnPaper
	t.Note = say("origins.note", facts{"Least": rounded(100*leastWait, -1) + thin + "%"})
	return t
}
