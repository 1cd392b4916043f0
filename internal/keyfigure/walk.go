package keyfigure

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

func (f *Figures) nameOf(e Entry) string {
	if e.Place {
		return f.Places[e.Index].Name
	}
	return f.Stations[e.Index].Name
}

// lines are the figures of one stop on the way.
func (f *Figures) lines(e Entry) []item {
	if e.Place {
		return f.Places[e.Index].lines()
	}
	return f.Stations[e.Index].lines(f.Unit)
}

func (s *Station) lines(unit string) []item {
	out := append([]item{{"speed", s.speedText(unit)}}, s.meetings()...)
	for i := range s.Steps {
		out = append(out, item{"speed step", s.Steps[i].text(s)})
	}
	if s.GroupSeconds > 0 {
		out = append(out, item{"longer cycles", fmt.Sprintf("add %s s to the mean cycle", number(s.GroupSeconds))})
	}
	if s.WebSpeed > 0 {
		out = append(out, item{"web", number(s.WebSpeed) + " m/min"})
	}
	if s.Dwell != nil {
		out = append(out, item{"dwell", s.Dwell.text(s)})
	}
	for i := range s.Materials {
		out = append(out, item{s.Materials[i].Name, s.Materials[i].text(s.GivesUnit)})
	}
	for i := range s.Stops {
		out = append(out, item{s.Stops[i].Name, s.Stops[i].text(s.GivesUnit)})
	}
	if len(s.JoinedWith) > 0 {
		out = append(out, item{"stops with", strings.Join(s.JoinedWith, ", ")})
	}
	for _, loss := range s.Losses {
		out = append(out, item{loss.Name, loss.text() + " of its " + s.GivesUnit})
	}
	if s.Tries >= seenTries {
		out = append(out, item{"tries", fmt.Sprintf("%s cycle times for each cycle, on average", number(s.Tries))})
	}
	if s.RestartSeconds > 0 {
		out = append(out, item{"restart", fmt.Sprintf("costs %s s after a standstill of more than one cycle", number(s.RestartSeconds))})
	}
	if s.Guaranteed > 0 {
		out = append(out, item{"guaranteed", s.guaranteedText()})
	}
	if len(s.LeftOut) > 0 {
		out = append(out, item{"not in alone", strings.Join(s.LeftOut, ", ")})
	}
	return out
}

func (s *Station) speedText(unit string) string {
	text := fmt.Sprintf("%s cycles/min = %s %s/min", number(s.Set.Cycles), number(s.Set.Pieces), s.GivesUnit)
	if s.GivesUnit != unit && s.PerPiece > 0 {
		text += fmt.Sprintf(" = %s %s/min", number(s.Set.Answer), unit)
	}
	if s.Top.Cycles > s.Set.Cycles*(1+1e-6) {
		text += fmt.Sprintf("; top %s cycles/min, %s over", number(s.Top.Cycles), percent(s.Top.Cycles/s.Set.Cycles-1)) + s.beyond(s.Top.Cycles)
	}
	return text
}

func (d *Dwell) text(s *Station) string {
	text := fmt.Sprintf("%s s at %s cycles/min", number(d.Set), number(s.Set.Cycles))
	if !d.Qualified {
		return text
	}
	where := "inside"
	if !d.SetInside {
		where = "outside"
	}
	text += fmt.Sprintf(", %s the qualified %s to %s s, which allows %s to %s cycles/min",
		where, number(d.Min), number(d.Max), number(d.Slowest), number(d.Quickest))
	if d.SetInside && !d.FastestInside {
		text += fmt.Sprintf("; %s s at %s cycles/min is outside", number(d.Fastest), number(s.Fastest.Cycles))
	}
	return text
}

func (m *Material) text(gives string) string {
	text := fmt.Sprintf("%s of %s %s", m.Kind, number(m.Amount), m.Unit)
	if m.Wound > 0 {
		text = fmt.Sprintf("reel of %s m usable (%s m wound)", number(m.Amount), number(m.Wound))
	}
	text += fmt.Sprintf(" = %s min = %s %s", number(m.Minutes), number(m.Pieces), gives)
	if m.Refill != m.Amount {
		text += fmt.Sprintf("; refill of %s = %s min", number(m.Refill), number(m.RefillMinutes))
	}
	if m.PrepareMinutes > 0 {
		text += fmt.Sprintf("; the next one is ready %s min after each change, %s %% later than it is needed", number(m.PrepareMinutes), number(100*m.PrepareLate))
	}
	switch {
	case m.Alarm:
		return text + fmt.Sprintf("; the alarm leaves %s min, a refill takes %s min: %s %% take longer, even if somebody comes at once",
			number(m.AlarmMinutes), number(m.Lasts), number(100*m.LateShare))
	case m.Store != nil:
		return text + fmt.Sprintf("; splice of %s min while it runs; %s", number(m.Lasts), m.Store.text())
	}
	return text + fmt.Sprintf("; change %s min = %s of running time", number(m.Lasts), percent(m.DownShare))
}

