package report

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/sim"
)

// hostileOrders is a line with names that are no names, orders and people by shift: 7,200 pieces, one a second, twice.
func hostileOrders(t *testing.T) *scenario.Scenario {
	t.Helper()
	s, err := scenario.Read("orders.yaml", []byte(`tuckline: 1
title: "<script>alert(1)</script>"
run: {replications: 4, starts: "Thu 06:00"}
answer: {in: pieces, per: shift}
calendar: {days: Mon-Fri, shifts: {early: {from: "06:00", to: "14:00", breaks: {at: "10:00", lasts: 30 min}}, late: {from: "14:00", to: "22:00"}}}
crews: {operators: {people: 2, late: 1, walk: 30 s}}
line: [{station: filler, cycle: 1 s, takes: 1 piece, gives: 1 piece, stops: {jam: {every: {dist: exponential, mean: 300 cycles}, lasts: 1 min, crew: operators}}}]
orders: [{good: 7200 pieces, product: "<b>bold</b>", due: "Thu 08:00"}, {good: 7200 pieces, due: "Thu 14:00"}]
`), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The page and the terminal of a delivery study say the answer, and names stay text.
func TestDeliveryReport(t *testing.T) {
	o, err := study.Deliver(t.Context(), hostileOrders(t), study.DeliveryOptions{Chance: 0.9, Replications: 10, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	v, err := deliveryViewOf(DeliveryPage{Outcome: o})
	if err != nil {
		t.Fatal(err)
	}
	var page, terminal bytes.Buffer
	if err := layout.ExecuteTemplate(&page, "study.gohtml", v); err != nil {
		t.Fatal(err)
	}
	if err := DeliveryTerminal(&terminal, DeliveryPage{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"<script>alert", "<b>bold"} {
		if strings.Contains(page.String(), bad) {
			t.Errorf("the page holds %q", bad)
		}
	}
	said := strings.Join(strings.Fields(strings.ReplaceAll(terminal.String(), thin, " ")), " ")
	// 7,200 s and some 24 stops of 90 s, walking included, are 2.6 h: never by 08:00, always by 14:00.
	for _, want := range []string{
		"Started Thu 06:00, the 2 orders with a date are all finished in time with a probability of 0 %",
		"Half of the runs have finished all orders by Thu 1", "Thu 08:00 0 % (0 to 28 %)", "Thu 14:00 100 % (72 to 100 %)",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("the terminal does not say %q:\n%s", want, said)
		}
	}
}

// The page of a run with orders and people by shift has them, and names stay text.
func TestOrdersReport(t *testing.T) {
	o, err := study.Run(t.Context(), hostileOrders(t), study.Options{Workers: 1, Trace: true})
	if err != nil {
		t.Fatal(err)
	}
	var page, terminal bytes.Buffer
	if err := write(&page, Page{Outcome: o}, nil); err != nil {
		t.Fatal(err)
	}
	if err := Terminal(&terminal, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"<script>alert", "<b>bold"} {
		if strings.Contains(page.String(), bad) {
			t.Errorf("the page holds %q", bad)
		}
	}
	for _, want := range []string{`id="orders"`, `id="short"`, "early: 2, late: 1"} {
		if !strings.Contains(page.String(), want) {
			t.Errorf("the page does not hold %q", want)
		}
	}
	if said := terminal.String(); !strings.Contains(said, "Half of the runs have finished all orders by Thu 1") || !strings.Contains(said, "People: the filler stands and waits for the operators") {
		t.Errorf("the terminal says\n%s", said)
	}
}

// Runs that do not come to an end are said before the answer: 14,400 pieces and some 48 stops of 90 s with a break of 30 min are 5.7 h, which is about the
// horizon, so that some are finished and some are not.
func TestUnfinishedIsSaidFirst(t *testing.T) {
	s := hostileOrders(t)
	s.Run.Replications, s.Run.Measure = 12, 342*sim.Minute
	o, err := study.Run(t.Context(), s, study.Options{Workers: 1, Trace: true})
	if err != nil {
		t.Fatal(err)
	}
	late := o.Results.Unfinished
	if late == 0 || late+o.Results.Replications != 12 {
		t.Fatalf("%d unfinished and %d finished runs of 12", late, o.Results.Replications)
	}
	var terminal bytes.Buffer
	if err := Terminal(&terminal, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	want := fmt.Sprintf("In %d of 12 runs not all orders are finished within 5.7 h: these runs are in no estimate.", late)
	said := strings.Join(strings.Fields(strings.ReplaceAll(terminal.String(), thin, " ")), " ")
	if at := strings.Index(said, want); at < 0 || at > strings.Index(said, "The line makes") {
		t.Errorf("not said first: %q in\n%s", want, said)
	}
}
