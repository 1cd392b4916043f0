// Package draw has random streams and the laws that are drawn from them.
package draw
