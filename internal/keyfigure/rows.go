package keyfigure

import "tuckline/sim"

// Row is one figure for a table or a file.
type Row struct {
	// Group is the name of the station, of the place, or "line".
	Group string `json:"group"`
	Name  string `json:"name"`
	// Value is in Unit; shares are 0 to 1 with an empty unit. Unlimited capacity is -1.
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
	// Text is the value with its unit as people read it.
	Text string `json:"text"`
}

// List gives every figure as a row: the line, then stations and places in the
// order of the product. Figures that a line does not have are left out.
func (f Figures) List() []Row {
	l := list{group: "line"}
	l.line(&f)
	for _, entry := range f.Way {
		l.group = f.nameOf(entry)
		if entry.Place {
			l.place(&f.Places[entry.Index])
		} else {
			l.station(&f.Stations[entry.Index], f.Unit)
		}
	}
	l.crewRows(&f)
	l.orderRows(&f)
	l.workingRows(&f)
	return l.rows
}

type list struct {
	group string
	rows  []Row
}

func (l *list) add(name string, value float64, unit string) {
	l.rows = append(l.rows, Row{Group: l.group, Name: name, Value: value, Unit: unit, Text: number(value) + " " + unit})
}

func (l *list) share(name string, value float64) {
	l.rows = append(l.rows, Row{Group: l.group, Name: name, Value: value, Text: percent(value)})
}

// some adds a figure that is 0 where it does not exist.
func (l *list) some(name string, value float64, unit string) {
	if value > 0 {
		l.add(name, value, unit)
	}
}

func (l *list) line(f *Figures) {
	b := &f.Bounds
	if b.Unlimited <= 0 {
		return
	}
	l.add("upper bound with buffers without limit", 60*b.Unlimited, f.Unit+"/h")
	l.add("without any buffer", 60*b.Rigid, f.Unit+"/h")
	l.add("tied speed"+f.lessRejects(", "), 60*b.Tied, f.Unit+"/h")
	l.share("efficiency without any buffer", b.RigidEfficiency)
}

func (l *list) station(s *Station, unit string) {
	l.speeds(s, unit)
	l.efficiencies(s)
	l.losses(s)
	l.some("longer cycles add", s.GroupSeconds, "s")
	l.some("a restart costs", s.RestartSeconds, "s")
	if s.Tries >= seenTries {
		l.add("cycle times for each cycle", s.Tries, "cycles")
	}
	l.some("web speed", s.WebSpeed, "m/min")
	if s.Dwell != nil {
		l.dwell(s.Dwell)
	}
	for i := range s.Materials {
		l.material(&s.Materials[i], s.GivesUnit)
	}
	for _, stop := range s.Stops {
		l.add(stop.Name+": every", stop.Minutes, "min")
		l.add(stop.Name+": lasts", stop.Lasts, "min")
		l.share(stop.Name+": down per running time", stop.DownShare)
	}
}

// speeds are those of the station in its own pieces and, where they reach the count, in those of the answer.
func (l *list) speeds(s *Station, unit string) {
	l.add("set speed", s.Set.Cycles, "cycles/min")
	l.add("set rate", s.Set.Pieces, s.GivesUnit+"/min")
	l.add("top speed", s.Top.Cycles, "cycles/min")
	l.add("top rate", s.Top.Pieces, s.GivesUnit+"/min")
	if s.PerPiece > 0 {
		l.add("set rate at the count", s.Set.Answer, unit+"/min")
		l.add("top rate at the count", s.Top.Answer, unit+"/min")
		l.add("effective rate at the count", s.Effective.Answer, unit+"/min")
		l.add("at most at the count", s.AtMost.Answer, unit+"/min")
	}
	for i := range s.Steps {
		step := &s.Steps[i]
		l.add("speed step to "+number(step.Cycles)+" cycles/min from", float64(step.From), step.Unit+" in "+step.Place)
		l.add("speed step back at", float64(step.BackAt), step.Unit+" in "+step.Place)
	}
	l.add("effective rate", s.Effective.Pieces, s.GivesUnit+"/min")
}

