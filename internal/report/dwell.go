package report

import (
	"tuckline/internal/keyfigure"
)

// outside says that the line runs outside its qualified dwell, with the numbers, for the end of every
// sentence that states an output; it is empty where it does not, or where no range is given.
func (s *subject) outside() string {
	var all []string
	for i := range s.Figures.Stations {
		if words := outsideWords(&s.Figures.Stations[i]); words != "" {
			all = append(all, words)
		}
	}
	if len(all) == 0 {
		return ""
	}
	return say("outside", facts{"Stations": listed(all)})
}

// outsideWords says at which speed a station leaves its range, and how far: at set speed, or else at
// the highest speed that it comes to run at.
func outsideWords(station *keyfigure.Station) string {
	d := station.Dwell
	if d == nil || !d.Qualified || d.SetInside && d.FastestInside {
		return ""
	}
	speed, dwell := station.Set.Cycles, d.Set
	if d.SetInside {
		speed, dwell = station.Fastest.Cycles, d.Fastest
	}
	return say("outside.station", facts{
		"Station": station.Name, "Speed": short3(speed), "Dwell": short3(dwell), "Min": short3(d.Min), "Max": short3(d.Max),
	})
}
