package keyfigure

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/sim"
)

// Renewal is a machine that runs and stands in turn: mean and variance of the time between the end of a stop and the next,
// and of a stop, in minutes.
type Renewal struct{ Up, UpVariance, Down, DownVariance float64 }

// Availability is Up / (Up + Down).
func (r Renewal) Availability() float64 { return r.Up / (r.Up + r.Down) }

// VariancePerMinute is the asymptotic variance of the time that it runs in a long span, per minute of it:
// (D² Var U + U² Var D) / (U + D)³ (Takács 1957; renewal central limit theorem in Ross).
func (r Renewal) VariancePerMinute() float64 {
	whole := r.Up + r.Down
	return (r.Down*r.Down*r.UpVariance + r.Up*r.Up*r.DownVariance) / (whole * whole * whole)
}

// Spread is the standard deviation of the efficiency that a run of so many minutes shows, of a line whose efficiency is truly e
// and that stands whenever this machine does: the asymptotic one, scaled from the availability of the machine to e. ok is
// false for a machine that never stops.
func (r Renewal) Spread(e, minutes float64) (sd float64, ok bool) {
	if !(r.Down > 0) || !(r.Up > 0) {
		return 0, false
	}
	return e / r.Availability() * math.Sqrt(r.VariancePerMinute()/minutes), true
}

// Passing is the probability that such a run shows at least the limit, by the normal approximation.
func (r Renewal) Passing(e, limit, minutes float64) (probability float64, ok bool) {
	sd, ok := r.Spread(e, minutes)
	if !ok {
		return 0, false
	}
	return distuv.UnitNormal.CDF((e - limit) / sd), true
}

// MinutesFor is the length of a run that shows at least the limit with the probability power. ok is false where
// no length does: e must lie above the limit, and power above one half.
func (r Renewal) MinutesFor(e, limit, power float64) (minutes float64, ok bool) {
	sd, ok := r.Spread(e, 1)
	if !ok || e <= limit || power <= 0.5 || power >= 1 {
		return 0, false
	}
	z := distuv.UnitNormal.Quantile(power) * sd / (e - limit)
	return z * z, true
}

// RenewalOf puts the own stops and changes of a station together, with all stop rates multiplied by factor: one cause keeps the spread of
// its law; several together come as if without memory, which is right for many (Palm and Khinchin). Waiting for crews, and all that other
// stations do, is left out. Calendar stops count at their rate in the calendar.
func RenewalOf(line *sim.Station, s *Station, factor float64) Renewal {
	var rate, down, square, upCV float64
	causes := 0
	add := func(perMinute float64, lasts sim.Law, cv float64) {
		if perMinute <= 0 {
			return
		}
		causes++
		mean := lasts.Mean() / minute
		rate += perMinute
		down += perMinute * mean
		square += perMinute * mean * mean * (1 + lasts.CV()*lasts.CV())
		upCV = cv
	}
	for i := range line.Stops {
		at := slices.IndexFunc(s.Stops, func(one Stop) bool { return one.Name == line.Stops[i].Name })
		if at >= 0 && s.Stops[at].Minutes > 0 && !s.Stops[at].Never {
			add(factor/s.Stops[at].Minutes, line.Stops[i].Lasts, line.Stops[i].Every.CV())
		}
	}
	for k := range line.Materials {
		if m := &s.Materials[k]; m.DownShare > 0 {
			add(1/m.RefillMinutes, line.Materials[k].Lasts, 0)
		}
	}
	if rate == 0 {
		return Renewal{}
	}
	if causes > 1 {
		upCV = 1
	}
	r := Renewal{Up: 1 / rate, Down: down / rate}
	r.UpVariance = r.Up * r.Up * upCV * upCV
	r.DownVariance = square/rate - r.Down*r.Down
	return r
}
