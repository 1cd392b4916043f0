package sim_test

import (
	"testing"

	"tuckline/sim"
)

// BenchmarkAttribute is what it costs to say what began waits, to keep pauses, and to follow ages.
func BenchmarkAttribute(b *testing.B) {
	for _, one := range []struct {
		name    string
		options sim.Options
	}{
		{"off", sim.Options{}},
		{"on", sim.Options{Attribute: true}},
		{"pauses", sim.Options{Pauses: true}},
		{"ages", sim.Options{AgesAt: []int{2}}},
	} {
		b.Run(one.name, func(b *testing.B) {
			e := compile(b, refLine(b, 600_000, 400_000, 3*sim.Second)).NewEngine()
			o := one.options
			o.Seed, o.Measure = 1, 9*sim.Hour
			b.ReportAllocs()
			for o.Replication = 0; b.Loop(); o.Replication++ {
				e.Run(o)
			}
		})
	}
}
