package sim

// RejectRuns is a second, disturbed state of the rejects: it is entered in a share Enter of
// the cycles that end in the normal state, lasts Length cycles on average (geometric, at
// least 1), and in it the share of pieces rejected is Share instead of RejectShare. Enter 0
// means none. Scrapped cycles count for both states.
type RejectRuns struct {
	Enter, Share, Length float64
}

// RejectStop stops a station when After cycles in a row have each had a reject found;
// scrapped cycles, and those without a piece for the camera, neither count nor break the row, but where
// rejects leave later (Station.RejectsAfter) every cycle counts or breaks it. After 0
// means never. The cause is called "rejects in a row" and is of class quality; it begins like a change of
// material, when the cycle has handed over.
type RejectStop struct {
	After int64
	Lasts Law
	Crew  Work
}

// RejectStopName is the name of the cause of a RejectStop.
const RejectStopName = "rejects in a row"

// HeatUpName is the name of the cause of HeatUp.
const HeatUpName = "heat-up"
