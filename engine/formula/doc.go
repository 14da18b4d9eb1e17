// Package formula turns a sheet's formulas into checked, unit-aware workings.
//
// The stages are Parse (text to a syntax tree, by github.com/expr-lang/expr),
// Check (names, kinds, units, conversions: a tree of [Node]) and Bind (every
// line and cell of a sheet gets a slot, and the slots an order of work). The
// columns room runs the trees over all seasons at once; [Eval] runs one season,
// for explaining and for finding where a number stopped being one; package
// plain runs them on expr's own machine as referee.
package formula
