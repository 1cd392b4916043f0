package scenario

import (
	"math"
	"strconv"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/sim"
)

// rejects makes runs of rejects, the stop after rejects in a row, and where rejects leave.
func (b *resolver) rejects(w *stationWords, station *sim.Station) {
	runs := &w.RejectRuns
	if runs.given() {
		station.Runs = sim.RejectRuns{Enter: runs.Enter.value, Share: runs.Share.value, Length: runs.Length.value}
	}
	if runs.Share.given() && w.Rejects.given() && runs.Share.value < w.Rejects.value && b.read(runs.Share.at) && b.read(w.Rejects.at) {
		b.complain(runs.Share.at, "in a run less is rejected than outside of it, rejects: %s; write the larger share here", w.Rejects.text())
	}
	finds := w.Rejects.given() || runs.given()
	if w.Inspection.given() && !finds {
		b.complain(w.Inspection.at, "%q rejects nothing that could leave later; write rejects: 0.8 %% beside it, or leave inspection out", station.Name)
	}
	b.rejectStop(w, station, finds)
}

func (b *resolver) rejectStop(w *stationWords, station *sim.Station, finds bool) {
	switch {
	case w.StopAfter.given() && !w.Reset.given():
		b.complain(w.StopAfter.at, "it does not say how long the stop lasts; write reset: 1 min beside it, or reset: {lasts: 1 min, crew: NAME}")
	case w.Reset.given() && !w.StopAfter.given():
		b.complain(w.Reset.at, "nothing is to be reset; write stop after: 3 cycles beside it, or leave reset out")
	case w.StopAfter.given() && !finds:
		b.complain(w.StopAfter.at, "%q rejects nothing, so that it never stops for it; write rejects: 0.8 %% or reject runs beside it, or leave stop after out", station.Name)
	}
	if !w.StopAfter.given() {
		return
	}
	b.law(w.Reset.Lasts.law)
	station.RejectStop = sim.RejectStop{After: int64(w.StopAfter.value), Lasts: w.Reset.Lasts.law.law, Crew: b.work(&w.Reset.Crew, usualPriority)}
	if finds && !w.RejectRuns.given() {
		b.noteInARow(station)
	}
}

// noteInARow says how seldom rejects that come one by one come in a row: k cycles in a row
// that each have one with probability p come once in (1 − pᵏ)/(pᵏ(1 − p)) cycles. Source: Feller,
// An Introduction to Probability Theory and Its Applications, volume 1, XIII.7; from memory.
func (b *resolver) noteInARow(station *sim.Station) {
	k := station.RejectStop.After
	p := 1 - math.Pow(1-station.RejectShare, float64(station.Gives))
	inARow := math.Pow(p, float64(k))
	switch {
	case p >= 1:
		return
	case p <= 0 || inARow < 1e-15:
		b.warn("%s stops after %d cycles in a row with a reject, but its rejects come one by one: this practically never happens. Write reject runs for those that come in a row.", station.Name, k)
	default:
		b.warn("%[1]s stops after %[2]d cycles in a row with a reject, but its rejects come one by one: %[3]s of the cycles have one, so that %[2]d in a row begin with a probability of %[4]s, once in about %[5]s cycles. Write reject runs for those that come in a row.",
			station.Name, k, rough(100*p)+" %", rough(100*inARow)+" %", rough((1-inARow)/(inARow*(1-p))))
	}
}

// rough writes a number with two digits that count.
func rough(x float64) string {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 2, 64), 64)
	return strings.ReplaceAll(quantity.Grouped(quantity.FormatNumber(rounded)), quantity.Thin, " ")
}
