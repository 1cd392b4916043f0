package report

import (
	"io"

	"tuckline/internal/result"
	"tuckline/internal/study"
)

// AcceptancePage is what the report of an acceptance study is made from.
type AcceptancePage struct {
	Outcome *study.AcceptanceOutcome
	// Version is that of the program, as "tuckline version" prints it.
	Version string
}

// AcceptanceHTML writes the report of an acceptance study as one file that needs nothing else. The error is
// chartkit.ErrNoEngine where the build has no chart engine.
func AcceptanceHTML(w io.Writer, in AcceptancePage) error {
	return writeStudy(w, func() (*studyView, error) { return acceptanceViewOf(in) })
}

func acceptanceViewOf(in AcceptancePage) (*studyView, error) {
	a := &in.Outcome.Results
	// The rooms of the report of a run show inputs and assumptions.
	o := &study.Outcome{Scenario: in.Outcome.Scenario, Model: in.Outcome.Model}
	o.Results.ScenarioHash, o.Results.Seed, o.Results.Confidence = a.ScenarioHash, a.Seed, a.Confidence
	s := subjectOf(o)
	page := Page{Outcome: o, Version: in.Version}
	v := &studyView{First: acceptanceFirstOf(in.Outcome), Looks: looks, Header: headerOf(page)}
	v.End = endWith(s, acceptanceMethod(a, in.Version))
	v.End.Assumptions = assumptions(agreedSubject(o))
	for _, make := range []func(*result.Acceptance) (*section, error){curveSection, lengthSection} {
		made, err := make(a)
		if err != nil {
			return nil, err
		}
		if made != nil {
			v.Sections = append(v.Sections, *made)
		}
	}
	return v, nil
}

// agreedSubject speaks of the agreed run as the reports of runs speak of their windows.
func agreedSubject(o *study.Outcome) *subject {
	run, agreed := *o, *o.Scenario
	agreed.Run.WarmUp, agreed.Run.Measure, agreed.Answer.Per = agreed.Agreement.From, agreed.Agreement.Run, "hour"
	run.Scenario = &agreed
	return subjectOf(&run)
}

func acceptanceFirstOf(o *study.AcceptanceOutcome) studyFirst {
	a := &o.Results
	return studyFirst{
		Title: o.Scenario.Title, Question: o.Scenario.Question, Answer: acceptanceAnswer(a), Warnings: a.Warnings,
		Interval: say("acceptance.interval", facts{"Confidence": short(100 * a.Confidence), "Runs": whole(float64(a.Agreement.Runs))}),
	}
}

// acceptanceAnswer is the answer in sentences.
func acceptanceAnswer(a *result.Acceptance) []string {
	f := agreedFacts(a)
	e := a.AsEntered
	f["True"], f["Passing"], f["Range"] = numberOf(e.True, 100).String(), chance(e.Passing), chanceRange(e.Passing)
	f["Formula"], f["Applies"], f["Station"] = chanceWords(e.Formula.Passing), e.Formula.Applies, a.Formula.Station
	answer := []string{say("acceptance.answer", f)}
	if e.Formula.Applies {
		answer = append(answer, say("acceptance.formula", f))
	}
	return append(answer, lengthSentence(a))
}

// agreedFacts say what is agreed.
func agreedFacts(a *result.Acceptance) facts {
	g := a.Agreement
	return facts{
		"Agreed": short(100*g.Efficiency) + thin + "%", "Of": g.Of, "Run": hoursOf(g.RunHours), "From": hoursOf(g.ScheduledFromHours),
		"Unit": g.Unit, "Needed": whole(g.Needed), "Full": whole(g.FullPerHour), "Runs": whole(float64(g.Runs)),
		"Power": short(100*a.RunLength.Power) + thin + "%", "Long": whole(a.LongRunHours),
	}
}

// lengthSentence says how long the run must be.
func lengthSentence(a *result.Acceptance) string {
	l, f := a.RunLength, agreedFacts(a)
	f["Entered"], f["True"] = l.Entered, short(round3(100*l.True.Mean))+thin+"%"
	if !l.Asked {
		return say("acceptance.never", f)
	}
	f["Hours"], f["Longest"] = hoursOf(l.Hours), hoursOf(l.Lengths[len(l.Lengths)-1].Hours)
	f["Low"], f["High"] = hoursOf(l.Low), hoursOf(l.High)
	f["Formula"] = ""
	if l.FormulaHours > 0 {
		f["Formula"] = roundHours(l.FormulaHours)
	}
	f["Reached"], f["Bounded"] = l.Hours > 0, l.High > 0
	f["AtOnce"] = l.Hours > 0 && l.Hours == l.Lengths[0].Hours
	return say("acceptance.length", f)
}

func hoursOf(hours float64) string { return short(round3(hours)) + thin + "h" }

// roundHours says a length that a formula gives with two digits.
func roundHours(hours float64) string {
	return rounded(hours, exponent(max(hours, 0.1))-1) + thin + "h"
}

// chance is a probability in whole percent; one that is nearly 0 or 1 is not rounded to it.
func chance(e result.Estimate) string { return chanceWords(e.Mean) }

func chanceWords(p float64) string {
	switch {
	case p > 0 && p < 0.005:
		return say("acceptance.hardly", nil)
	case p < 1 && p > 0.995:
		return say("acceptance.nearly", nil)
	}
	return rounded(100*p, 0) + thin + "%"
}

func chanceRange(e result.Estimate) string {
	return say("range", facts{"Low": rounded(100*e.Low, 0), "High": rounded(100*e.High, 0)}) + thin + "%"
}

func acceptanceMethod(a *result.Acceptance, version string) []string {
	f := agreedFacts(a)
	f["Confidence"], f["Seed"], f["Hash"], f["Version"] = short(100*a.Confidence), a.Seed, a.ScenarioHash, version
	f["Station"], f["Up"], f["Down"] = a.Formula.Station, short3(a.Formula.UpMinutes), short3(a.Formula.DownMinutes)
	f["UpCV"], f["DownCV"] = short3(a.Formula.UpCV), short3(a.Formula.DownCV)
	all := []string{say("acceptance.method.runs", f), say("acceptance.method.factor", f), say("acceptance.method.interval", f)}
	if a.AsEntered.Formula.Applies {
		all = append(all, say("acceptance.method.formula", f))
	}
	if l := a.RunLength; l.Asked {
		f["LengthRuns"] = whole(float64(l.Lengths[0].Passing.N))
		all = append(all, say("acceptance.method.length", f))
	}
	return append(all, say("method.again", f))
}
