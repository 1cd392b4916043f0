package part

import (
	"math"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// pace says how long the next cycle lasts: the set speed or a law, a step that
// the level switched on, the longer cycle of a group, the ramp after a standstill.
type pace struct {
	plan   *plan.Pace
	stream draw.Stream
	on     []bool // steps switched on
	count  int64  // cycles since the last long one
	// ramp is the work done since the standstill, in microseconds at set
	// speed; -1 at set speed.
	ramp float64
	// heat is the time before work begins after the last standstill, until a cycle has it.
	heat plan.Micros
	// held has, by step, how long the level has been at or beyond From and BackAt.
	held []held
}

// held is for how long a level has stayed high and low.
type held struct{ high, low plan.Micros }

func (p *pace) reset(pl *plan.Pace, s draw.Stream) {
	p.plan, p.stream, p.count, p.ramp, p.heat = pl, s, 0, -1, 0
	if len(p.on) != len(pl.Steps) {
		p.on, p.held = make([]bool, len(pl.Steps)), make([]held, len(pl.Steps))
	}
	clear(p.on)
	clear(p.held)
}

// base is the duration at speed, without group and ramp.
func (p *pace) base(level int64) plan.Micros {
	d := p.plan.Fixed
	if d == 0 {
		d = plan.Micros(draw.Micros(&p.plan.Law, &p.stream))
	}
	for i := range p.plan.Steps {
		step := &p.plan.Steps[i]
		switch {
		case level >= step.From && p.held[i].high >= step.Delay:
			p.on[i] = true
		case level <= step.BackAt && p.held[i].low >= step.Delay:
			p.on[i] = false
		}
		if p.on[i] {
			d = step.Cycle
		}
	}
	return d
}

// Held tells for how long the level has been high, and low, enough for a step with a delay.
func (m *Machine) Held(step int, high, low plan.Micros) { m.pace.held[step] = held{high, low} }

// quiet is the number of cycles until a long one, or one on the ramp.
func (p *pace) quiet() int64 {
	switch {
	case p.ramp >= 0 || p.heat > 0:
		return 0
	case p.plan.Every == 0:
		return math.MaxInt64
	}
	return p.plan.Every - 1 - p.count
}

// long adds what the group adds to a cycle of base duration d.
func (p *pace) long(d plan.Micros) plan.Micros {
	if p.plan.Every > 0 && p.count == p.plan.Every-1 {
		d += p.plan.Adds
	}
	return d
}

// passed says that n cycles have ended.
func (p *pace) passed(n int64) {
	if p.plan.Every > 0 {
		p.count = (p.count + n) % p.plan.Every
	}
}

// standstill starts heat recovery and ramp if the pause was long enough, and says whether it did.
func (p *pace) standstill(pause plan.Micros) bool {
	if p.plan.Ramp == 0 && p.plan.Heat == 0 || pause <= p.plan.RampAfter {
		return false
	}
	p.heat = p.plan.Heat
	if p.plan.Ramp > 0 {
		p.ramp = 0
	}
	return true
}

// lost goes back to where the ramp and the heat recovery stood when a cycle was lost.
func (p *pace) lost(ramp float64, heat plan.Micros) {
	p.ramp, p.heat = ramp, heat
	if p.ramp >= float64(p.plan.Ramp)/2 {
		p.ramp = -1
	}
}

// onRamp is the time that work of d microseconds at set speed takes from where
// the ramp stands, after what is left of the heat recovery. The speed rises in a straight line over R, so
// that work w is done at √(2Rw) while w ≤ R/2, and at w + R/2 after that.
func (p *pace) onRamp(d plan.Micros) plan.Micros {
	heat := p.heat
	p.heat = 0
	if p.ramp < 0 {
		return heat + d
	}
	from := p.ramp
	p.ramp += float64(d)
	took := p.time(p.ramp) - p.time(from)
	if p.ramp >= float64(p.plan.Ramp)/2 {
		p.ramp = -1
	}
	return heat + max(1, plan.Micros(math.Round(took)))
}

// time is when work w is done after a standstill.
func (p *pace) time(w float64) float64 {
	r := float64(p.plan.Ramp)
	if w <= r/2 {
		return math.Sqrt(2 * r * w)
	}
	return w + r/2
}

// work is what is done in a time after the ramp stood at from; the inverse of time.
func (p *pace) work(from float64, in plan.Micros) float64 {
	if from < 0 {
		return float64(in)
	}
	r, t := float64(p.plan.Ramp), p.time(from)+float64(in)
	if t <= r {
		return t*t/(2*r) - from
	}
	return t - r/2 - from
}
