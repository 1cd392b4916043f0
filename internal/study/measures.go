package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

// MeasureWord is an entry of the list of measures. STATION, BUFFER, MATERIAL and NAME stand for a name of the line.
type MeasureWord struct {
	Words, Per, Meaning string
	rows                func(v view, of int, per string) []result.Measure
}

// The words of Per. A count is per hour, shift or week, as the answer of the scenario is.
const (
	perAnswer = "hour, shift or week"
	perTime   = "share of time"
	// perPresent is a share of the time in which people are there.
	perPresent = "share of time present"
	perPieces  = "share of pieces"
	perMoment  = "on average, in pieces"
	// perRequest is a time.
	perRequest = "request, in seconds"
	// perRequests is a share.
	perRequests = "share of requests"
	// perWindows is a share too, of what the scenario calls its windows.
	perWindows = "share of shifts, weeks or runs"
	perLate    = "late refill, in seconds"
	perEvent   = "pause, in pieces"
	perTest    = "test, in pieces"
	perPiece   = "piece, in seconds"
	// The parts of OEE are shares of these.
	perBusy      = "share of planned busy time"
	perMade      = "share of production time"
	perProduced  = "share of production time and own stops"
	perOperating = "share of operating time"
	// perStop is a time.
	perStop = "stop, in minutes"
	perGood = "good piece of the answer"
	// perRun is a time.
	perRun = "run, in hours"
)

// MeasureWords is the one list of measures.
var MeasureWords = []MeasureWord{
	{"good output", perAnswer, "good pieces of the answer", goodOutput},
	{"spread of good output", perAnswer, "standard deviation of single windows, with a bootstrap interval", spread},
	{"scrap", perAnswer, "pieces lost as restart scrap: in pieces of the answer for the line, then at each station in its own", losing(scrapped)},
	{"rejects", perAnswer, "pieces rejected, part inputs at the ends of orders included: in pieces of the answer for the line, then at each station in its own", rejects},
	{"lost packs", perAnswer, "packs rejected because they lost their place at a stop, counted like rejects", losing(lostPacks)},
	{"no-reads", perAnswer, "packs rejected because their code could not be read, counted like rejects", losing(noReads)},
	{"mis-picked", perAnswer, "packs rejected because a blank or a leaflet was missing, counted like rejects", losing(misPicked)},
	{"samples", perAnswer, "good pieces that checks have taken, counted like rejects", losing(sampled)},
	{"yield", perPieces, "good output of what was good, rejected or scrapped", yield},
	{"STATION starved", perTime, "the station waits for input", inState(sim.Starved)},
	{"STATION blocked", perTime, "the station waits for room", inState(sim.Blocked)},
	{"STATION down", perTime, "a stop is being worked on", inState(sim.Down)},
	{"STATION waiting for crew", perTime, "a stop waits for people", inState(sim.Waiting)},
	{"all stations running", perTime, "all stations are at work at once", allRunning},
	{"stops of STATION", perAnswer, "own stops and material changes, by their beginning", stopsOf},
	{waitsBecause, perAnswer, "stops of this name, or of a material or store, that made the station wait, through stations between too; all waits because of one stop count once", becauseOf},
	{"restarts of STATION", perAnswer, "beginnings of work after a pause longer than one cycle at set speed", restartsOf},
	{"BUFFER full", perTime, "the whole output of the feeder does not fit, nights and weekends within the window included", full},
	{"BUFFER empty", perTime, "fewer pieces than one take have arrived, nights and weekends within the window included", empty},
	{"BUFFER level", perMoment, "mean level, pieces on their way included; over nights and weekends too", level},
	{"BUFFER runs dry", perWindows, "windows in which it was empty at all; of a store beside the line: in which the exit lacked pieces and it had none", dry},
	{freePlaces, perEvent, "pieces that the stations before would give at set speed in a pause of the station behind: P90, P95 and P99 of all its pauses, its own and joined stops, heat-up, and times longer than a cycle in which it is blocked", neededPlaces},
	{"stops of BUFFER", perAnswer, "stops of the store itself, by their beginning", stopsOfStore},
	{"carried by hand", perAnswer, "pieces carried into and out of each hand magazine", carried},
	{"late refills", perAnswer, "refills, splices and preparations done after the stock was used up: all of the line, then each material", lateRefills},
	{"lateness of refills", perLate, "mean time from the end of the stock to the end of a late refill, for each material", lateness},
	{"MATERIAL used", perGood, "web in m or pieces that cycles have used, those of scrap and failed picks included", usedUp},
	{"MATERIAL wasted", perGood, "of it what scrapped cycles and failed picks have used", wastedUp},
	{"waiting for crew", perRequest, "scheduled time until work begins, for each crew and for each station that asks for people: mean, P50 and P95", waiting},
	{"requests that waited", perRequests, "requests for which nobody was free, for each crew", ofCrews("", crewWaited)},
	{"crew busy", perPresent, "people's time at work at the line, walking included, for each crew", ofCrews("", crewBusy)},
	{"crew minutes", perAnswer, "minutes of people at work at the line, for each crew", ofCrews("min", crewMinutes)},
	{"walking", perAnswer, "of them minutes from the call to the beginning of work, for each crew", ofCrews("min", minutesOf(walking))},
	{"overtime", perAnswer, "of them minutes after the end of the shift or in a break, for each crew", ofCrews("min", minutesOf(overtime))},
	{timeInLine, perPiece, "time from the cycle that takes the oldest part of a good piece of the answer from supply to when the piece is counted: mean, P95, P99 and longest", agesOf},
	{exposure, perTest, "pieces that have been made at the beginning of the line since what the last good test looked at, when a test is over: mean, P95 and most, for each check", exposures},
	{"finish time", perRun, "when the last order is finished, after the start of the run: P5, P50 and P95 of the runs, also as a clock; what is not finished counts as later", finishTime},
	{"changeovers", perAnswer, "changeovers between orders, by their beginning", changeovers},
	{"line efficiency", perPieces, "good output of what the slowest station would make at set speed", lineEfficiency},
	{"OEE", perBusy, "ISO 22400-2, of the line at the station that limits it, then of each station; counted as key figures says", keyFigureOf("oee")},
	{"availability", perBusy, "ISO 22400-2: production time of the planned busy time, counted like OEE", keyFigureOf("availability")},
	{"performance", perMade, "ISO 22400-2, effectiveness: planned run time of what was made, of the production time, counted like OEE", keyFigureOf("performance")},
	{"quality", perPieces, "ISO 22400-2: good of what was made, counted like OEE", keyFigureOf("quality")},
	{"technical efficiency of ISO 22400-2", perProduced, "production time of it and of own stops; another figure than that of EN 415-11", keyFigureOf("technical_efficiency_iso")},
	{"technical efficiency of EN 415-11", perOperating, "good output of what set speed would give in the operating time without external causes", keyFigureOf("technical_efficiency_en")},
	{"mean time between stops of STATION", perStop, "running time between two own stops, of all causes and of each", timeOf(between)},
	{"mean time to repair of STATION", perStop, "work of a stop, of all causes and of each", timeOf(toRepair)},
	{"mean time stopped of STATION", perStop, "time under a stop, waiting for the crew included; breaks and the time between shifts left out", timeOf(stoppedFor)},
}
