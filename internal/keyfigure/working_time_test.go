package keyfigure

import (
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/scenario"
)

// withCalendar reads the file that has every word of working time and of people.
func withCalendar(t *testing.T, sets ...string) *scenario.Scenario {
	t.Helper()
	text, err := os.ReadFile("../../testdata/whole-words/calendar.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := scenario.Read("calendar.yaml", text, scenario.Options{Sets: sets})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestWorkingTime: the hours by hand. Early Mon-Fri has 480 min, of which 20 are start-up and 15 tidy; on Wednesday 30 are
// cleaning; Friday's cleaning begins with the tidy and adds 105 min after the shift: (5 × 445 - 30)/5 = 439 min.
func TestWorkingTime(t *testing.T) {
	want := map[string]float64{
		"calendar early: scheduled": 8, "calendar early: net": 439.0 / 60, "calendar late: scheduled": 8, "calendar night: net": 8,
		"calendar overtime: scheduled": 6, "calendar overtime: net": 350.0 / 60,
		// 5 × 8 + 4 × 8 + 4 × 8 + 6 + 1.75 h; net 5 × 439 min + 64 h + 350 min.
		"calendar scheduled a week": 111.75, "calendar net a week": 5*439.0/60 + 64 + 350.0/60,
		"calendar scheduled a year": 5000, "calendar net a year": 5000 * (5*439.0/60 + 64 + 350.0/60) / 111.75,
		// 5 × 30, 4 × 30, 4 × 2 × 15 min; 30 min and 2 h.
		"calendar breaks a week": 6.5, "calendar cleaning a week": 2.5, "calendar relief in breaks": 1,
		"operators people on early": 2, "operators people on night": 1, "operators people on overtime": 2, "operators walk": 20, "operators response": 1,
		"technicians people on overtime": 0, "technicians walk": 60,
	}
	got := map[string]float64{}
	for _, row := range Derive(withCalendar(t)).List() {
		got[row.Group+" "+row.Name] = row.Value
	}
	for name, value := range want {
		if is, found := got[name]; !found || math.Abs(is-value) > 1e-9 {
			t.Errorf("%s is %v (%v), want %v", name, is, found, value)
		}
	}
}

// TestWorkingTimeIsWhatPeopleSee holds the text against a file, and says what changes with the words.
func TestWorkingTimeIsWhatPeopleSee(t *testing.T) {
	text := func(sets ...string) string {
		var b strings.Builder
		if err := Derive(withCalendar(t, sets...)).Text(&b); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	const file = "testdata/calendar.txt"
	if *update {
		if err := os.WriteFile(file, []byte(text()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), text()); diff != "" {
		t.Error(diff)
	}
	for _, c := range [][2]string{
		{"calendar.during breaks=line stands", "6.5 h a week; the line stands"},
		{"crews.operators.night=2", "operators    2 people on every shift; walks 20 s"},
		{"crews.operators.night=0", "31.7 % of 2 people"}, // the fewest who are there; by hand below
	} {
		if got := text(c[0]); !strings.Contains(got, c[1]) {
			t.Errorf("%s: %q is missing in\n%s", c[0], c[1], got)
		}
	}
}

// TestCrewWorkHasItsWalk: by hand. The blister machine runs 1/(1 + 0.3 + 0.24) of its time and stops each 400 cycles,
// 0.0974 times a minute; with 20 s of walk that is 2 1/3 min, 22.7 %. The cartoner runs 1/1.18 and stops each 500 cycles, for
// 2 people 0.1525 × 2 × 1 1/3 min = 40.7 %. The breakdown comes 0.00779 times a minute, 20 min and 1 min of walk: 16.4 %.
func TestCrewWorkHasItsWalk(t *testing.T) {
	f := Derive(withCalendar(t))
	blister, cartoner := 1/1.54, 1/1.18
	stops := 60.0 / 400 * blister * (2 + 1.0/3)
	stacks := 90.0 / 500 * cartoner * 2 * (1 + 1.0/3)
	closeTo(t, "operators", f.Crews[0].Asked, stops+stacks, 1e-9)
	closeTo(t, "technicians", f.Crews[1].Asked, 60.0/5000*blister*21, 1e-9)
	f = Derive(withCalendar(t, "crews.operators={people: 2}"))
	closeTo(t, "operators beside their work", f.Crews[0].Asked, stops/(2+1.0/3)*2+stacks/(1+1.0/3), 1e-9)
}