func (s *Stop) text(gives string) string {
	text := "every " + number(s.Minutes) + " min"
	switch s.Clock {
	case "cycles":
		text = fmt.Sprintf("every %s cycles = %s min", number(s.Every), number(s.Minutes))
	case "pieces":
		text = fmt.Sprintf("every %s %s = %s min", number(s.Every), gives, number(s.Minutes))
	case "calendar":
		return text + fmt.Sprintf(" of the calendar, lasts %s min", number(s.Lasts))
	}
	switch {
	case s.Never:
		return text + ", but other stops always renew its clock before"
	case s.Aside:
		return text + fmt.Sprintf(" or less often, since other stops renew its clock, lasts %s min", number(s.Lasts))
	}
	return text + fmt.Sprintf(", lasts %s min = %s of running time", number(s.Lasts), percent(s.DownShare))
}

// handOverText says how many places the program put, and what for.
func (p *Place) handOverText() string {
	places := count(p.Capacity) + " places"
	if p.Capacity == 1 {
		places = "1 place"
	}
	if p.Stacks {
		return places + " put by the program: one stack is collected beside one that waits for its pocket"
	}
	return places + " put by the program: the collating place of the machine"
}

func (p *Place) lines() []item {
	if p.Kind == "hand-over" {
		if p.Capacity == 0 {
			return nil
		}
		return []item{{"hand-over", p.handOverText()}}
	}
	out := []item{{"places", p.placesText()}}
	if p.Kind == "buffer" && p.Lies == "" && p.Capacity != sim.Unlimited && p.Feed > 0 {
		one := item{"never empty", fmt.Sprintf("while fed at set speed: %s %s/min in, no more than %s out at top speed", number(p.Feed), p.Unit, number(p.Drain))}
		if p.DrainMinutes > 0 {
			one = item{"empty after", fmt.Sprintf("%s min from full, %s %s/min out at top speed, %s in", number(p.DrainMinutes), number(p.Drain), p.Unit, number(p.Feed))}
		}
		out = append(out, one)
	}
	if p.Lies != "" && p.DrainMinutes > 0 {
		out = append(out, item{"empty after", fmt.Sprintf("%s min from full, %s %s/min more than come at set speed", number(p.DrainMinutes), number(p.frees), p.Unit)})
	}
	out = append(out, p.storeLines()...)
	for i := range p.Covers {
		out = append(out, item{map[bool]string{true: "free places", false: ""}[i == 0], p.Covers[i].text(p)})
	}
	if p.StopUpstream > 0 {
		out = append(out, item{"stops feeders", "at " + count(p.StopUpstream) + " " + p.Unit})
	}
	if p.Restart > 0 {
		out = append(out, item{"restarts them", "at " + count(p.Restart) + " " + p.Unit})
	}
	if p.Start > 0 {
		out = append(out, item{"restarts takers", "at " + count(p.Start) + " " + p.Unit + ", once they have been starved"})
	}
	return out
}

func (p *Place) placesText() string {
	if p.Capacity == sim.Unlimited {
		return "without limit"
	}
	text := count(p.Capacity)
	if p.Stands {
		return text + fmt.Sprintf(", %s of them on the way at %s %s/min (%s s)", number(p.InTransit), number(p.Feed), p.Unit, number(p.TransitSeconds))
	}
	if p.TransitSeconds > 0 {
		return text + fmt.Sprintf(", %s of them on the way at %s %s/min (%s s), %s spare = %s s",
			number(p.InTransit), number(p.Feed), p.Unit, number(p.TransitSeconds), number(p.Spare), number(p.SpareSeconds))
	}
	return text + fmt.Sprintf(" = %s min of flow at %s %s/min", number(p.Minutes), number(p.Feed), p.Unit)
}
