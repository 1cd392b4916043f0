package proof

import (
	"fmt"

	"tuckline/sim"
)

// repairmen: machines that a few people repair in the order of their failures.
func repairmen(e *entry) {
	n, people := int(e.number("N_machines")), e.number("c_repairmen")
	fail, repair := e.number("fail_rate"), e.number("repair_rate")
	var line sim.Line
	for i := range n {
		line.Stations = append(line.Stations, station(fmt.Sprintf("machine %d", i+1), "", e.fixed(10/fail)))
	}
	e.fails(&line, sim.RunningClock, repeated(n, fail), repeated(n, repair))
	e.repairers(&line, e.given["c_repairmen"])
	words := fmt.Sprintf("%d machines, failures %s, repairs %s, %s repairers", n, short(fail), short(repair), e.given["c_repairmen"])
	c := e.sim(words, "Machines beside each other with cycles of fixed length that stops interrupt.", line, 20*float64(n)*(1/repair+1/fail))
	e.repairFigures(c, n, people)
}

func (e *entry) repairFigures(c *Case, n int, people float64) {
	over := func(states ...sim.State) measure { return sumOf(every(n, in(states...))...) }
	down, waiting, running, repair := over(sim.Down, sim.Waiting), over(sim.Waiting), over(sim.Running), over(sim.Down)
	e.compare(c, "mean_machines_down", down)
	e.compare(c, "mean_waiting_for_repair", waiting)
	e.compare(c, "mean_number_waiting_L", waiting)
	e.compare(c, "mean_machines_running", running)
	e.compare(c, "mean_number_in_repair_H", repair)
	e.shares(c, "machine_availability", times(1/float64(n), running))
	e.shares(c, "efficiency_factor_F", times(1/float64(n), over(sim.Running, sim.Down)))
	e.shares(c, "prob_all_running", allRunning)
	e.shares(c, "crew_utilisation", func(r *sim.Record) (part, whole float64) {
		return float64(r.Crews[0].Busy), people * float64(r.Window)
	})
	e.compare(c, "mean_down_time", func(r *sim.Record) (part, whole float64) {
		part, _ = down(r)
		for i := range r.Stations {
			whole += float64(r.Stations[i].Stops[0].Count) * e.unit
		}
		return part, whole
	})
	e.shares(c, "prob_failing_machine_waits_D", func(r *sim.Record) (part, whole float64) {
		return float64(r.Crews[0].Waited), float64(r.Crews[0].Requests)
	})
}
