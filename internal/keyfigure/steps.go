package keyfigure

import (
	"fmt"

	"tuckline/sim"
)

// Step is a speed step with the place whose level it reads.
type Step struct {
	// Place is its name; From and BackAt are levels in its Unit.
	Place, Unit  string
	From, BackAt int64
	// Cycles is the speed meanwhile, per minute; AtTop says that it is the top speed.
	Cycles float64
	AtTop  bool
	// Always: at set speed as many pieces are on the way in the place.
	Always bool
	onWay  float64
}

// addSteps finds the places that speed steps read.
func (f *Figures) addSteps(line *sim.Line) {
	for i := range line.Stations {
		place := f.placeNamed(line.Stations[i].From)
		if place == nil {
			continue
		}
		s := &f.Stations[i]
		for _, step := range line.Stations[i].Steps {
			cycles := minute / float64(step.Cycle)
			s.Steps = append(s.Steps, Step{
				Place: place.Name, Unit: place.Unit, From: step.From, BackAt: step.BackAt,
				Cycles: cycles, AtTop: cycles >= s.Top.Cycles*(1-1e-5),
				Always: place.TransitSeconds > 0 && place.InTransit >= float64(step.From), onWay: place.InTransit,
			})
		}
	}
}

func (f *Figures) placeNamed(name string) *Place {
	for i := range f.Places {
		if f.Places[i].Name == name {
			return &f.Places[i]
		}
	}
	return nil
}

func (s *Step) text(of *Station) string {
	speed := number(s.Cycles) + " cycles/min"
	if s.AtTop {
		speed = "top speed, " + speed + ","
	}
	return fmt.Sprintf("%s from %s %s in %s, back at %s%s", speed, count(s.From), s.Unit, s.Place, count(s.BackAt), of.beyond(s.Cycles))
}

// alwaysOn warns of steps that read a belt which is never as empty as that.
func (s *Station) alwaysOn() []string {
	var all []string
	for i := range s.Steps {
		if step := &s.Steps[i]; step.Always {
			all = append(all, fmt.Sprintf("The speed step of %s from %s %s reads %s, where %s are on the way at set speed: it is always on.",
				s.Name, count(step.From), step.Unit, step.Place, number(step.onWay)))
		}
	}
	return all
}
