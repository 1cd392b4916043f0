package scenario_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
)

// TestHashKnowsWhatMatters changes one thing after the other.
func TestHashKnowsWhatMatters(t *testing.T) {
	base := example(t, "lowmere.yaml").Hash()
	if len(base) != 16 {
		t.Errorf("the hash is %q", base)
	}
	for _, set := range []string{
		"run.replications=10", "run.confidence=99 %", "title=Another", "question=Another", "run.replications={half-width: 2 %}", "project.revision=B",
		"cartoner.cycle=750 ms", "transfer store.holds=720 blister", "transfer store.levels.restart upstream=504 blisters",
	} {
		if got := example(t, "lowmere.yaml", set).Hash(); got != base {
			t.Errorf("%s simulates the same, but changes the hash", set)
		}
	}
	seen := map[string]string{base: "nothing"}
	for _, set := range []string{
		"run.seed=1", "run.measure=9 h", "run.warm-up=3 h", "cartoner.priority=1", "cartoner.loads=while stopped", "transfer store.levels.start downstream=30 %",
		"tamper label.random numbers as=label", "cartoner.stops.minor stop.scraps=yes", "cartoner.stops.minor stop.renews=breakdown", "blister machine.after standstill={if longer than: 1 min, scrap: 8 s}", "cartoner.cycle=81/min", "transfer store.holds=721 blisters",
		"blister machine.stops.minor stop.lasts.cv=0.91", "blister machine.stops.minor stop.lasts.mean=120.001 s",
		"blister machine.stops.minor stop.every.dist=geometric", "blister machine.rejects=0.81 %", "crews.operators=4",
		"crews.technicians.busy elsewhere.spell=21 min", "cartoner.speed steps=[]", "run.at start.transfer store=10 %",
		"blister machine.consumes.forming foil.reel.outer=601 mm", "transfer belt.speed=25 m/min", "answer.counted after=cartoner", "answer.per=hour",
	} {
		if set == "cartoner.speed steps=[]" {
			set = "cartoner.speed steps=[{from level: 51 %, back at: 40 %, run at: top speed}]"
		}
		got := example(t, "lowmere.yaml", set).Hash()
		if other, twice := seen[got]; twice {
			t.Errorf("%s has the hash of %s", set, other)
		}
		seen[got] = set
	}
	if example(t, "first-line.yaml").Hash() == example(t, "first-line.yaml", "run.warm-up=auto").Hash() {
		t.Error("a warm-up that is to be found has the hash of one that is written")
	}
}

// TestCommentsAndOrderOfKeysDoNotMatter writes comments into the file, blank lines
// between its lines, and the keys of its top level in another order.
func TestCommentsAndOrderOfKeysDoNotMatter(t *testing.T) {
	for _, name := range []string{"lowmere.yaml", "tarn-hollow.yaml", "brackwater-merged.yaml", "first-line.yaml"} {
		want := example(t, name).Hash()
		text, err := scenarios.FS.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			rnd := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
			blocks := topBlocks(string(text))
			rnd.Shuffle(len(blocks)-1, func(i, j int) { blocks[i+1], blocks[j+1] = blocks[j+1], blocks[i+1] })
			var lines []string
			for _, line := range strings.Split(strings.Join(blocks, ""), "\n") {
				switch rnd.IntN(8) {
				case 0:
					lines = append(lines, "# said: in {between, and} not read")
				case 1:
					lines = append(lines, "")
				}
				lines = append(lines, line)
			}
			s, err := scenario.Read(name, []byte(strings.Join(lines, "\n")), scenario.Options{})
			if err != nil {
				t.Fatalf("%v", err)
			}
			if s.Hash() != want {
				t.Fatalf("another hash for\n%s", strings.Join(lines, "\n"))
			}
		}))
	}
}

// topBlocks cuts a file before each key of its top level; what stands before
// the second key stays in front.
func topBlocks(text string) []string {
	blocks := []string{""}
	keys := 0
	for line := range strings.Lines(text) {
		if first := line[:1]; !slices.Contains([]string{" ", "#", "\n", "-"}, first) {
			if keys++; keys > 1 {
				blocks = append(blocks, "")
			}
		}
		blocks[len(blocks)-1] += line
	}
	if last := len(blocks) - 1; !strings.HasSuffix(blocks[last], "\n") {
		blocks[last] += "\n"
	}
	return blocks
}
