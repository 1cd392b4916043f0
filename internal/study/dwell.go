package study

import (
	"fmt"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// dwellWarnings names the speeds at which a sealing tool is closed for a time
// outside its qualified range.
func dwellWarnings(s *scenario.Scenario) []string {
	var all []string
	for i, station := range s.Stations {
		cycles := []float64{station.SetCycle}
		for _, step := range s.Line.Stations[i].Steps {
			cycles = append(cycles, float64(step.Cycle))
		}
		for _, cycle := range cycles {
			if text := outsideDwell(station.Sealing, cycle); text != "" {
				all = append(all, s.Line.Stations[i].Name+": "+text)
			}
		}
	}
	return all
}

func outsideDwell(sealing scenario.Sealing, cycle float64) string {
	dwell := sealing.DwellShare * cycle
	low, high := float64(sealing.DwellMin), float64(sealing.DwellMax)
	if sealing.DwellShare == 0 || high == 0 || (dwell >= low && dwell <= high) {
		return ""
	}
	second := float64(sim.Second)
	perMinute := func(dwell float64) float64 { return float64(sim.Minute) * sealing.DwellShare / dwell }
	return fmt.Sprintf("at %.4g cycles/min the sealing tool is closed for %.3f s, outside the qualified dwell of %.3f s to %.3f s (%.3g to %.3g cycles/min).",
		float64(sim.Minute)/cycle, dwell/second, low/second, high/second, perMinute(high), perMinute(low))
}
