package keyfigure

// Station has the figures of one station.
type Station struct {
	Name                 string
	TakesUnit, GivesUnit string
	Takes, Gives         int64
	// Set and Top are nominal: nothing is stopped, nothing rejected. Top equals
	// Set where no top speed is written.
	Set, Top Rate
	// Fastest is the highest speed that the station can come to run at: the set
	// speed or the fastest of its speed steps.
	Fastest Rate
	// GroupSeconds is what the longer cycle of a group adds to the mean cycle.
	GroupSeconds float64
	// Alone is the efficiency alone, 0 to 1: 1/(1 + sum of DownShare of its own
	// stops and changes), times every/(every + lasts) of each calendar stop; on one drive
	// with those of the whole unit.
	// LeftOut names what is not in it. Restarts count as running.
	Alone float64
	// Guaranteed is the contract efficiency of the machine alone, 0 without one. InRigid is the share of
	// time in which it works at set speed in the line without any buffer.
	Guaranteed, InRigid float64
	// Joined is the same with the stops of the stations that stop with it.
	Joined     float64
	JoinedWith []string
	// CoupledWith names the stations on the same drive: speeds and stops are those of the unit.
	CoupledWith []string
	// Inputs are the places that it takes from, the main one first, if there are several.
	Inputs []Input
	// SendsTo names the places among which it chooses, SendRule says how: "in turn", "the
	// first with room", "whichever has the fewest pieces".
	SendsTo  []string
	SendRule string
	// GoodShare is what Losses leave of the pieces given.
	GoodShare float64
	Losses    []Loss
	// Tries is the mean number of cycle times at set speed that a cycle takes: more than 1 with mis-picks.
	Tries float64
	// RestartSeconds is what a restart after a standstill of more than one cycle costs: heat recovery
	// and half the ramp. Restarts after own stops are in Effective and AtMost.
	RestartSeconds float64
	// Yield is the number of counted answer pieces per nominal answer piece that
	// the station gives: rejects from here to the count. Above 1 for stations after the count,
	// 0 for those whose pieces reach none. Where the flow divides it is the mean of the ways.
	Yield float64
	// PerPiece is the number of answer pieces that one piece given is worth,
	// from takes and gives along the flow, the mean where ways to the count differ in that;
	// 0 for a station that nothing joins with the count.
	PerPiece float64
	// Flow is the share of the line's flow that passes here, rejects left out: 1 for a station
	// without a parallel one, above 1 if a part of what passes is not counted.
	Flow float64
	// Effective is the mean rate of good pieces alone at set speed: set speed, with longer cycles,
	// further tries and restarts after own stops, times Alone. Source: V-curve on speed times isolated
	// efficiency. In answer pieces it is what is left of them at the count.
	Effective Rate
	// AtMost is the same at the fastest speed in use and with the stops of
	// joined stations: no line can get more through the station in the long run.
	AtMost    Rate
	Stops     []Stop
	Materials []Material
	Steps     []Step
	// WebSpeed is in m/min at set speed, 0 without a web.
	WebSpeed float64
	// Dwell is nil without a sealing share.
	Dwell *Dwell
	// LeftOut names what the station has and the efficiency does not contain.
	LeftOut []string

	cycles       float64 // cycles for each counted piece of the line, 0 without a way to the count
	downPerCycle float64 // minutes of own stops and changes per cycle, without calendar stops and running clocks
	downPerRun   float64 // minutes of own stops per minute of running, of running clocks
	calendar     float64 // product of every/(every+lasts) over calendar stops

	pauses                  []pause
	restart                 restart
	restarts, ownRestarts   often   // minutes of running that restarts take, of the unit and of its own stops
	spliceScrap, mostSplice float64 // share of cycles that are splice scrap: of all materials, of the worst
	mostGood, mostYield     float64 // GoodShare and Yield as a bound needs them
	outages                 []outage
	longest                 float64 // minutes that a cycle under way goes on at most, on average
}

// Input is what a cycle takes from one of several places.
type Input struct {
	From string
	// Unit is the plural of its pieces.
	Unit  string
	Takes int64
}

// Stop has the figures of one cause.
type Stop struct {
	Name, Class string
	// Clock is the word of its clock: cycles, pieces, running or calendar.
	Clock string
	// Every is the mean of its law in its own unit: cycles, pieces or minutes,
	// the stop rate factor included; of stops that start each other's clocks anew the mean
	// between two of its own.
	Every float64
	// Minutes is the mean interval at set speed, in minutes of running (calendar: of the calendar).
	Minutes float64
	// Lasts is the mean work, in minutes.
	Lasts float64
	// DownShare is Lasts/Minutes: minutes down per minute of running at set speed.
	DownShare float64
	// Never: other stops always start its clock anew before it is due. Aside: others start its
	// clock anew, so that it comes less often than its law says, by how much is not derived.
	// With either DownShare is 0.
	Never, Aside bool
}

// Material has the figures of one reel, magazine or hopper.
type Material struct {
	Name, Kind string
	// Unit is "m" or the plural of its pieces; Amount, PerCycle, PerMinute and Refill are in it.
	Unit string
	// Wound is the length on a full reel in m, 0 if no diameters are given.
	Wound float64
	// Amount is what a full stock holds that can be used.
	Amount float64
	// PerCycle and PerMinute are its use, at set speed.
	PerCycle, PerMinute float64
	// Refill is what a change adds.
	Refill float64
	// Minutes is how long a full stock lasts at set speed, RefillMinutes how long one refill.
	Minutes, RefillMinutes float64
	// Pieces is the number of pieces that the station gives from one full stock.
	Pieces float64
	// Lasts is the mean change, in minutes; DownShare is Lasts/RefillMinutes, 0 if filled in time.
	Lasts, DownShare float64
	// FilledInTime: it is refilled or spliced while the station runs, and stops it only where
	// that takes too long, which is in no rate.
	FilledInTime bool
	// Alarm says that it has one. AlarmMinutes is what is left then, in minutes at set speed: the deadline of the
	// refill; 0 without alarm. LateShare is the share of refills that take longer, by the law of the work alone.
	Alarm                   bool
	AlarmMinutes, LateShare float64
	// Store is nil without a web store.
	Store *WebStore
	// PrepareMinutes is the mean time to get the next one ready, 0 where it always is;
	// PrepareLate is the share that takes longer than one refill lasts.
	PrepareMinutes, PrepareLate float64
}

// Dwell has the figures of the sealing tool. Source: dwell = share × 60 / cycles per minute.
type Dwell struct {
	Share float64
	// Set and Fastest are the dwell in seconds at set speed and at the fastest speed in use.
	Set, Fastest float64
	// Qualified says that a range is given: Min to Max, in seconds.
	Qualified bool
	Min, Max  float64
	// Slowest and Quickest are the allowed speeds in cycles per minute.
	Slowest, Quickest float64
	// SetInside and FastestInside say whether the dwell lies in the qualified range.
	SetInside, FastestInside bool
}
