package plan

// TaskKind says what is done when a task is over.
type TaskKind uint8

// The kinds of tasks.
const (
	RefillTask    TaskKind = iota // a refill of a stock with an alarm, or a splice behind a web store
	PrepareTask                   // the next reel is got ready
	CheckTask                     // an in-process test
	StoreStopTask                 // the end of a stop of a store
	CarryTask                     // a load carried into a hand magazine or out of it
	ReturnTask                    // the inspection of what one rejected cycle took
	SetUpTask                     // a changeover; Item is the line
)

// Task is work that a crew does while stations run; there is at most one of it at a time.
type Task struct {
	Kind TaskKind
	// Station is whose it is, Item its place among the stocks or checks of the station.
	Station, Item int
	// Link is the place between stations whose it is, or None.
	Link int
	Name string
	// Rank is the place of the name of whose it is among all names of stations and buffers.
	Rank int
	Work Work
	// Streams, Purpose and Name are the names of the stream from which its work is drawn; a
	// refill is drawn from that of its stock.
	Streams, Purpose string
	// Cause is, for tasks of a station, the member whose it is, and the place of the material or check
	// in it.
	Cause Cause
}
