package proof

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

const queueWords = "A saturated station with exponential cycles is the stream of arrivals: in front of unlimited room it is never blocked. The mean of a wait is level by flow (Little)."

// queues: a Poisson stream, unlimited room, one or several servers.
func queues(e *entry) {
	if e.given["capacity_K"] != "" {
		e.losing()
		return
	}
	mu, servers := e.number("mu"), int(e.number("servers"))
	model := e.given["model"]
	service, repair := e.service(model, mu)
	line := e.queue(service, servers)
	mean := 1 / mu
	if repair != nil {
		mean *= 1 + repair[0]/repair[1]
		stops(&line, 1, sim.RunningClock, e.exp(1/repair[0]), e.exp(1/repair[1]))
	}
	load := e.number("lambda") * mean / float64(servers)
	words := fmt.Sprintf("%s, λ = %s, μ = %s", model, e.given["lambda"], e.given["mu"])
	// A queue forgets its beginning in about mean/(1−load)², longer than a busy period.
	warmUp := 20 * mean / (1 - load) / (1 - load)
	if repair != nil {
		warmUp = max(warmUp, 20/repair[0])
	}
	c := e.sim(words, queueWords, line, warmUp)
	e.queueFigures(c, servers)
}

const losingWords = "Arrivals that are lost while the system is full, and arrivals that stop while it is full, are the same process, since an exponential law has no memory: the station that arrives waits for room before its cycle. K counts the piece on the server: K - 1 places. The chance that an arrival is lost is the share of time in which the station is blocked."

// losing is a queue that loses what comes while it is full.
func (e *entry) losing() {
	line := e.queue(e.exp(1/e.number("mu")), int(e.number("servers")))
	line.Stations[0].BlocksBefore = true
	line.Buffers[0].Holds = int64(e.number("capacity_K")) - 1
	words := fmt.Sprintf("%s, K = %s, λ = %s, μ = %s", e.given["model"], e.given["capacity_K"], e.given["lambda"], e.given["mu"])
	c := e.sim(words, losingWords, line, e.settled(line))
	e.compare(c, "throughput", e.rate(1))
	e.shares(c, "P_block", share(0, sim.Blocked))
	e.queueFigures(c, 1)
}

// service is the law of a service, with the rates of failure and repair if it has any.
func (e *entry) service(model string, mu float64) (service sim.Law, repair []float64) {
	mean := e.unit / mu
	switch {
	case strings.HasPrefix(model, "M/D/1"):
		return sim.Fixed(mean), nil
	case strings.HasPrefix(model, "M/E2/1"):
		return e.law(sim.Erlang(mean, 2)), nil
	case strings.HasPrefix(model, "M/E4/1"):
		return e.law(sim.Erlang(mean, 4)), nil
	case strings.Contains(model, "lognormal cv 0.5"):
		return e.law(sim.Lognormal(mean, 0.5)), nil
	case strings.Contains(model, "uniform(0,2)"):
		return e.law(sim.Uniform(0, 2*mean)), nil
	case strings.Contains(model, "failures rate"):
		return e.exp(1 / mu), []float64{e.behind(model, "failures rate "), e.behind(model, "repair rate ")}
	}
	if model != "M/M/1" && model != "M/M/c" {
		e.fail(fmt.Errorf("the model %q has no line", model))
	}
	return e.exp(1 / mu), nil
}

// behind is the number behind some words.
func (e *entry) behind(text, words string) float64 {
	_, rest, _ := strings.Cut(text, words)
	number, _, _ := strings.Cut(rest, " ")
	return e.parse(words, strings.Trim(number, ","))
}

func (e *entry) queue(service sim.Law, servers int) sim.Line {
	line := sim.Line{
		Stations: []sim.Station{station("arrivals", "", e.exp(1/e.number("lambda")))},
		Buffers:  []sim.Buffer{{Name: "queue", From: []string{"arrivals"}, Holds: sim.Unlimited}},
	}
	for i := range servers {
		line.Stations = append(line.Stations, station(fmt.Sprintf("server %d", i+1), "queue", service))
	}
	return line
}

func (e *entry) queueFigures(c *Case, servers int) {
	through := func(r *sim.Record) float64 { return float64(r.Buffers[0].Out) * e.unit }
	waiting := func(r *sim.Record) float64 { return float64(r.Buffers[0].LevelTime) }
	serving := func(r *sim.Record) (time float64) {
		for i := 1; i <= servers; i++ {
			time += inStates(r, i, sim.Running, sim.Down)
		}
		return time
	}
	by := func(part, whole func(*sim.Record) float64) measure {
		return func(r *sim.Record) (float64, float64) { return part(r), whole(r) }
	}
	window := func(r *sim.Record) float64 { return float64(r.Window) }
	inSystem := func(r *sim.Record) float64 { return waiting(r) + serving(r) }
	e.compare(c, "L", by(inSystem, window))
	e.compare(c, "Wq", by(waiting, through))
	e.compare(c, "Wq_to_first_start", by(waiting, through))
	e.compare(c, "Lq", by(waiting, window))
	e.compare(c, "W", by(inSystem, through))
	e.compare(c, "mean_completion_time", by(serving, through))
	e.shares(c, "rho", by(serving, window))
	e.shares(c, "P_wait", allRunning)
}
