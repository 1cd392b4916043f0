package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

// MeasureWord is an entry of the list of measures. STATION and BUFFER stand for a name of the line.
type MeasureWord struct {
	Words, Per, Meaning string
	rows                func(v view, of int, per string) []result.Measure
}

// The words of Per. A count is per hour, shift or week, as the answer of the scenario is.
const (
	perAnswer = "hour, shift or week"
	perTime   = "share of time"
	perPieces = "share of pieces"
	perMoment = "on average, in pieces"
	// perRequest is a time.
	perRequest = "request, in seconds"
	// perRequests is a share.
	perRequests = "share of requests"
)

// MeasureWords is the one list of measures.
var MeasureWords = []MeasureWord{
	{"good output", perAnswer, "good pieces of the answer", goodOutput},
	{"spread of good output", perAnswer, "standard deviation of single windows, with a bootstrap interval", spread},
	{"scrap", perAnswer, "pieces lost as restart scrap: in pieces of the answer for the line, then at each station in its own", scrap},
	{"rejects", perAnswer, "pieces rejected: in pieces of the answer for the line, then at each station in its own", rejects},
	{"yield", perPieces, "good output of what was good, rejected or scrapped", yield},
	{"STATION starved", perTime, "the station waits for input", inState(sim.Starved)},
	{"STATION blocked", perTime, "the station waits for room", inState(sim.Blocked)},
	{"STATION down", perTime, "a stop is being worked on", inState(sim.Down)},
	{"STATION waiting for crew", perTime, "a stop waits for people", inState(sim.Waiting)},
	{"all stations running", perTime, "all stations are at work at once", allRunning},
	{"stops of STATION", perAnswer, "own stops and material changes, by their beginning", stopsOf},
	{"restarts of STATION", perAnswer, "beginnings of work after a pause longer than one cycle at set speed", restartsOf},
	{"BUFFER full", perTime, "the whole output of the feeder does not fit", full},
	{"BUFFER empty", perTime, "fewer pieces than one take have arrived", empty},
	{"BUFFER level", perMoment, "mean level, pieces on their way included", level},
	{"waiting for crew", perRequest, "mean time until work begins, for each crew", waiting},
	{"requests that waited", perRequests, "requests that had to wait at all, for each crew", waited},
	{"crew busy", perTime, "people's time at work at the line, for each crew", busy},
	{"line efficiency", perPieces, "good output of what the slowest station would make at set speed", lineEfficiency},
}
