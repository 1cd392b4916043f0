package keyfigure

import (
	"math"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// ReelLength is the length of web on a reel in the unit of its arguments: the
// area of the wound ring over the thickness, L = π(D² - d²)/(4t), with outer
// diameter D, core diameter d and thickness t. Source: geometry. It is 0
// without a thickness or with a core that is not smaller.
func ReelLength(outer, core, thickness float64) float64 {
	if thickness <= 0 || outer <= core {
		return 0
	}
	return math.Pi * (outer*outer - core*core) / (4 * thickness)
}

// addMaterials derives the reels, magazines and hoppers.
func (s *Station) addMaterials(line []sim.Material, people []scenario.Material) {
	for i := range line {
		var words scenario.Material
		if i < len(people) {
			words = people[i]
		}
		m := s.material(&line[i], &words)
		changes := ratio(m.PerCycle, m.Refill) // for each cycle
		s.spliceScrap += min(1, changes*float64(line[i].SpliceScrap))
		s.mostSplice = max(s.mostSplice, min(1, changes*float64(line[i].SpliceScrap)))
		if !m.FilledInTime && m.RefillMinutes > 0 {
			s.pause(pause{often: often{perCycle: changes}, lasts: line[i].Lasts, mean: m.Lasts, steady: true})
			m.DownShare = m.Lasts / m.RefillMinutes
		}
		s.Materials = append(s.Materials, m)
	}
}

func (s *Station) material(line *sim.Material, words *scenario.Material) Material {
	scale := 1.0
	if words.Unit == "m" {
		scale = 1e-6
	}
	m := Material{
		Name: line.Name, Kind: words.Kind, Unit: words.Unit,
		Wound:        1e-6 * ReelLength(float64(words.Outer), float64(words.Core), float64(words.Thickness)),
		Amount:       scale * float64(line.Amount),
		PerCycle:     scale * float64(line.PerCycle) * newPick(line.MisPicks).tries,
		Refill:       scale * float64(line.Refill),
		Lasts:        line.Lasts.Mean() / minute / (1 - line.SpliceFails),
		FilledInTime: line.Alarm.On || line.Store.On,
	}
	m.PerMinute = m.PerCycle / s.meanCycle(s.Set)
	if m.PerMinute <= 0 {
		return m
	}
	m.Minutes = m.Amount / m.PerMinute
	m.RefillMinutes = m.Refill / m.PerMinute
	m.Pieces = m.Amount / m.PerCycle * float64(s.Gives)
	if m.Alarm = line.Alarm.On; m.Alarm {
		m.AlarmMinutes = scale * float64(line.Alarm.Level) / m.PerMinute
		m.LateShare = longer(line.Lasts, m.AlarmMinutes*minute)
	}
	m.Store = newWebStore(line, s, m.RefillMinutes)
	if line.Prepare.On {
		m.PrepareMinutes = line.Prepare.Lasts.Mean() / minute
		m.PrepareLate = longer(line.Prepare.Lasts, m.RefillMinutes*minute)
	}
	return m
}
