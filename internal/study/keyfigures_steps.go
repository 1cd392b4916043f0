package study

import (
	"slices"
	"strconv"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// change is one choice that two ways of counting make differently.
type change struct {
	choice, to string
	is         string
	counting   scenario.Counting
}

// changesFrom leads from one way of counting to another, one choice at a time: the planned busy time first, then the speed, then what
// moves between availability and performance.
func changesFrom(from, to scenario.Counting) []change {
	var all []change
	now := from
	add := func(choice, word string, differs bool, set func(*scenario.Counting)) {
		if differs {
			set(&now)
			all = append(all, change{choice: choice, to: word, counting: now})
		}
	}
	for _, word := range scenario.BusyWords {
		counts := "counted"
		if to.Leaves(word) {
			counts = "left out"
		}
		add(word, counts, from.Leaves(word) != to.Leaves(word), func(c *scenario.Counting) { c.NotBusy = toggled(c.NotBusy, word) })
	}
	add("material counts as", string(to.MaterialIn), from.MaterialIn != to.MaterialIn, func(c *scenario.Counting) { c.MaterialIn = to.MaterialIn })
	add("planned run time from", speedWord(to), from.AtTopSpeed != to.AtTopSpeed, func(c *scenario.Counting) { c.AtTopSpeed = to.AtTopSpeed })
	add("minor stop shorter than", minutesWord(to.MinorUpTo), from.MinorUpTo != to.MinorUpTo, func(c *scenario.Counting) { c.MinorUpTo = to.MinorUpTo })
	add("minor stops count as", string(to.MinorIn), from.MinorIn != to.MinorIn, func(c *scenario.Counting) { c.MinorIn = to.MinorIn })
	return all
}

// toggled is a list with a word, or without it if it was there.
func toggled(words []string, word string) []string {
	if slices.Contains(words, word) {
		return slices.DeleteFunc(slices.Clone(words), func(w string) bool { return w == word })
	}
	return append(slices.Clone(words), word)
}

func speedWord(c scenario.Counting) string {
	if c.AtTopSpeed {
		return "top speed"
	}
	return "set speed"
}

// minutesWord is a limit as people write it.
func minutesWord(t sim.Micros) string {
	if t < sim.Minute {
		return strconv.FormatFloat(float64(t)/float64(sim.Second), 'g', 4, 64) + " s"
	}
	return strconv.FormatFloat(minutes(t), 'g', 4, 64) + " min"
}

// chain are the ways of counting that the steps show. Where another report is named it leads from here to there; otherwise from the
// way that takes the least away, through the one of the scenario, to the one that takes the most.
func chain(k scenario.KeyFigures) []change {
	own := change{is: "own", counting: k.Counting}
	if k.Reported != nil {
		return marked(append([]change{own}, changesFrom(k.Counting, k.Reported.Counting)...), "reported")
	}
	most, least := k.Counting, k.Counting
	most.NotBusy, most.MaterialIn, most.AtTopSpeed = scenario.BusyWords, scenario.FromPlanned, false
	least.NotBusy, least.AtTopSpeed = nil, true
	if least.MaterialIn == scenario.FromPlanned {
		least.MaterialIn = scenario.FromAvailability
	}
	all := marked(append([]change{{counting: most}}, changesFrom(most, k.Counting)...), "own")
	return append(all, changesFrom(k.Counting, least)...)
}

// marked says of the last what it is.
func marked(all []change, is string) []change {
	if last := &all[len(all)-1]; last.is == "" {
		last.is = is
	}
	return all
}

// steps are the OEE of the line counted each way, and what each choice moves. Choices that move nothing here are left out.
func (f figuring) steps() []result.KeyFigureStep {
	steps := []result.KeyFigureStep{}
	if len(f.figures.Limiting()) == 0 {
		return steps
	}
	var before []keyfigure.Counted
	for _, c := range chain(f.scenario.KeyFigures) {
		now := make([]keyfigure.Counted, len(f.records))
		for i := range f.records {
			now[i] = f.line(&f.records[i], c.counting)
		}
		if before != nil && sameFigures(before, now) {
			if steps[len(steps)-1].Is == "" {
				steps[len(steps)-1].Is = c.is
			}
			continue
		}
		step := f.step(now)
		step.Choice, step.To, step.Is = c.choice, c.to, c.is
		if before != nil {
			step.Points = f.moved(before, now)
		}
		steps, before = append(steps, step), now
	}
	return f.unexplained(steps)
}

// unexplained ends with the OEE of the other report: what no way of counting explains.
func (f figuring) unexplained(steps []result.KeyFigureStep) []result.KeyFigureStep {
	r := f.scenario.KeyFigures.Reported
	if r == nil || r.OEE == 0 {
		return steps
	}
	last := steps[len(steps)-1].OEE
	fixed := result.Estimate{Mean: r.OEE, Low: r.OEE, High: r.OEE, N: last.N}
	rest := result.Estimate{Mean: r.OEE - last.Mean, Low: r.OEE - last.High, High: r.OEE - last.Low, SD: last.SD, N: last.N}
	return append(steps, result.KeyFigureStep{Choice: result.StepData, To: "as reported", Points: rest, OEE: fixed})
}

func sameFigures(a, b []keyfigure.Counted) bool {
	return slices.EqualFunc(a, b, func(x, y keyfigure.Counted) bool {
		x.Run, y.Run, x.Weight, y.Weight = keyfigure.ENRun{}, keyfigure.ENRun{}, 0, 0
		x.Running, y.Running, x.Scheduled, y.Scheduled = 0, 0, 0, 0
		return x == y
	})
}

func (f figuring) step(all []keyfigure.Counted) result.KeyFigureStep {
	return result.KeyFigureStep{
		OEE: f.valueOf("oee", all), Availability: f.valueOf("availability", all),
		Performance: f.valueOf("performance", all), Quality: f.valueOf("quality", all),
	}
}

// moved is the OEE of each replication less that before.
func (f figuring) moved(before, now []keyfigure.Counted) result.Estimate {
	var values []float64
	for i := range now {
		a, okA := wholeOEE(before[i])
		b, okB := wholeOEE(now[i])
		if okA && okB {
			values = append(values, b-a)
		}
	}
	return estimateOf(values, f.confidence)
}

// wholeOEE is the OEE in one quotient, PRI × GQ / PBT: what only moves between its parts moves it by nothing at all.
func wholeOEE(c keyfigure.Counted) (oee float64, ok bool) {
	if !(c.Times.PlannedBusy > 0) {
		return 0, false
	}
	return c.Counts.PlannedRunTime * c.Counts.Good / c.Times.PlannedBusy, true
}
