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
			Waited: c.waited(i), Waits: c.waits(crewWaits(i)),
			Present: c.over(func(r *sim.Record) float64 { return float64(r.Crews[i].Present) }, scheduled),
		}
		if walking := c.count("hour", c.crewMinutes(i, walking)); walking.Mean > 0 {
			all[i].WalkingMinutes = walking
		}
		if late := c.count("hour", c.crewMinutes(i, overtime)); late.Mean > 0 {
			all[i].OvertimeMinutes = late
		}
	}
	return all
}

func walking(r *sim.CrewRecord) sim.Micros  { return r.Walking }
func overtime(r *sim.CrewRecord) sim.Micros { return r.Overtime }

// crewMinutes are minutes of people of a crew.
func (c columns) crewMinutes(crew int, of func(*sim.CrewRecord) sim.Micros) func(*sim.Record) float64 {
	return func(r *sim.Record) float64 { return float64(of(&r.Crews[crew])) / float64(sim.Minute) }
}

// busy is the share of the time in which people of a crew are there that is work at the line. There is who is on duty, in
// no break, or still at work when his break has begun or his shift is over.
func (c columns) busy(crew int) result.Estimate {
	return c.over(func(r *sim.Record) float64 { return float64(r.Crews[crew].Busy) },
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Present + r.Crews[crew].Overtime) })
}

// minutes are the minutes of people at work at the line.
func (c columns) minutes(crew int) func(*sim.Record) float64 {
	return func(r *sim.Record) float64 { return float64(r.Crews[crew].Busy) / float64(sim.Minute) }
}

// meanWait is in seconds a request.
func (c columns) meanWait(crew int) result.Estimate {
	return c.over(
		func(r *sim.Record) float64 { return float64(r.Crews[crew].WaitTime) / float64(sim.Second) },
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Requests) })
}

// waited is the share of requests for which nobody was free.
func (c columns) waited(crew int) result.Estimate {
	return c.over(
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Waited) },
		func(r *sim.Record) float64 { return float64(r.Crews[crew].Requests) })
}
