package result

// Pieces says where the pieces of a station's cycles went, per hour and in pieces that it
// gives: Made is the sum of all others. What the station cannot lose is absent.
type Pieces struct {
	Made Estimate `json:"made"`
	Good Estimate `json:"good"`
	// Faulty are rejects that none of the next four explains; InRuns were found by the camera in a run of rejects.
	Faulty Estimate `json:"faulty,omitzero"`
	InRuns Estimate `json:"in_runs,omitzero"`
	// NoReads are packs whose code could not be read, LostPacks those that lost their place at
	// a stop, MisPicked those of cycles without a blank or a leaflet.
	NoReads   Estimate `json:"no_reads,omitzero"`
	LostPacks Estimate `json:"lost_packs,omitzero"`
	MisPicked Estimate `json:"mis_picked,omitzero"`
	// Samples are good pieces that checks have taken.
	Samples Estimate `json:"samples,omitzero"`
	// Scrapped are the pieces of cycles thrown away by rule.
	Scrapped Estimate `json:"scrapped,omitzero"`
}

// Material has the figures of one reel, magazine or hopper, in its unit: "m" of web, or
// the plural of its pieces.
type Material struct {
	Name        string   `json:"name"`
	Unit        string   `json:"unit"`
	UsedPerHour Estimate `json:"used_per_hour"`
	// WastedPerHour is of it what scrapped cycles and failed picks have used.
	WastedPerHour Estimate `json:"wasted_per_hour"`
	// UsedPerAnswer and WastedPerAnswer are per good piece of the answer.
	UsedPerAnswer   Estimate `json:"used_per_answer"`
	WastedPerAnswer Estimate `json:"wasted_per_answer"`
	// Tasks is of materials that somebody refills, splices or prepares while the station runs.
	Tasks *Tasks `json:"tasks,omitempty"`
	// FailedSplicesPerHour counts changes that were done again, FailedPicksPerHour tries of the picker.
	FailedSplicesPerHour Estimate `json:"failed_splices_per_hour,omitzero"`
	FailedPicksPerHour   Estimate `json:"failed_picks_per_hour,omitzero"`
}

// Tasks are refills, splices and preparations done while the station runs.
type Tasks struct {
	PerHour Estimate `json:"per_hour"`
	// Late is the share of them that were done after the stock was used up, LatePerHour their
	// number, MeanLatenessS the mean time from then to their end, in seconds.
	Late          Estimate `json:"late"`
	LatePerHour   Estimate `json:"late_per_hour"`
	MeanLatenessS Estimate `json:"mean_lateness_s"`
}

// Check has the figures of one in-process test.
type Check struct {
	Name    string   `json:"name"`
	PerHour Estimate `json:"per_hour"`
}

// Beside has the figures of a store beside the line or a hand magazine, in pieces per hour.
type Beside struct {
	Kept      Estimate `json:"kept_per_hour"`
	GivenBack Estimate `json:"given_back_per_hour"`
	// ByHand are those of both that somebody carried, Minutes the people's time for it, in
	// minutes per hour: whole loads, even if fewer pieces came. Returned came back from rejected cycles. All are of hand magazines only.
	ByHand   Estimate `json:"by_hand_per_hour,omitzero"`
	Minutes  Estimate `json:"minutes_by_hand_per_hour,omitzero"`
	Returned Estimate `json:"returned_per_hour,omitzero"`
	// RanDry is the share of time in which the exit lacked pieces and the store had none,
	// DryWindows the share of windows in which that happened at all, with Wilson's interval.
	RanDry     Estimate `json:"ran_dry"`
	DryWindows Estimate `json:"dry_windows"`
}

// Origin is what began blocked and starved spells of a station. Blocked, Starved and Overlap are
// shares of the window; Overlap is the part of both in which another cause was there too.
type Origin struct {
	// Station is whose cause it is, a store for Store; Cause is the name of a stop or a material of it, or
	// one of the words below.
	Station              string   `json:"station"`
	Cause                string   `json:"cause"`
	Blocked              Estimate `json:"blocked"`
	Starved              Estimate `json:"starved"`
	Overlap              Estimate `json:"overlap"`
	BlockedSpellsPerHour Estimate `json:"blocked_spells_per_hour"`
	StarvedSpellsPerHour Estimate `json:"starved_spells_per_hour"`
}

// The causes that are no stops: a slower neighbour, the rate of a store or the time over a belt, rejects
// outside scrap, a stop of a store, no more input, breaks and the time between shifts, the change from one order to
// the next. Names of stops begin with a letter, so none is like them.
const (
	Pace    = "(pace)"
	Rate    = "(rate)"
	Rejects = "(rejects)"
	Store   = "(store)"
	Supply  = "(supply)"
	Outage  = "(outage)"
	Order   = "(order)"
)
