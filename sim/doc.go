// Package sim is the model of a line and its simulation. A Line is plain data:
// stations, the buffers and belts between them, the people. Compile checks it and
// turns it into a Model; an Engine of the model runs replications, each a pure
// function of the model, the seed and its number, and returns a Record of integers.
//
// It imports nothing of the project outside itself, opens no file, prints
// nothing and reads no clock. A Model may be shared by goroutines, an Engine belongs to one.
//
// The rules of the engine, with an example timeline, stand in the comment of
// package plain inside; what happens within one station, in package part.
package sim
