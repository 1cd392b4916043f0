package report

import (
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// lossColumns are counts that only some stations have.
var lossColumns = []struct {
	name string
	has  func(*sim.Station) bool
	of   func(*sim.StationRecord) int64
}{
	{"in_runs", func(s *sim.Station) bool { return s.Runs.Enter > 0 }, func(r *sim.StationRecord) int64 { return r.InRuns }},
	{"no_reads", func(s *sim.Station) bool { return s.NoReads > 0 }, func(r *sim.StationRecord) int64 { return r.NoReads }},
	{"lost_packs", func(s *sim.Station) bool { return s.LostPerStop > 0 }, func(r *sim.StationRecord) int64 { return r.LostPacks }},
	{"mis_picked", picks, func(r *sim.StationRecord) int64 { return r.MisPicked }},
	{"samples", func(s *sim.Station) bool { return len(s.Checks) > 0 }, func(r *sim.StationRecord) int64 { return r.Sampled }},
	{"empty_pockets", func(s *sim.Station) bool { return s.EmptyPockets.On }, func(r *sim.StationRecord) int64 { return r.EmptyPockets }},
}

// picks says that a picker of the station may miss.
func picks(s *sim.Station) bool {
	return slices.ContainsFunc(s.Materials, func(m sim.Material) bool { return m.MisPicks.Share > 0 })
}

// materialColumns are what a station used of one material; web in micrometres, so that every one is whole.
func materialColumns(i, k int, station string, m result.Material) []csvColumn {
	var columns []csvColumn
	add := func(what string, of func(*sim.MaterialRecord) string) {
		columns = append(columns, csvColumn{station + ": " + m.Name + " " + what, func(r *sim.Record) string { return of(&r.Stations[i].Materials[k]) }})
	}
	in := ""
	if m.Unit == "m" {
		in = "_um"
	}
	add("used"+in, func(r *sim.MaterialRecord) string { return integer(r.Used) })
	add("wasted"+in, func(r *sim.MaterialRecord) string { return integer(r.Wasted) })
	if m.Tasks != nil {
		add("tasks", func(r *sim.MaterialRecord) string { return integer(r.Tasks) })
		add("late", func(r *sim.MaterialRecord) string { return integer(r.Late) })
		add("lateness_s", func(r *sim.MaterialRecord) string { return seconds(r.Lateness) })
	}
	if m.FailedSplicesPerHour.N > 0 {
		add("failed_splices", func(r *sim.MaterialRecord) string { return integer(r.FailedSplices) })
	}
	if m.FailedPicksPerHour.N > 0 {
		add("failed_picks", func(r *sim.MaterialRecord) string { return integer(r.FailedPicks) })
	}
	return columns
}
