package sim_test

import (
	"testing"

	"tuckline/sim"
)

// BenchmarkAttribute is what it costs to say what began waits.
func BenchmarkAttribute(b *testing.B) {
	for name, on := range map[string]bool{"off": false, "on": true} {
		b.Run(name, func(b *testing.B) {
			e := compile(b, refLine(b, 600_000, 400_000, 3*sim.Second)).NewEngine()
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				e.Run(sim.Options{Seed: 1, Replication: i, Measure: 9 * sim.Hour, Attribute: on})
			}
		})
	}
}
