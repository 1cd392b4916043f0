// Package keyfigure is on its way.
package keyfigure
