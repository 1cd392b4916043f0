package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

func (c columns) crews(crews []sim.Crew) []result.Crew {
	all := make([]result.Crew, len(crews))
	for i, crew := range crews {
		all[i] = result.Crew{
			Name: crew.Name, People: crew.People,
			Busy: c.busy(i), Minutes: c.count("hour", c.minutes(i)), MeanWaitS: c.meanWait(i),
			Waited: c.waited(i),
		}
	}
	return all
}

// busy is the share of the time in which people of a crew are present that is work at the line; work after the end of
// the shift may take it beyond 1.
func (c columns) busy(crew int) result.Estimate {
	return c.over(func(r *sim.Record) float64 { return float64(r.Crews[crew].Busy) },
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Present) })
}

// minutes are the minutes of people at work at the line.
func (c columns) minutes(crew int) func(*sim.Record) float64 {
	return func(r *sim.Record) float64 { return float64(r.Crews[crew].Busy) / float64(sim.Minute) }
}

// meanWait is in seconds a request; a replication without a request has none.
func (c columns) meanWait(crew int) result.Estimate {
	return c.ratio(
		func(r *sim.Record) float64 { return float64(r.Crews[crew].WaitTime) / float64(sim.Second) },
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Requests) })
}

// waited is the share of requests that had to wait at all.
func (c columns) waited(crew int) result.Estimate {
	return c.ratio(
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Waited) },
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Requests) })
}
