// Package stoplog turns what a log of stops holds into laws that a scenario can
// use: maximum likelihood with open intervals and with a threshold below which
// nothing is logged, intervals of the parameters, tests of the fit.
//
// Everything is a pure function of its numbers; what is drawn at random
// (parametric bootstrap) starts from a fixed seed, so that the same log gives the
// same bytes. Durations are in whatever unit the log has; the laws are in the same.
package stoplog
