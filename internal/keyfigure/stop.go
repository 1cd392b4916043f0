package keyfigure

import "tuckline/sim"

// addStops derives the stops by cause and what they take from the station's running time.
func (s *Station) addStops(stops []sim.Stop) {
	renewed := renewals(stops, s.Gives)
	for i := range stops {
		s.addStop(&stops[i], renewed[i])
	}
}

func (s *Station) addStop(stop *sim.Stop, renewed renewal) {
	factor := stop.RateFactor
	if factor == 0 {
		factor = 1
	}
	if stop.Every.Mean() <= 0 {
		return
	}
	f := Stop{
		Name: stop.Name, Class: stop.Class.String(), Clock: clockWord(stop.Clock),
		Every: stop.Every.Mean() / factor, Lasts: stop.Lasts.Mean() / minute,
	}
	switch {
	case renewed.every > 0 && stop.Clock == sim.PieceClock:
		f.Every = renewed.every * float64(s.Gives)
	case renewed.every > 0:
		f.Every = renewed.every
	case renewed.never || renewed.unknown:
		s.addAside(stop, &f, renewed)
		return
	}
	own := pause{lasts: stop.Lasts, random: memoryless(stop), steady: stop.Every.CV() < 1}
	switch stop.Clock {
	case sim.CycleClock:
		f.Minutes = f.Every * s.meanCycle(s.Set)
		own.perCycle = 1 / f.Every
	case sim.PieceClock:
		cycles := f.Every / float64(s.Gives)
		f.Minutes = cycles * s.meanCycle(s.Set)
		own.perCycle = 1 / cycles
	case sim.RunningClock:
		f.Every /= minute
		f.Minutes = f.Every
		own.perRun = 1 / f.Every
	case sim.CalendarClock:
		f.Every /= minute
		f.Minutes = f.Every
		s.calendar *= f.Every / (f.Every + f.Lasts)
		s.outages = append(s.outages, newOutage(stop, f.Every, f.Lasts))
	}
	f.DownShare = f.Lasts / f.Minutes
	s.Stops = append(s.Stops, f)
	own.mean = f.Lasts
	s.pause(own)
}

// pause adds own stops to what they take from the running time.
func (s *Station) pause(p pause) {
	if p.perCycle+p.perRun <= 0 {
		return
	}
	s.downPerCycle += p.perCycle * p.mean
	s.downPerRun += p.perRun * p.mean
	s.pauses = append(s.pauses, p)
}

// addPickStops derives the stops after picks that have failed for good.
func (s *Station) addPickStops(materials []sim.Material) {
	for _, m := range materials {
		if missed := newPick(m.MisPicks).missed; m.MisPicks.Stops && missed > 0 {
			s.addEnded(sim.MisPickName(m.Name), sim.Minor, pause{lasts: m.MisPicks.Lasts, often: often{perCycle: missed}, random: true})
		}
	}
}

// addRejectStop derives the stops after so many cycles in a row with a reject.
func (s *Station) addRejectStop(line *sim.Station) {
	if comes := rowStops(line); comes > 0 {
		s.addEnded(sim.RejectStopName, sim.Quality, pause{lasts: line.RejectStop.Lasts, often: often{perCycle: comes}, unsure: blinded(line)})
	}
}

// addEnded adds a stop that begins at the end of a share of the cycles.
func (s *Station) addEnded(name string, class sim.Class, p pause) {
	p.mean = p.lasts.Mean() / minute
	f := Stop{
		Name: name, Class: class.String(), Clock: clockWord(sim.CycleClock),
		Every: 1 / p.perCycle, Minutes: s.meanCycle(s.Set) / p.perCycle, Lasts: p.mean,
	}
	f.DownShare = f.Lasts / f.Minutes
	s.Stops = append(s.Stops, f)
	s.pause(p)
}

// addAside notes a stop that takes nothing from the running time, or of which nobody knows
// how much: with the mean of its own law.
func (s *Station) addAside(stop *sim.Stop, f *Stop, renewed renewal) {
	switch stop.Clock {
	case sim.CycleClock:
		f.Minutes = f.Every * s.meanCycle(s.Set)
	case sim.PieceClock:
		f.Minutes = f.Every / float64(s.Gives) * s.meanCycle(s.Set)
	default:
		f.Every /= minute
		f.Minutes = f.Every
	}
	f.Never, f.Aside = renewed.never, renewed.unknown
	s.Stops = append(s.Stops, *f)
}

func clockWord(c sim.Clock) string {
	switch c {
	case sim.CycleClock:
		return "cycles"
	case sim.PieceClock:
		return "pieces"
	case sim.RunningClock:
		return "running"
	default:
		return "calendar"
	}
}
