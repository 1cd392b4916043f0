package study

import (
	"fmt"
	"strconv"
	"strings"

	"tuckline/internal/estimate"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// fewReplications is the number below which an interval is not to be relied
// on (common practice, no source).
const fewReplications = 20

// warnings are whole sentences on what changes how the answer may be used.
func warnings(v view) []string {
	all := append([]string{}, v.figures.Warnings...)
	if n := len(v.records); n < fewReplications {
		did := "were simulated"
		if len(v.all) > n {
			did = "have finished their orders"
		}
		all = append(all, fmt.Sprintf("Only %d %s %s: take %d or more before you rely on the intervals.", n, windows(v.scenario), did, fewReplications))
	}
	all = append(all, v.lopsided()...)
	if v.scenario.Run.WarmUp == 0 && !v.scenario.Run.AutoWarmUp {
		all = append(all, "There is no warm-up: the figures include the filling of an empty line.")
	}
	for _, text := range []string{oddWindow(v.scenario), v.noMeanShift(), v.noSpread(), v.ordersEnd()} {
		if text != "" {
			all = append(all, text)
		}
	}
	if n := endedEarly(v.records); n > 0 {
		all = append(all, fmt.Sprintf("%d of %d %s used up their input before the end of the window: the rest of the window counts as standing still.", n, len(v.records), windows(v.scenario)))
	}
	return all
}

// doubts are warnings of how the study went.
func (j *job) doubts() []string {
	var all []string
	if j.warmUp.Doubled {
		all = append(all, fmt.Sprintf("The line needed half of the pilot to settle: the window was doubled to %.4g h.", hours(j.scenario.Run.Measure)))
	}
	if j.warmUp.Unsettled {
		all = append(all, "The line had not settled at half of the second pilot either: the warm-up may be too short; take a longer window.")
	}
	if p := j.precision; p.Asked > 0 && !p.Reached {
		all = append(all, fmt.Sprintf("The half-width asked for, %.2g %% of the mean, was not reached with %d runs.", 100*p.Asked, len(j.records)))
	}
	return all
}

func endedEarly(records []sim.Record) int {
	n := 0
	for i := range records {
		if records[i].End == sim.InputUsedUp {
			n++
		}
	}
	return n
}

// windows is what replications are called in the words of the answer.
func windows(s *scenario.Scenario) string {
	if s.Answer.Per == "hour" || s.Run.UntilOrders || s.Calendar != nil && s.ScheduledMeasure() != s.AnswerSpan() {
		return "runs"
	}
	return s.Answer.Per + "s"
}

// oddWindow warns of a measured window that does not fit the word of the answer.
func oddWindow(s *scenario.Scenario) string {
	const day = 24 * sim.Hour
	length := hoursWords(s.Run.Measure)
	if s.Calendar != nil || s.Run.UntilOrders {
		return ""
	}
	switch {
	case s.Answer.Per == "shift" && s.Run.Measure > day:
		return "A shift of " + length + " is longer than a day: write per: week, or measure the hours of one shift."
	case s.Answer.Per == "week" && s.Run.Measure < day:
		return "A week of " + length + " is shorter than a day: write per: shift, or measure the scheduled hours of a week."
	case s.Answer.Per == "week" && s.Run.Measure > 7*day:
		return "A week of " + length + " has more hours than a week: measure its scheduled hours, 168 h at most."
	}
	return ""
}

// noMeanShift says what an answer per shift is where whole shifts of every kind do not lie in the windows, and how to have them there:
// in one week or, where a kind comes once a week and the window may cut it, in two.
func (v view) noMeanShift() string {
	s := v.scenario
	if s.Answer.Per != "shift" || s.Calendar == nil || v.meanShifts() != nil {
		return ""
	}
	if s.Run.UntilOrders {
		return fmt.Sprintf("Per shift is here the run until the orders are finished, scaled to the %s of a shift: not the mean shift of the calendar.", hoursWords(s.AnswerSpan()))
	}
	weeks := "1 week"
	for i := range s.Calendar.Shifts {
		if shift := &s.Calendar.Shifts[i]; !shift.Overtime && shift.AWeek == 1 {
			weeks = "2 week"
		}
	}
	return fmt.Sprintf(`Per shift is here the window from %s to %s, scaled to the %s of a shift: not the mean shift of the calendar, as whole shifts of every kind do not lie in it. With --set "run.measure=%s" it is.`,
		s.Calendar.Clock(s.Run.WarmUp), s.Calendar.Clock(s.Run.WarmUp+s.Run.Measure), hoursWords(s.AnswerSpan()), weeks)
}

// noSpread says why single shifts or weeks are not compared.
func (v view) noSpread() string {
	if _, of := v.singles(); of != noSingles {
		return ""
	}
	if v.span > 0 && v.scenario.Answer.Per == "week" {
		return fmt.Sprintf("How single weeks differ is left out: the measured windows are not one week of %s scheduled hours each.",
			strings.TrimSuffix(hoursWords(v.scenario.AnswerSpan()), " h"))
	}
	if v.span > 0 {
		return fmt.Sprintf("How single %s differ is left out: no whole one lies in the measured windows, which have not its %s scheduled hours either.",
			v.scenario.Answer.Per+"s", strings.TrimSuffix(hoursWords(v.scenario.AnswerSpan()), " h"))
	}
	return "How single runs differ is left out: they end with their orders and are not equally long."
}

func hoursWords(t sim.Micros) string { return strconv.FormatFloat(hours(t), 'g', 6, 64) + " h" }

// usedUp sums up the replications that ended because nothing was left to work on.
func (c columns) usedUp() UsedUp {
	var after []float64
	for i := range c.records {
		if r := &c.records[i]; r.End == sim.InputUsedUp {
			after = append(after, hours(r.EndedAt))
		}
	}
	return UsedUp{len(after), estimateOf(after, c.confidence)}
}

// lopsided warns of totals so skewed that the t interval misses more often than it says.
func (v view) lopsided() []string {
	var all []string
	for _, doubt := range estimate.Summarise(v.column(total(v.scenario)), v.confidence, 0).Doubts {
		if doubt.Kind == estimate.Skewed {
			all = append(all, doubt.String())
		}
	}
	return all
}
