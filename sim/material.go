package sim

// Material is a reel, a magazine or a hopper: a stock that every cycle draws on.
type Material struct {
	Name string
	// Amount is what a full stock holds, PerCycle what one cycle uses, Refill
	// what a change adds: micrometres of web or pieces.
	Amount, PerCycle, Refill int64
	// Lasts is the law of the change or refill, in microseconds.
	Lasts Law
	Crew  Work
	// Alarm is the stock at which somebody is asked to refill it while the station runs; what is
	// left then is the time there is for it. If it is used up first the station stops until
	// the refill is done. Off means that it is changed or refilled when it is used up.
	Alarm Level
	// PartUsed draws the first stock uniformly instead of starting full.
	PartUsed bool
	// Web says that it is a length of web in micrometres, not pieces.
	Web bool
	// Prepare is what must be done, while the station runs, after each change before
	// the next can begin: the next reel is got ready.
	Prepare Prepare
	// Store lets a change of reel be made while the station runs.
	Store WebStore
	// SpliceScrap is the number of cycles that are scrap after each change; a cycle under way at the end of a
	// splice is the first of them.
	SpliceScrap int64
	// SpliceFails is the share of changes that fail at their end, 0 to below 1: the work is done again.
	SpliceFails float64
	MisPicks    MisPicks
}

// Prepare is a task. Without it the next reel is always ready.
type Prepare struct {
	On    bool
	Lasts Law
	Crew  Work
}

// WebStore is a store of web between the splice and the machine. When the reel is used up the
// splice is made at standstill behind it, while the machine draws on the store. If that is empty first the
// machine stops for the rest of the splice.
type WebStore struct {
	On     bool
	Length Micrometres
	// Refill is the speed of the web into the store over that out of it while it fills
	// again after a splice, more than 1.
	Refill float64
}

// MisPicks are blanks or leaflets that the picker misses. A pick is tried again up to Retries times, as long as
// the stock lasts; each try takes the time of one cycle and uses one cycle's material. If all fail, the cycle
// gives nothing: its pieces count as rejected; if Stops, the station also stops, under the
// cause "NAME mis-picked" of class minor.
type MisPicks struct {
	// Share of tries that fail, 0 to below 1.
	Share   float64
	Retries int64
	Stops   bool
	Lasts   Law
	Crew    Work
}

// MisPickName is the name of the stop after a pick of this material has failed for good.
func MisPickName(material string) string { return material + " mis-picked" }
