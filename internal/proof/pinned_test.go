package proof

import "testing"

// pinned are the reference cases of each family, the lines made of them, their figures, and the cases and
// single figures that are left out. The reference cases were
// also counted in the files without this program; the rest is what it makes of them, to be looked at
// wherever it changes.
var pinned = map[string][5]int{
	"queues": {14, 14, 45, 0, 0}, "exponential": {36, 36, 75, 0, 2}, "rigid": {10, 10, 10, 0, 0},
	"geometric": {13, 13, 49, 0, 0}, "long": {5, 10, 34, 0, 5}, "fluid": {24, 24, 24, 0, 0},
	"bernoulli": {9, 9, 14, 0, 4}, "unreliable": {9, 9, 80, 0, 2}, "general": {5, 5, 10, 0, 0},
	"allocation": {17, 71, 71, 0, 1}, "merge": {15, 15, 92, 0, 0}, "repairmen": {7, 7, 53, 0, 0},
	"renewal": {27, 26, 59, 3, 8}, "variance": {6, 30, 48, 0, 0}, "certified": {6, 6, 18, 0, 0},
	"intervals": {10, 10, 21, 0, 0}, "warmup": {4, 4, 30, 0, 0}, "selection": {14, 5, 18, 9, 0},
	"fits": {6, 6, 17, 0, 0}, "goodness": {13, 13, 34, 0, 0}, "keyfigures": {26, 26, 54, 0, 0},
}

func TestNothingGoesUnnoticed(t *testing.T) {
	cases, leftOut, names, err := catalogue()
	if err != nil {
		t.Fatal(err)
	}
	familyOf, got := map[string]string{}, map[string][5]int{}
	add := func(family string, what, n int) {
		now := got[family]
		now[what] += n
		got[family] = now
	}
	for _, n := range names {
		familyOf[n.name] = n.family
		add(n.family, 0, 1)
	}
	for _, c := range cases {
		add(c.Family, 1, 1)
		add(c.Family, 2, len(c.figures))
	}
	for _, l := range leftOut {
		if l.Case == l.entry {
			add(familyOf[l.entry], 3, 1)
		} else {
			add(familyOf[l.entry], 4, 1)
		}
	}
	all := 0
	for _, f := range families {
		all += got[f.file][0]
		if got[f.file] != pinned[f.file] {
			t.Errorf("%q: %v, pinned %v", f.file, got[f.file], pinned[f.file])
		}
	}
	if all != 276 {
		t.Errorf("%d reference cases, there are 276", all)
	}
}
