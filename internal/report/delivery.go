package report

import (
	"io"

	"tuckline/internal/result"
	"tuckline/internal/study"
)

// DeliveryPage is what the report of a delivery study is made from.
type DeliveryPage struct {
	Outcome *study.DeliveryOutcome
	// Version is that of the program, as "tuckline version" prints it.
	Version string
}

// DeliveryHTML writes the report of a delivery study as one file that needs nothing else. The error is
// chartkit.ErrNoEngine where the build has no chart engine.
func DeliveryHTML(w io.Writer, in DeliveryPage) error {
	return writeStudy(w, func() (*studyView, error) { return deliveryViewOf(in) })
}

func deliveryViewOf(in DeliveryPage) (*studyView, error) {
	d := &in.Outcome.Results
	// The rooms of the report of a run show inputs and assumptions.
	run := *in.Outcome.Scenario
	run.Run.WarmUp, run.Run.UntilOrders = 0, true
	o := &study.Outcome{Scenario: &run, Model: in.Outcome.Model, Records: in.Outcome.Records}
	o.Results.ScenarioHash, o.Results.Seed, o.Results.Confidence, o.Results.Replications = d.ScenarioHash, d.Seed, d.Confidence, d.Replications
	s := subjectOf(o)
	v := &studyView{First: deliveryFirstOf(in.Outcome), Looks: looks, Header: headerOf(Page{Outcome: o, Version: in.Version})}
	v.End = endWith(s, deliveryMethod(d, in.Version))
	made, err := finishSection(d)
	if err != nil {
		return nil, err
	}
	if made != nil {
		v.Sections = append(v.Sections, *made)
	}
	if t := dueTable(d); len(t.Rows) > 0 {
		v.Sections = append(v.Sections, section{ID: "due", Heading: t.Caption, Table: t, Open: true})
	}
	return v, nil
}

func deliveryFirstOf(o *study.DeliveryOutcome) studyFirst {
	d := &o.Results
	return studyFirst{
		Title: o.Scenario.Title, Question: o.Scenario.Question, Answer: deliveryAnswer(d), Warnings: d.Warnings,
		Interval: say("delivery.interval", facts{"Confidence": short(100 * d.Confidence), "Runs": whole(float64(d.Replications))}),
	}
}

// deliveryAnswer is the answer in sentences.
func deliveryAnswer(d *result.Delivery) []string {
	var answer []string
	f := facts{"Starts": d.Starts, "N": len(d.Orders), "Due": "", "Own": d.By == ""}
	if len(d.Orders) > 0 {
		f["Due"], f["Passing"], f["Range"] = d.Orders[0].Due, chance(d.InTime), chanceRange(d.InTime)
		answer = append(answer, say("delivery.answer", f))
	}
	answer = append(answer, finishSentence(d))
	if d.LatestStart != nil {
		answer = append(answer, startSentence(d))
	}
	return answer
}

// finishSentence says when half, 90 and 95 % of the runs are finished.
func finishSentence(d *result.Delivery) string {
	f := facts{"Starts": d.Starts, "Horizon": hoursOf(d.HorizonHours)}
	for _, one := range d.Finish {
		at := ""
		if one.Within {
			at = one.At
		}
		f["P"+short(100*one.P)] = at
	}
	return say("delivery.finish", f)
}

// finishWords is a quantile of the finish as a clock, or that it is not within the horizon.
func finishWords(one result.DeliveryFinish, d *result.Delivery) string {
	if !one.Within {
		return say("delivery.not.within", facts{"Horizon": hoursOf(d.HorizonHours)})
	}
	return one.At
}

// startSentence says the latest start, how exactly it was found, and what other runs say of it.
func startSentence(d *result.Delivery) string {
	l := d.LatestStart
	return say("delivery.start", facts{
		"Chance": short(100*l.Chance) + thin + "%", "Found": l.Found, "At": l.At, "Earliest": l.Earliest, "Step": short(l.StepMinutes) + thin + "min",
		"InTime": chance(l.InTime), "Confirmed": chance(l.Confirmed), "Range": chanceRange(l.Confirmed),
		"LaterAt": l.LaterAt, "Later": chance(l.Later), "Held": l.Confirmed.High >= l.Chance,
	})
}

func deliveryMethod(d *result.Delivery, version string) []string {
	f := facts{
		"Runs": whole(float64(d.Replications)), "Seed": d.Seed, "Hash": d.ScenarioHash, "Version": version, "Confidence": short(100 * d.Confidence),
		"Horizon": hoursOf(d.HorizonHours), "Starts": d.Starts,
	}
	all := []string{say("delivery.method.runs", f), say("delivery.method.interval", f)}
	if l := d.LatestStart; l != nil {
		f["Step"] = short(l.StepMinutes) + thin + "min"
		all = append(all, say("delivery.method.start", f))
	}
	return append(all, say("method.again", f))
}

// dueTable has the orders with their dates.
func dueTable(d *result.Delivery) table {
	t := table{Caption: say("delivery.due.heading", nil), Words: 2, Head: heads("order", "due", "in.time")}
	for _, one := range d.Orders {
		t.Rows = append(t.Rows, []cell{text(one.Name), text(one.Due), {chance(one.InTime), chanceRange(one.InTime)}})
	}
	return t
}
