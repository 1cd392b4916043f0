// Package chartkit is on its way.
package chartkit
