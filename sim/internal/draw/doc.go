// Package draw has the random streams of a replication and the laws that are
// drawn from them.
//
// Every value costs exactly one uniform number and is found by inversion, so
// that a change of a law's parameters moves values and nothing else: two
// alternatives that share a stream see the same luck.
package draw
