package plan

// OrderRecord is one order of a line, over the whole replication.
type OrderRecord struct {
	// Order is its place in the list, Round how often the list had been gone through before.
	Order, Round int
	// Line is the first station of the line that makes it, by its place among all stations.
	Line int
	// Changed is the time at which the changeover before it began, Began that from which its input was let in,
	// Finished that at which its count was reached or, by batch, the line was empty; Never if it did not
	// come to that.
	Changed, Began, Finished Micros
	// Input is the number of units of the batch that were let in, Good the good pieces that were counted.
	Input, Good int64
}

// ShiftRecord is one whole shift in the window.
type ShiftRecord struct {
	// Shift is that of the calendar; Begin is when it began, Scheduled its scheduled time.
	Shift            int
	Begin, Scheduled Micros
	// Passed is what each station has passed on from its beginning to that of the next shift, or to the end of the window, Late the
	// number of tasks for which a station had to stop: what is done at the very end of a shift that no other follows is its own.
	Passed []int64
	Late   int64
}
