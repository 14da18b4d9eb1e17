package workbook

import (
	"thawbook/engine/formula"
)

// Input is all that goes out, as plain data: this package works out formulas
// and never seasons.
type Input struct {
	// Plans go out in this order, at least one and at most MaxPlans. The first is
	// the one that the cover speaks of.
	Plans []Plan
	// Compare is what the plans' difference from the first comes to over the same
	// seasons; nil when nobody asked. It needs two plans or more.
	Compare *Comparison
	// LayIn is the list of what to gather or buy; nil when nobody asked.
	LayIn *LayIn
	// Made is when the workbook is made, as in 2026-11-25T10:00:00Z; "" leaves
	// the file without a date of its own, so that two are the same byte for byte.
	Made string
}

// Plan is one sheet as it goes out.
type Plan struct {
	// File is the name the sheet was opened by, Source its text byte for byte.
	File   string
	Source []byte
	// Bound is the sheet bound for running.
	Bound *formula.Plan
	// Likely has one number a slot: what it comes to with every guess at its
	// likely number, every record at its median; NaN where there is none.
	Likely []float64
	// Ranges has one entry a slot; nil entries came to no number in any season.
	Ranges []*Range
	// Seasons and Seed are what the ranges were reckoned from.
	Seasons int
	Seed    uint64
	// Paragraph says the outcome in plain words.
	Paragraph string
	Cautions  []Caution
	// Warnings are what to read first, one sentence each.
	Warnings []string
}

// Range is what the drawn seasons say of a line, in the line's own unit.
type Range struct {
	Low, Middle, High, Mean float64 // the 10th, 50th and 90th percentile, and the mean
	// Goal is the goal in words, Met in how many seasons it is met; "" for none.
	Goal, Met string
}

// Caution is a warning about work that can hurt, with who says so.
type Caution struct{ Text, Source string }

// Comparison is the difference of each plan from the first, line by line.
type Comparison struct {
	Lines []Compared
}

// Compared is one line in every plan but the first.
type Compared struct {
	// ID, Label and Unit are the line's in the first plan.
	ID, Label, Unit string
	// Differences has one entry for each plan after the first; nil where a plan
	// has no such line.
	Differences []*Difference
}

// Difference is a plan less the first over the same seasons.
type Difference struct {
	Low, Middle, High float64
	// Ahead says in how many seasons it comes out ahead; "" when neither way is
	// better.
	Ahead string
}

// LayIn is the list of what to gather or buy beforehand.
type LayIn struct {
	// Chance says for how many seasons it lasts: "9 seasons of 10".
	Chance string
	Needs  []Need
	// Total is what it costs in all, in words; "" when no price is known.
	Total string
}

// Need is one thing of the list.
type Need struct {
	Label, Unit string
	// Need is what the chosen seasons take, OnHand what is there, Get what is to
	// be had, in Unit, rounded up to whole things.
	Need, OnHand, Get float64
	// Cost is what that costs, in words; "" when no price is known.
	Cost string
}
