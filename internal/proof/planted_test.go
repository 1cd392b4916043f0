package proof

import (
	"bytes"
	"context"
	"encoding/json"
	"runtime"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/estimate"
)

// some are quick cases of most families; together they take a few seconds.
var some = []string{
	"MD1-1", "HUNT-2-0", "TWO-7", "ERL-2-0-k2", "SCRAP-0.2-4", "ZERO-ODF-2", "ZERO-TDF-5", "GER2-N2-1",
	"LONG-8", "BER2-2", "BERM-4", "GENR-1", "BAP-3-2 best, 1-1", "BAPF-3-4 worst, 0-4", "MRG-0.6-0", "SPLSEP-1-alternate",
	"REP-3-1-0.0222222-0.166667", "DET-1", "AGE-2", "SCRAPUP-GEO-3", "STACK-2", "VAR-1, first 20", "FLU-EQ-ODF-4",
}

// compareSome compares cases, made anew, after something was done to them.
func compareSome(t *testing.T, names []string, do func(*Case)) *Outcome {
	t.Helper()
	var cases []*Case
	for _, name := range names {
		c := caseOf(t, name)
		if do != nil {
			do(c)
		}
		cases = append(cases, c)
	}
	rows, err := compareAll(context.Background(), cases, Quick, nil)
	if err != nil {
		t.Fatal(err)
	}
	o := &Outcome{Rows: rows}
	o.judge()
	return o
}

func TestSomeCasesAgree(t *testing.T) {
	o := compareSome(t, some, nil)
	if o.Failed() {
		for _, r := range o.Faults() {
			t.Errorf("%s, %s: exact %v, ours %v to %v, again %+v", r.Case.Name, r.Quantity, r.Exact, r.Low, r.High, r.Again)
		}
	}
	if o.Cases != len(some)-2 || o.Allowed != 1 || o.Sure != 3 {
		t.Errorf("%d cases, %d with an allowance and %d sure figures, there are %d, 1 and 3", o.Cases, o.Allowed, o.Sure, len(some)-2)
	}
}

// A wrong exact value must come out as a fault: of a primary figure, of another one, of a spread, of
// one without chance.
func TestWrongValuesAreFaults(t *testing.T) {
	for _, c := range []struct {
		name   string
		figure int
		factor float64
	}{
		{"TWO-1", 0, 1.02},
		{"TWO-1", 0, 0.98},
		{"LONG-8", 1, 1.03},
		{"VAR-1, first 20", 1, 1.08},
		{"DET-1", 1, 9.0 / 8},
		{"ZERO-ODF-2", 0, 1.02},
		{"FLU-EQ-ODF-4", 0, 1.025},
		{"REEL-1", 4, 1.0001},
		{"REEL-5", 3, 0.99999},
	} {
		wrong := func(k *Case) {
			k.figures[c.figure].exact *= c.factor
			if k.Family == "fluid" { // fine pieces, nine times as many replications: a short course shows it too
				k.warmUp, k.measure = k.warmUp/4, k.measure/16
			}
		}
		o := compareSome(t, []string{c.name}, wrong)
		faults := o.Faults()
		if len(faults) != 1 || !o.Failed() || faults[0].Quantity != o.Rows[c.figure].Quantity {
			t.Errorf("%s, figure %d times %v: %d faults", c.name, c.figure, c.factor, len(faults))
			continue
		}
		f := faults[0]
		if !f.Sure && (f.Again == nil || f.Again.Replications != repeatedTimes*f.Replications) {
			t.Errorf("%s: the miss was not repeated with nine times the replications", c.name)
		}
		var table, page bytes.Buffer
		if err := Table(&table, o); err != nil || !strings.Contains(table.String(), "FAULT") {
			t.Errorf("%s: the table does not show the fault, %v", c.name, err)
		}
		if err := HTML(&page, Page{Outcome: o}); err != nil || !strings.Contains(page.String(), `class="fault"`) {
			t.Errorf("%s: the page does not show the fault, %v", c.name, err)
		}
	}
}

// An allocation that is not the best is beaten by others.
func TestWrongAllocationIsBeaten(t *testing.T) {
	entries, err := valuesOf("allocation")
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(entries, func(e *entry) bool { return e.name == "BAP-3-5" })
	for best, beaten := range map[string]bool{"2-3": false, "4-1": true, "0-5": true} {
		above, err := entries[i].better(best, dealings(2, 5))
		if err != nil || (above > 0) != beaten {
			t.Errorf("%s: %v above it, %v", best, above, err)
		}
	}
	if n := len(dealings(3, 7)); n != 36 { // C(9, 2) by hand
		t.Errorf("7 places can be dealt out in %d ways, by hand 36", n)
	}
}

