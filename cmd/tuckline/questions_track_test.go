package main

import "testing"

// Question 10: a store of 300 cartons before or behind print-and-check? Behind it fewer packs are lost, because a
// full exit costs 4 like a stop; before it none are saved. Either brings cartons.
func TestQuestion10(t *testing.T) {
	command := `tuckline run scenarios/tarn-hollow-cartons.yaml --replications 16 --show "lost packs" --show "stops of print-and-check" `
	none := ask(t, command)
	before := ask(t, command+`--set "store before.holds=300 cartons"`)
	behind := ask(t, command+`--set "store behind.holds=300 cartons"`)
	const lost = "print-and-check: lost_packs"
	greater(t, "packs lost with the store before against behind", before.more(t, behind, lost))
	greater(t, "packs lost without a store against behind", none.more(t, behind, lost))
	within(t, "packs lost with the store before against none", before.more(t, none, lost).Mean, -0.1*none.mean(t, lost), 0.1*none.mean(t, lost))
	greater(t, "output with the store before", before.more(t, none, "good_output"))
	greater(t, "output with the store behind", behind.more(t, none, "good_output"))
	// 4 for each own stop, one of 3 000 cartons, and for each film stop, one of 1 500: 4 × (1/3000 + 1/1500) a carton (by hand).
	within(t, "packs lost of all", none.mean(t, lost)/none.mean(t, "print-and-check: cycles"), 0.9*4/1000, 1.1*4/1000)
	within(t, "packs lost of all, store behind", behind.mean(t, lost)/behind.mean(t, "print-and-check: cycles"), 0.9*4/3000, 1.6*4/3000)
}

// Question 17: what does serialisation cost? 0.3 % of what print-and-check looks at, and up to 4 packs for each stop of it or of the
// cartoner, with which it stops; nothing else changes.
func TestQuestion17(t *testing.T) {
	command := ` --replications 16 --show "rejects" --show "lost packs" --show "no-reads" --show "stops of cartoner" --show "stops of print-and-check" --show "yield"`
	before, after := ask(t, "tuckline run scenarios/tarn-hollow.yaml"+command), ask(t, "tuckline run scenarios/tarn-hollow-serialised.yaml"+command)
	loss := before.more(t, after, "good_output")
	greater(t, "output without", loss)
	rejects := after.mean(t, "print-and-check: rejected")
	within(t, "cartons lost", loss.Mean, rejects-3, rejects+3)
	within(t, "share of no-reads", after.mean(t, "print-and-check: no_reads")/after.mean(t, "print-and-check: cycles"), 0.0027, 0.0033)
	stops := after.measure(t, "stops of cartoner", "cartoner").Mean + after.measure(t, "stops of print-and-check", "print-and-check").Mean
	// The window from 8:00 to 16:00 has two standstills of the calendar, which lose packs as stops do: the break at 10:00, and tidy
	// with start-up from 13:45 to 14:20. A stop just before the window may still lose its 4 in it.
	stops += 2
	within(t, "packs lost a stop", after.mean(t, "print-and-check: lost_packs")/stops, 3.8, 4+4/stops)
	within(t, "rejects after", after.measure(t, "rejects", "line").Mean, before.measure(t, "rejects", "line").Mean+rejects-1, before.measure(t, "rejects", "line").Mean+rejects+1)
	if d := before.more(t, after, "blister machine: cycles"); d.Mean != 0 || d.SD != 0 {
		t.Errorf("the blister machine has other cycles: %+v", d)
	}
}

// Question 24: which places and delays of the sensors avoid short stops of the web? Short stops of the cartoner, 6 s each 400
// cartons, pass unnoticed where full is far from the exit and slow, and stop the web each time where it is near and quick. By hand: 4 a
// second come, 10 a metre, and stand 62 mm apart, so that the queue grows by 4 / (1 - 0.62) = 10.5 a second. It is at 2 m (33 pieces,
// 32 of them before the last) after 3.0 s, and full reports at 3.5 s; it would be at 6 m (97) after 9.1 s.
func TestQuestion24(t *testing.T) {
	sensors := func(at, delay string) answer {
		return ask(t, `tuckline run scenarios/lowmere-sensors.yaml --replications 12 --show "restarts of blister machine" `+
			`--set "transfer belt.sensors={full: {at: `+at+` m, delay: `+delay+` s}, clear: {at: 1 m, delay: 2 s}}" `+
			`--set "cartoner.stops={minor stop: {every: 400 cartons, lasts: 6 s}}" --set "print-and-check.stops={}" --set "blister machine.stops={}"`)
	}
	restarts := func(a answer) float64 { return a.measure(t, "restarts of blister machine", "blister machine").Mean / 8 }
	near, far := sensors("2", "0.5"), sensors("6", "2")
	stops := near.mean(t, "cartoner: stops of minor stop") / 8
	within(t, "stops of the cartoner an hour", stops, 10, 14)
	// Changes of reels restart the web too, less than once an hour.
	within(t, "restarts an hour, near and quick", restarts(near), stops-1, stops+2)
	within(t, "restarts an hour, far and slow", restarts(far), 0, 2)
	greater(t, "time blocked, near and quick", near.more(t, far, "blister machine: blocked_s"))
}