func (l *list) efficiencies(s *Station) {
	l.share("efficiency alone", s.Alone)
	if s.Guaranteed > 0 {
		l.share("guaranteed efficiency alone", s.Guaranteed)
		l.share("works in the line without any buffer", s.InRigid)
	}
	if len(s.JoinedWith) > 0 {
		l.share("efficiency with joined stops", s.Joined)
	}
}

// losses are said one by one where rejects are not the only ones.
func (l *list) losses(s *Station) {
	l.share("good share", s.GoodShare)
	if len(s.Losses) > 1 || s.GoodShare < 1 && s.Losses[0].Name != rejected {
		for _, loss := range s.Losses {
			l.rows = append(l.rows, Row{Group: l.group, Name: loss.Name, Value: loss.Share, Text: loss.text()})
		}
	}
}

func (l *list) dwell(d *Dwell) {
	l.add("dwell at set speed", d.Set, "s")
	if d.Fastest < d.Set {
		l.add("dwell at the highest speed in use", d.Fastest, "s")
	}
	if d.Qualified {
		l.add("qualified dwell from", d.Min, "s")
		l.add("qualified dwell to", d.Max, "s")
		l.add("allowed speed from", d.Slowest, "cycles/min")
		l.add("allowed speed to", d.Quickest, "cycles/min")
	}
}

func (l *list) material(m *Material, gives string) {
	l.some(m.Name+": wound", m.Wound, "m")
	l.add(m.Name+": holds", m.Amount, m.Unit)
	l.add(m.Name+": use", m.PerMinute, m.Unit+"/min")
	l.add(m.Name+": lasts", m.Minutes, "min")
	l.add(m.Name+": makes", m.Pieces, gives)
	if m.Refill != m.Amount {
		l.add(m.Name+": refill lasts", m.RefillMinutes, "min")
	}
	l.some(m.Name+": left at the alarm", m.AlarmMinutes, "min")
	if m.Store != nil {
		l.webStore(m.Name, m.Store)
	}
	if m.Alarm {
		l.share(m.Name+": refills longer than that", m.LateShare)
	}
	l.some(m.Name+": next one prepared in", m.PrepareMinutes, "min")
	if !m.FilledInTime {
		l.add(m.Name+": change", m.Lasts, "min")
		l.share(m.Name+": down per running time", m.DownShare)
	}
}

func (l *list) place(p *Place) {
	l.rows = append(l.rows, Row{
		Group: l.group, Name: "places", Value: float64(p.Capacity), Unit: p.Unit, Text: placesText(p),
	})
	if p.Kind == "hand-over" || p.Capacity == sim.Unlimited {
		return
	}
	l.add("feed at set speed", p.Feed, p.Unit+"/min")
	l.add("drain at top speed", p.Drain, p.Unit+"/min")
	if p.TransitSeconds > 0 {
		l.add("transit", p.TransitSeconds, "s")
		l.add("on the way at set speed", p.InTransit, p.Unit)
	}
	l.add("usable", p.Spare, p.Unit)
	l.add("usable for", p.SpareSeconds, "s")
	if p.Kind == "buffer" {
		l.add("minutes of flow", p.Minutes, "min")
		l.some("empty after", p.DrainMinutes, "min")
	}
	l.some("stops feeders at", float64(p.StopUpstream), p.Unit)
	l.store(p)
	l.covers(p)
	l.some("restarts feeders at", float64(p.Restart), p.Unit)
	l.some("starts what takes from it at", float64(p.Start), p.Unit)
}

func placesText(p *Place) string {
	if p.Capacity == sim.Unlimited {
		return "without limit"
	}
	return count(p.Capacity) + " " + p.Unit
}
