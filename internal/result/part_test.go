package result

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"tuckline/sim"
)

// records makes records with counts beyond 2^53, which a float would round.
func records(t *rapid.T, n int) []sim.Record {
	all := make([]sim.Record, n)
	for i := range all {
		big := rapid.Int64Min(1 << 53)
		all[i] = sim.Record{
			Replication: i + 1, Window: sim.Hour, EndedAt: sim.Hour,
			Stations: []sim.StationRecord{{Cycles: big.Draw(t, "cycles"), Stops: []sim.StopRecord{{Count: int64(i)}}}},
			Buffers:  []sim.BufferRecord{{LevelTime: big.Draw(t, "level"), Classes: []sim.Micros{1, 2}}},
			Crews:    []sim.CrewRecord{{Busy: sim.Second}},
		}
	}
	return all
}

func written(t *rapid.T, p Part) Part {
	var file bytes.Buffer
	if err := p.Write(&file); err != nil {
		t.Fatal(err)
	}
	back, err := ReadPart(&file)
	if err != nil {
		t.Fatal(err)
	}
	return back
}

// TestPartsJoin: whatever the split and the order, the records come back as they were.
func TestPartsJoin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 8).Draw(t, "n")
		cut := rapid.IntRange(1, n-1).Draw(t, "cut")
		whole := records(t, n)
		first := written(t, NewPart("abc", 7, whole[:cut]))
		second := written(t, NewPart("abc", 7, whole[cut:]))
		joined, err := Join(second, first)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(whole, joined); diff != "" {
			t.Error(diff)
		}
	})
}

func TestJoinRefuses(t *testing.T) {
	one := Part{ScenarioHash: "abc", Seed: 1, From: 1, To: 2}
	for _, test := range []struct {
		name  string
		other Part
		want  string
	}{
		{"gap", Part{ScenarioHash: "abc", Seed: 1, From: 4, To: 5}, "a part ends with replication 2, the next begins with 4"},
		{"twice", Part{ScenarioHash: "abc", Seed: 1, From: 2, To: 5}, "a part ends with replication 2, the next begins with 2"},
		{"seed", Part{ScenarioHash: "abc", Seed: 2, From: 3, To: 5}, "replications 3 to 5 are of scenario abc with seed 2, others of scenario abc with seed 1"},
		{"scenario", Part{ScenarioHash: "def", Seed: 1, From: 3, To: 5}, "replications 3 to 5 are of scenario def with seed 1, others of scenario abc with seed 1"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if _, err := Join(one, test.other); err == nil || err.Error() != test.want {
				t.Errorf("got %v, want %s", err, test.want)
			}
		})
	}
	if _, err := Join(); err == nil {
		t.Error("no part at all is joined")
	}
}

func TestReadPartRefuses(t *testing.T) {
	for text, want := range map[string]string{
		`nonsense`:      "this is not a part file: invalid character 'o' in literal null (expecting 'u')",
		`{"format": 9}`: "the part file has format 9; this program reads format 1",
		`{"format": 1, "from": 1, "to": 2, "records": []}`:                                       "the part file says replications 1 to 2 and holds 0",
		`{"format": 1, "from": 1, "to": 2, "records": [{"Replication": 1}, {"Replication": 3}]}`: "the part file has replication 3 where 2 belongs",
	} {
		if _, err := ReadPart(strings.NewReader(text)); err == nil || err.Error() != want {
			t.Errorf("%s: got %v, want %s", text, err, want)
		}
	}
}
