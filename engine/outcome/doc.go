// Package outcome says what drawn seasons mean: the range, middle and mean of a
// number over all of them, how two numbers move together, and what a reckoning
// must warn of.
package outcome
