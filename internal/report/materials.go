package report

import (
	"cmp"
	"slices"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/sim"
)

// stock is a material at its station.
type stock struct {
	result.Material
	Station string
	line    *sim.Material
	figures keyfigure.Material
}

// stocks are all materials, in the order of the line.
func (s *subject) stocks() []stock {
	var all []stock
	for i, station := range s.Results.Stations {
		for k, m := range station.Materials {
			one := stock{Material: m, Station: station.Name, line: &s.Scenario.Line.Stations[i].Materials[k]}
			if derived := s.Figures.Stations[i].Materials; k < len(derived) {
				one.figures = derived[k]
			}
			all = append(all, one)
		}
	}
	return all
}

// refilled are the materials that somebody sees to while the station runs.
func (s *subject) refilled() []stock {
	return slices.DeleteFunc(s.stocks(), func(m stock) bool { return m.Tasks == nil })
}

// refillsSection says whether refills are done in time.
func refillsSection(s *subject) (*section, error) {
	all := s.refilled()
	if len(all) == 0 {
		return nil, nil
	}
	heading := s.refillsHeading(all)
	return &section{ID: "refills", Heading: heading, Reading: say("refills.reading", nil), Table: s.refillsTable(all, heading), Open: true}, nil
}

func (s *subject) refillsHeading(all []stock) string {
	worst := slices.MaxFunc(all, func(a, b stock) int { return cmp.Compare(a.Tasks.Late.Mean, b.Tasks.Late.Mean) })
	none := !slices.ContainsFunc(all, func(m stock) bool { return m.Tasks.PerHour.Mean > 0 })
	f := facts{
		"Late": "", "None": none, "Windows": s.Window.Runs, "Window": s.Window.One, "Several": len(s.refilled()) > 1, "Task": worst.task(),
		"Material": worst.Name, "Station": worst.Station, "PerWindow": numberOf(worst.Tasks.LatePerHour, s.Window.Hours).String(),
	}
	if worst.Tasks.Late.Mean > 0 {
		f["Late"] = percentWords(worst.Tasks.Late.Mean)
	}
	return say("refills.heading", f)
}

// lateWords say which refills come late, if any do.
func (s *subject) lateWords() string {
	all := slices.DeleteFunc(s.refilled(), func(m stock) bool { return m.Tasks.Late.Mean <= 0 })
	if len(all) == 0 {
		return ""
	}
	return say("sentence", facts{"Words": s.refillsHeading(all)})
}

func (s *subject) refillsTable(all []stock, caption string) table {
	w := facts{"Window": s.Window.One}
	var material, station, left []string
	var minutes []cell
	for _, m := range all {
		amount, time := m.left()
		material, station = append(material, m.Name), append(station, m.Station)
		left, minutes = append(left, amount), append(minutes, text(time))
	}
	column := func(of func(*result.Tasks) result.Estimate, scale float64) []cell {
		var estimates []result.Estimate
		for _, m := range all {
			estimates = append(estimates, of(m.Tasks))
		}
		return columnOf(estimates, scale)
	}
	head := append(heads("material", "station", "left", "left.minutes"), say("column.refills", w),
		say("column.late", nil), say("column.late.count", w), say("column.lateness", nil))
	return tableOf(caption, head, 3, textColumn(material), textColumn(station), textColumn(left), minutes,
		column(func(t *result.Tasks) result.Estimate { return t.PerHour }, s.Window.Hours),
		column(func(t *result.Tasks) result.Estimate { return t.Late }, 100),
		column(func(t *result.Tasks) result.Estimate { return t.LatePerHour }, s.Window.Hours),
		column(func(t *result.Tasks) result.Estimate { return t.MeanLatenessS }, 1))
}

// task is what people do to it while the station runs.
func (m stock) task() string {
	switch {
	case m.line.Alarm.On:
		return say("refills.refill", nil)
	case m.line.Store.On:
		return say("refills.splice", nil)
	default:
		return say("refills.prepare", nil)
	}
}

// left is what there is when somebody is asked, and how long it lasts at set speed in minutes: the stock
// at the alarm, or the content of a web store. A preparation has the whole reel.
func (m stock) left() (amount, minutes string) {
	engine := m.line.Amount
	switch {
	case m.line.Alarm.On:
		engine = m.line.Alarm.Level
	case m.line.Store.On:
		engine = m.line.Store.Length
	}
	in := float64(engine)
	if m.Unit == "m" {
		in /= 1e6
	}
	amount = say("refills.amount", facts{"Amount": short3(in), "Unit": m.Unit})
	if m.figures.PerMinute <= 0 {
		return amount, "–"
	}
	return amount, short3(in / m.figures.PerMinute)
}

// materialsSection says what is used and wasted.
func materialsSection(s *subject) (*section, error) {
	all := slices.DeleteFunc(s.stocks(), func(m stock) bool { return m.UsedPerHour.Mean <= 0 })
	if len(all) == 0 {
		return nil, nil
	}
	worst := slices.MaxFunc(all, func(a, b stock) int { return cmp.Compare(a.wasted(), b.wasted()) })
	f := facts{"Share": "", "Material": worst.Name, "Station": worst.Station, "Several": len(all) > 1}
	if worst.wasted() > 0 {
		f["Share"] = percentWords(worst.wasted())
	}
	heading := say("materials.heading", f)
	return &section{ID: "materials", Heading: heading, Reading: say("materials.reading", nil), Table: s.materialsTable(all, heading), Open: true}, nil
}

// wasted is the share of what is used.
func (m stock) wasted() float64 { return m.WastedPerHour.Mean / m.UsedPerHour.Mean }

// materialsTable has a row a material, each with its own precision, because units differ.
func (s *subject) materialsTable(all []stock, caption string) table {
	w, answer := facts{"Window": s.Window.One}, facts{"Unit": s.Results.Output.Unit, "Thin": thin}
	t := table{Caption: caption, Words: 3, Head: append(heads("material", "station", "unit"),
		say("column.used", w), say("column.used.answer", answer), say("column.wasted.answer", answer))}
	failed := map[string]func(stock) result.Estimate{
		"failed.splices": func(m stock) result.Estimate { return m.FailedSplicesPerHour },
		"failed.picks":   func(m stock) result.Estimate { return m.FailedPicksPerHour },
	}
	var shown []string
	for _, word := range []string{"failed.splices", "failed.picks"} {
		if slices.ContainsFunc(all, func(m stock) bool { return failed[word](m).N > 0 }) {
			shown = append(shown, word)
			t.Head = append(t.Head, say("column."+word, w))
		}
	}
	for _, m := range all {
		row := []cell{
			text(m.Name), text(m.Station), text(m.Unit), estimateCell(numberOf(m.UsedPerHour, s.Window.Hours)),
			estimateCell(numberOf(m.UsedPerAnswer, 1000)), estimateCell(numberOf(m.WastedPerAnswer, 1000)),
		}
		for _, word := range shown {
			row = append(row, estimateCell(numberOf(failed[word](m), s.Window.Hours)))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
