// Package part has what happens inside one station, cycle by cycle, without
// neighbours and without the time of day. Both engines use it.
//
// A feature of a station is a part with a file of its own: pace, stop, stock
// (reels and magazines), pick, check, scrap, and reject with its gaps, runs and register.
// What a part raises as a stop waits in signals until the cycle has handed over. Every part answers two questions: for
// how many cycles, or for how much work, does nothing of mine happen; and, at a
// careful step, what happens now. Machine keeps the smallest of the quiet spans and
// asks the parts only when it is used up. A part that a station does not have
// is not asked and costs nothing.
package part
