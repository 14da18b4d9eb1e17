// Package calc reads the formulas of a workbook (ECMA-376 part 1, 18.17): it cuts
// them into tokens, makes trees of them, compares two, moves one, works one, and
// nothing else. It is what lets a partner's formula be understood; it does not
// calculate workbooks. It also reads numbers as people type them.
package calc

// Limits on one formula.
const (
	MaxRunes = 8192 // characters, as the standard has it
	MaxDepth = 64   // brackets, functions and signs inside each other
	// A chain of additions is a tree as deep as it is long.
	maxTokens = 2000
)
