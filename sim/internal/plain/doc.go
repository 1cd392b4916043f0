// Package plain is the reference engine: a calendar with at most one pending
// event a station, and the order of things within one instant.
//
// Everything due at time t happens in this order:
//
//  1. Ends: cycles, repairs, changes, transit, tasks, other work of the crew, ways to the work, late breaks; a
//     stop that strikes amid a cycle. The fate of the pieces of a cycle is settled here, and a stock that it
//     brings to its alarm asks for its refill.
//  2. The calendar of working time: lines that may work again go on, others are interrupted; people go home and
//     into their breaks, others come. Who was freed in 1 leaves with all others. Then calendar stops that begin; then
//     what else a station has to do whose stop has just ended, such as a second change, before its group goes on.
//  3. Moves, from the last station back to the first, again and again until
//     nothing changes: finished output leaves, then input is taken and the cycle
//     starts. Then levels that release a stopped station, and moves again. Then empty
//     pockets where input still lacks. Who begins to wait in this instant, for something else, while the level is
//     reached is released from the next instant on.
//  4. Stops that strike a cycle with no work done yet.
//  5. Crews are given out, people freed in this instant included, and those who have just come. Where people may
//     do the work of another crew, all requests go in one order.
//
// What belongs to a shift or to the window is cut before all of that.
//
// A state that lasts no time does not exist: states are compared once, at the end of the
// instant. Ties are broken by name, never by chance or by the order of declaration.
//
// An example. Station A (cycle 2 s, gives 1) hands over to B (cycle 3 s); nothing stands
// between them; A stops for 4 s after every 3 cycles:
//
//	t = 0  A takes from supply and starts; B has no input: starved
//	t = 2  A ends; its piece passes straight through to B, which starts; A starts
//	t = 4  A ends; B is at work: A is blocked and keeps the piece
//	t = 5  B ends and takes A's piece; A starts its third cycle
//	t = 7  A ends: blocked. Its clock has used up 3 cycles: the stop strikes when the next cycle starts
//	t = 8  B ends and takes; A takes its input and stops with no work done: down
//	t = 11 B ends; A is down: starved
//	t = 12 the stop is over: A works its fourth cycle until t = 14, when B starts
//
// Another, with people. A (cycle 1 s) stops after 4 s of running, and its repair takes one fitter 6 s. Lines and people have their
// break from t = 8 to 13:
//
//	t = 4  A stops; the fitter begins: down
//	t = 8  the break begins: planned stop. The fitter goes on
//	t = 10 the repair is over. The fitter takes his break, all 5 s of it
//	t = 13 the break of the others is over: A works
//	t = 15 the fitter is back
//	t = 17 A stops again; the fitter begins
package plain
