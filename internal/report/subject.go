package report

import (
	"slices"
	"strings"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/study"
)

// subject is what all rooms of the report speak about.
type subject struct {
	*study.Outcome
	Figures keyfigure.Figures
	Window  window
}

func subjectOf(o *study.Outcome) *subject {
	return &subject{Outcome: o, Figures: keyfigure.Derive(o.Scenario), Window: windowOf(o)}
}

// constraints are the stations that limit the line; there is one, or some side by side, or the slowest
// where the rate of a store does.
func (s *subject) constraints() []result.Station {
	var all []result.Station
	limiting := s.Figures.Limiting()
	for i, station := range s.Results.Stations {
		if slices.Contains(limiting, i) || station.Name == s.Constraint {
			all = append(all, station)
		}
	}
	return all
}

// limiting are the stations that headings speak of: those that limit the line,
// or the first where none does.
func (s *subject) limiting() []result.Station {
	if all := s.constraints(); len(all) > 0 {
		return all
	}
	return s.Results.Stations[:1]
}

// stationNames are in the order of the scenario.
func (s *subject) stationNames() []string { return stationsOf(s.Results.Stations) }

// stationsOf are the names of stations.
func stationsOf(stations []result.Station) []string {
	all := make([]string, len(stations))
	for i, station := range stations {
		all[i] = station.Name
	}
	return all
}

// column takes one estimate of every station.
func (s *subject) column(of func(result.Station) result.Estimate) []result.Estimate {
	all := make([]result.Estimate, len(s.Results.Stations))
	for i, station := range s.Results.Stations {
		all[i] = of(station)
	}
	return all
}

// givesUnit is the unit of what a station gives.
func (s *subject) givesUnit(station int) string { return s.Scenario.Stations[station].GivesUnit }

// percentWords is a share without its interval, for headings: whole percent, or
// one digit more where it is small.
func percentWords(share float64) string {
	switch {
	case share == 0:
		return "0" + thin + "%"
	case share < 0.0005:
		return say("less.than", facts{"Value": "0.1" + thin + "%"})
	case share < 0.0995:
		return rounded(100*share, -1) + thin + "%"
	default:
		return rounded(100*share, 0) + thin + "%"
	}
}

// listed joins names as a sentence does.
func listed(parts []string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	return say("list", facts{"First": strings.Join(parts[:len(parts)-1], ", "), "Last": parts[len(parts)-1]})
}
