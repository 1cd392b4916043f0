// Package keyfigure derives figures from a scenario by arithmetic: rates,
// efficiency alone, minutes of reels and magazines, content of belts, drain of
// stores, allowed speeds, bounds. Each formula stands beside its source.
//
// Nothing here is simulated. Waiting for a crew, restart scrap and restarts that others
// cause are left out of the arithmetic, because they depend on what happens around a
// station; the figures say so.
//
// A bound counts only what no luck can avoid: see withStops. Rates that are no bounds are what is to be
// expected, and may lie a little above or below what a station alone makes.
package keyfigure
