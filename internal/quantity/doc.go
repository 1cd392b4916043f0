// Package quantity is on its way.
package quantity
