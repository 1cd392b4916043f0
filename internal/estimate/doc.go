// Package estimate is on its way.
package estimate
