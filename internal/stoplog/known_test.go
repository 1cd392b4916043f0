package stoplog

import "testing"

// Tables of D'Agostino and Stephens, Goodness-of-Fit Techniques (1986), ch. 4: the
// 5 % value of A² is 2.492, the 10 % value of the modified D is 1.224; the 5 % value
// of D of 20 values is 0.294 in any table of Kolmogorov's test (all from memory).
func TestKnownTables(t *testing.T) {
	near(t, "A², 5 %", CriticalKnown(AndersonDarlingKnown, 0.05), 2.492, 0.001)
	near(t, "D, 10 %", CriticalKnown(KolmogorovKnown, 0.10), 1.224, 0.0005)
	near(t, "20 values", CriticalKnown(KolmogorovKnown, 0.05)/KolmogorovModified(1, 20), 0.294, 0.0005)
}

// Both rise from 0 to 1.
func TestKnownLawsRise(t *testing.T) {
	for name, below := range map[string]func(float64) float64{"A²": AndersonDarlingKnown, "D": KolmogorovKnown} {
		last := 0.0
		for z := -0.5; z < 12; z += 0.01 {
			now := below(z)
			if now < last-1e-13 || now > 1 {
				t.Fatalf("%s at %g: %g after %g", name, z, now, last)
			}
			last = now
		}
		near(t, name+" far out", last, 1, 1e-5)
	}
}