// A value that is off by less than the interval is not seen, and one in a hundred right ones is
// outside at first; the repetition settles it, and no fault is left.
func TestAMissThatIsChance(t *testing.T) {
	o := &Outcome{Rows: []*Row{
		{Case: &Case{}, Primary: true, Again: &Row{Inside: true}},
		{Case: &Case{}, Primary: true, Inside: true, p: 0.5},
		{Case: &Case{}, Again: &Row{p: 0.006}},
		{Case: &Case{}, Inside: true, p: 0.6},
	}}
	o.judge()
	if o.Failed() || o.Outside != 1 || o.Cases != 2 {
		t.Errorf("%+v", o)
	}
	// Alone, the other figure would be a fault.
	o.Rows = o.Rows[:3]
	if o.judge(); len(o.Faults()) != 1 || !o.Rows[2].Fault {
		t.Errorf("%d faults", len(o.Faults()))
	}
}

// A case with an allowance is not counted; what can only be 0 is a fault if it is not, and no figure of chance.
func TestAllowancesAndZerosAreApart(t *testing.T) {
	o := &Outcome{Rows: []*Row{
		{Case: &Case{}, Primary: true, Inside: true, Replications: 40},
		{Case: &Case{}, Primary: true, Inside: true, Exact: 1, Low: 0.9, High: 1.1, Allowance: 0.2, Replications: 40},
		{Case: &Case{}, Primary: true, Inside: true, Exact: 1, Low: 1.1, High: 1.2, Allowance: 0.2, Replications: 40},
		compared(&Case{}, &figure{}, estimate.Interval{N: 40}),
		compared(&Case{}, &figure{}, estimate.Interval{Mean: 1e-9, Low: -1, High: 1, N: 40}),
	}}
	o.judge()
	if o.Cases != 1 || o.Allowed != 2 || o.Close != 1 || o.Zeros != 2 || len(o.Faults()) != 1 || !o.Rows[4].Fault {
		t.Errorf("%+v", o)
	}
}

// More misses than chance explains are a fault of their own: of 100 cases 6 or more come up in
// 0.05 % of tables (binomial by hand: 1 − Σ C(100,k) 0.01^k 0.99^(100−k) for k to 5 = 0.00053).
func TestTooManyOutside(t *testing.T) {
	o := &Outcome{}
	for i := range 100 {
		o.Rows = append(o.Rows, &Row{Case: &Case{}, Primary: true, Inside: i >= 6, Again: &Row{Inside: true}})
	}
	if o.judge(); !o.Failed() || len(o.Faults()) != 0 || o.PValue > 0.00054 || o.PValue < 0.00052 {
		t.Errorf("%d outside: p %v, too many %v", o.Outside, o.PValue, o.TooMany)
	}
}

func TestCoresDoNotMatter(t *testing.T) {
	names := []string{"TWO-1", "DET-1", "GER2-N2-1", "VAR-3, first 100"}
	var texts []string
	for _, cores := range []int{1, 4} {
		before := runtime.GOMAXPROCS(cores)
		var out bytes.Buffer
		if err := JSON(&out, compareSome(t, names, nil)); err != nil {
			t.Fatal(err)
		}
		runtime.GOMAXPROCS(before)
		texts = append(texts, out.String())
	}
	if texts[0] != texts[1] {
		t.Error("one core and four give different results")
	}
}

// The names in the JSON are a promise to other programs.
func TestKeysOfTheJSON(t *testing.T) {
	var out bytes.Buffer
	if err := JSON(&out, compareSome(t, []string{"TWO-1"}, func(c *Case) { c.figures[0].exact *= 1.03 })); err != nil {
		t.Fatal(err)
	}
	var document map[string]any
	if err := json.Unmarshal(out.Bytes(), &document); err != nil {
		t.Fatal(err)
	}
	var keys []string
	for key := range document {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	if got := strings.Join(keys, " "); got != "cases expected_outside faults left_out outside p_value results" {
		t.Error(got)
	}
	one := document["results"].([]any)[0].(map[string]any)
	fault := document["faults"].([]any)[0].(map[string]any)
	for _, key := range []string{"case", "quantity", "exact", "low", "high", "inside"} {
		if _, has := one[key]; !has || fault[key] == nil {
			t.Errorf("%q is missing", key)
		}
	}
}
