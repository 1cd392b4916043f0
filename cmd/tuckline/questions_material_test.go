package main

import (
	"strings"
	"testing"
)

// blanksOf is lowmere.yaml with blanks that are refilled in a log-normal time with mean 1.5 min and CV 0.8.
const blanksOf = `tuckline run scenarios/lowmere.yaml --replications 40 ` +
	`--show "free places needed at transfer store" --show "stops of blister machine because of carton blanks" --show "late refills" ` +
	`--set "cartoner.consumes.carton blanks.refill={amount: AMOUNT lasts: {dist: lognormal, mean: 1.5 min, cv: 0.8}}" `

// onlyBlanks takes away what else stops the cartoner.
const onlyBlanks = `--set "cartoner.stops={}" --set "print-and-check.stops={}" `

// Question 1: how many blisters must the buffer hold so that an empty carton magazine never stops the web? The time of a refill
// is log-normal with σ² = ln(1 + 0.8²) and μ = ln 1.5 − σ²/2; at 240 blisters/min exp(μ + z σ) × 240 are 692, 894 and 1 444 free
// places for 90, 95 and 99 % (by hand). With an alarm 6.25 min before the end the need is gone.
func TestQuestion1(t *testing.T) {
	empty := strings.Replace(blanksOf, "AMOUNT", "2000 blanks,", 1)
	alarm := strings.Replace(blanksOf, "AMOUNT", "1500 blanks, alarm at: 500 blanks,", 1)

	alone := ask(t, empty+onlyBlanks)
	for name, places := range map[string]float64{"P90": 692, "P95": 894, "P99": 1444} {
		v := alone.measure(t, "free places needed at transfer store", name)
		within(t, name, places, v.Low, v.High)
	}
	without, with := ask(t, empty), ask(t, alarm)
	greater(t, "output with an alarm", with.more(t, without, "good_output"))
	stops := func(a answer) float64 {
		return a.measure(t, "stops of blister machine because of carton blanks", "carton blanks of cartoner").Mean
	}
	// 28 000 cartons of 2 000 blanks each empty the magazine 14 times a shift; the web stops for those that find too few free places.
	within(t, "empty magazines a shift", without.mean(t, "cartoner: stops of carton blanks"), 12, 16)
	within(t, "stops of the web without alarm", stops(without), 1, 14)
	within(t, "stops of the web with alarm", stops(with), 0, 0.1*stops(without))
	// P(refill > 6.25 min) = 1 − Φ((ln 6.25 − μ)/σ) = 0.9 % (by hand) of some 19 refills a shift.
	within(t, "late refills", with.measure(t, "late refills", "carton blanks of cartoner").Mean, 0, 0.5)
}

// The free places for one cause alone, through a run that has no other: a stop of print-and-check, with which the cartoner stops,
// log-normal with mean 1.2 min and CV 0.8, needs exp(μ + z σ) × 240 = 554, 715 and 1 155; an exponential one with mean 18 min
// −ln(0.1, 0.05, 0.01) × 18 × 240 = 9 947, 12 942 and 19 894 (by hand), inside the 99 % interval. Windows are long, so that few
// pauses are cut by their ends, and so is the batch, which would else be over after 17.5 h. check says the same of each cause.
func TestFreePlacesOfOneCause(t *testing.T) {
	for stops, want := range map[string][3]float64{
		`--set "cartoner.stops={}" --set "print-and-check.stops={end-of-line stop: {every: {dist: exponential, mean: 2500 cartons}, lasts: {dist: lognormal, mean: 1.2 min, cv: 0.8}}}"`: {554, 715, 1155},
		`--set "print-and-check.stops={}" --set "cartoner.stops={breakdown: {every: {dist: exponential, mean: 1200 cartons}, lasts: {dist: exponential, mean: 18 min}}}"`:                {9947, 12942, 19894},
	} {
		alone := ask(t, `tuckline run scenarios/lowmere.yaml --replications 20 --seed 2 --set "run.measure=80 h" --set "orders=[{batch: 252000000 tablets}]" --set "run.confidence=99 %" --show "free places needed at transfer store" `+stops)
		for i, name := range []string{"P90", "P95", "P99"} {
			v := alone.measure(t, "free places needed at transfer store", name)
			within(t, name+" of "+stops, want[i], v.Low, v.High)
			within(t, name+" is as near", v.Mean, 0.85*want[i], 1.15*want[i])
		}
	}
}

