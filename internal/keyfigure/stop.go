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
	s.regular = s.regular || stop.Clock != sim.CalendarClock && !memoryless(stop)
	switch stop.Clock {
	case sim.CycleClock:
		f.Minutes = f.Every * s.meanCycle(s.Set)
		s.downPerCycle += f.Lasts / f.Every
		s.stopsPerCycle += 1 / f.Every
	case sim.PieceClock:
		cycles := f.Every / float64(s.Gives)
		f.Minutes = cycles * s.meanCycle(s.Set)
		s.downPerCycle += f.Lasts / cycles
		s.stopsPerCycle += 1 / cycles
	case sim.RunningClock:
		f.Every /= minute
		f.Minutes = f.Every
		s.downPerRun += f.Lasts / f.Every
		s.stopsPerRun += 1 / f.Every
	case sim.CalendarClock:
		f.Every /= minute
		f.Minutes = f.Every
		s.calendar *= f.Every / (f.Every + f.Lasts)
		s.outages = append(s.outages, newOutage(stop, f.Every, f.Lasts))
	}
	f.DownShare = f.Lasts / f.Minutes
	s.Stops = append(s.Stops, f)
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
