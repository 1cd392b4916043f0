package result

// LossTree says where the time of a station that limits the line has gone: the shares of its
// branches sum to 1. Off shift stands apart, in the states of the station.
type LossTree struct {
	Station string `json:"station"`
	// Branches are in the order of the kinds below, the largest of a kind first.
	Branches []LossBranch `json:"branches"`
}

// LossBranch is the time that went one way, as a share of the scheduled time.
type LossBranch struct {
	Kind LossKind `json:"kind"`
	// Cause alone is the name of a span of the calendar in which the line stands, of planned stops: break, start-up, tidy, cleaning.
	// Station and Cause say whose stop it is, or to what a wait goes back, in the words of Origin. Both are
	// empty where the kind says it all, and for waits of records that do not say more.
	Station string   `json:"station,omitempty"`
	Cause   string   `json:"cause,omitempty"`
	Share   Estimate `json:"share"`
	// Overlap is, of blocked and starved, the part of the share in which another cause was there too.
	Overlap Estimate `json:"overlap,omitzero"`
}

// LossKind is a kind of time.
type LossKind string

// The kinds. What runs is parted by the time of a cycle at set speed: that of the pieces that were good,
// sampled, rejected and scrapped, that of empty pockets, and the rest, in which the station was slower than set speed:
// speed steps, ramp, heat recovery, long cycles, picks again, cycles lost by a stop. The rest is below 0 where it was faster.
const (
	LossGood       LossKind = "good output"
	LossSamples    LossKind = "samples"
	LossRejects    LossKind = "rejects"
	LossScrap      LossKind = "scrap"
	LossPockets    LossKind = "empty pockets"
	LossSlower     LossKind = "slower than set speed"
	LossStop       LossKind = "stop"
	LossWaiting    LossKind = "waiting for crew"
	LossPlanned    LossKind = "planned stop"
	LossChangeover LossKind = "changeover"
	LossBlocked    LossKind = "blocked"
	LossStarved    LossKind = "starved"
)

// LossKinds are all kinds in their order.
var LossKinds = []LossKind{
	LossGood, LossSamples, LossRejects, LossScrap, LossPockets, LossSlower, LossStop, LossWaiting,
	LossPlanned, LossChangeover, LossBlocked, LossStarved,
}