// The worked check of question 1: check says the free places, how long the cartoner needs to make them free again at the 60
// blisters/min by which it is faster (894/60 = 14.9 min), and the warning that 500 blanks are at 80/min (6.25 min).
func TestQuestion1Check(t *testing.T) {
	check := strings.Replace(strings.Replace(blanksOf, "run ", "check ", 1), `--replications 40 `, "", 1)
	check = check[:strings.Index(check, "--show")] + check[strings.Index(check, "--set"):]
	says(t, strings.Replace(check, "AMOUNT", "2000 blanks,", 1),
		"692, 894, 1 444 blisters for 90, 95, 99 % of carton blanks at cartoner; free again in 11.5, 14.9, 24.1 min at top speed",
		"magazine of 2 000 blanks = 25 min")
	says(t, strings.Replace(check, "AMOUNT", "1500 blanks, alarm at: 500 blanks,", 1), "the alarm leaves 6.25 min")
}

const (
	splicing = `tuckline run scenarios/lowmere-splicing.yaml --replications 40 `
	byHand   = `--set "blister machine.consumes.forming foil={reel: {outer: 600 mm, core: 76 mm, thickness: 250 um, unusable: 12 m}, per cycle: 132 mm, change: 4 min, crew: operators}" `
)

// Question 7: automatic splicing or 1,000 more places? Both bring cartons. A splice of 4 min each 139 min of running costs at most
// 4 min × 80 cartons/min each (by hand), so automatic splicing brings at most that; places also shorten what other stops cost.
func TestQuestion7(t *testing.T) {
	hand, splice, places := ask(t, splicing+byHand), ask(t, splicing), ask(t, splicing+byHand+`--set "transfer store.holds=1720 blisters"`)
	gain := splice.more(t, hand, "good_output")
	greater(t, "output with automatic splicing", gain)
	greater(t, "output with 1,000 more places", places.more(t, hand, "good_output"))
	changes := hand.mean(t, "blister machine: forming foil_s") / 60
	within(t, "minutes of changes a shift", changes, 8, 14)
	within(t, "cartons by splicing", gain.Mean, 0.2*80*changes, 80*changes)
	blocked := hand.more(t, places, "blister machine: blocked_s")
	greater(t, "time blocked with fewer places", blocked)
	within(t, "splices late", splice.mean(t, "blister machine: forming foil late"), 0, 0.1)
}

// Question 8: how long must the web store be for a splice of 40 ± 6 s at 8 m/min? 8 × 40/60 = 5.33 m on average; the longest of
// a thousand, 40 + 3.09 × 6 = 58.5 s, takes 7.81 m (by hand). 8 m/min are 60.606 cycles of 132 mm.
func TestQuestion8Check(t *testing.T) {
	says(t, `tuckline check scenarios/lowmere-splicing.yaml --set "blister machine.cycle=60.606/min"`,
		"web 8 m/min", "a splice draws 5.33 m on average at 8 m/min, 7.81 m in 999 of 1 000", "full again in 3.33 min, next splice after 138 min")
}

// In the run half of the splices outlast a store of the mean length, next to none one of 7.8 m; a machine that is out of web
// stands for what is left of the splice, E[(T − 40.15 s)⁺] = about 2.3 s a splice (by hand: 0.4 σ), so it costs few cartons.
func TestQuestion8(t *testing.T) {
	length := func(metres string) answer {
		return ask(t, splicing+`--show "late refills" --set "blister machine.consumes.forming foil.web store.length=`+metres+`" `+
			`--set "blister machine.consumes.forming foil.splice fails=0 %"`)
	}
	short, mean, long := length("2 m"), length("5.3 m"), length("7.8 m")
	splices := mean.mean(t, "blister machine: forming foil tasks")
	within(t, "splices a shift", splices, 2, 3.5)
	within(t, "share late at 5.3 m", mean.mean(t, "blister machine: forming foil late")/splices, 0.35, 0.65)
	within(t, "share late at 7.8 m", long.mean(t, "blister machine: forming foil late")/splices, 0, 0.02)
	within(t, "share late at 2 m", short.mean(t, "blister machine: forming foil late")/splices, 0.95, 1)
	within(t, "seconds out of web a splice at 2 m, 40 − 15.15", short.mean(t, "blister machine: forming foil_s")/splices, 22, 28)
	within(t, "seconds out of web a splice at 5.3 m", mean.mean(t, "blister machine: forming foil_s")/splices, 1, 4)
	greater(t, "output with 7.8 m against 2 m", long.more(t, short, "good_output"))
	if most := 80 * short.mean(t, "blister machine: forming foil_s") / 60; long.more(t, short, "good_output").Mean > 1.5*most {
		t.Errorf("2 m cost %v cartons, more than the %v of the time", long.more(t, short, "good_output"), most)
	}
}
