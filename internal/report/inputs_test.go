package report

import (
	"io"
	"os"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
)

// inputsOf are the rows of the inputs table of a scenario: entry | input | value.
func inputsOf(t *testing.T, file string) string {
	t.Helper()
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, err := scenario.Read(file, source, scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, row := range inputRows(subjectOf(&study.Outcome{Scenario: s})) {
		var words []string
		for _, c := range row {
			words = append(words, c.Text)
		}
		all = append(all, strings.Join(words, " | "))
	}
	return strings.NewReplacer("\u202f", " ", "\u00a0", " ").Replace("\n" + strings.Join(all, "\n") + "\n")
}

// Every way of going together that a scenario may name is among its inputs, with what was written.
func TestInputsSayEveryWayOfGoingTogether(t *testing.T) {
	says(t, inputsOf(t, "testdata/ways.yaml"),
		"\nrun | warm-up | auto: found by a pilot\n",
		"\nrun | number of runs of 1 h | until the half-width is 2 % of the average, at most 400\n",
		"\nblister machine | sends | to store 1, store 2: fewest pieces\n",
		"\nblister machine | random numbers as | blister machine 1\n",
		"\nblister machine | scrap after an own stop | 30 s of running if longer than 1 min\n",
		"\nblister machine | scrap after any standstill | 20 cycles if longer than 5 min\n",
		"lasts 5 min; 1 of fitters, priority 2; class minor\n",
		"; scraps the cycle that it strikes; renews clean\n",
		"\nstore 1 | starts what is behind it | at 48 blisters, if it has been starved\n",
		"\ntray 1 | loads | while stopped: takes its input in any state if it is empty\n",
		"\ntray 1 | takes and gives | takes 3 blisters, gives 1 trays a cycle\n",
		"\ntray 2 | sends | to belt, spare: in turn\n",
		"\nspare eater | sends | to rest 1, rest 2: first with room\n",
		"\nbelt | turns | tray 1 first\n",
		"\nleaflets | turns | alternate\n",
		"\ncartoner | takes and gives | takes 2 from belt and 1 from leaflets, gives 1 cartons a cycle\n",
		"\ncartoner | priority | 1 (smaller takes first; 5 if none is written)\n",
		"\nlabel | coupled | end: one unit with all stations on this drive, with one cycle, the longest\n",
	)
}

// Every word of the whole line stands among the inputs as it was written.
func TestInputsOfAWholeLine(t *testing.T) {
	golden(t, "inputs-whole.txt", func(w io.Writer) error {
		_, err := io.WriteString(w, inputsOf(t, "testdata/whole.yaml"))
		return err
	})
}

// What is not written is not among the inputs.
func TestInputsAreSilentOnWhatIsNotWritten(t *testing.T) {
	text := inputsOf(t, "../../testdata/second-words/merge.yaml")
	for _, word := range []string{"run |", "sends", "coupled", "priority", "loads", "random", "turns", "starts what", "scraps", "renews", "scrap after"} {
		if strings.Contains(text, word) {
			t.Errorf("%q is among the inputs:\n%s", word, text)
		}
	}
}
