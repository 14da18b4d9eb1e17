package engine

import (
	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// Options say how to reckon.
type Options struct {
	// Seasons to draw; 0 takes the sheet's own number. At most sheet.MaxSeasons.
	Seasons int
	// Seed to draw from; nil takes the sheet's own.
	Seed *uint64
	// System is the system of units the answers are shown in.
	System units.System
	// Progress, when not nil, is told how many seasons of how many are done, and
	// stops the reckoning by answering false.
	Progress func(done, total int) bool
	// Told is a reckoning that was told already, or nil. Lines that come to the
	// same are then left out of the new one, which says so in Changed.
	Told *Reckoning
}

// Reckoning is what all the drawn seasons say about every line.
type Reckoning struct {
	Title   string `json:"title"`
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Lines are the lines and table cells in the order of the sheet.
	Lines    []Answer  `json:"lines"`
	Warnings diag.List `json:"warnings"`
	Cautions []Caution `json:"cautions"`
	// Paragraph says the outcome in plain words.
	Paragraph string `json:"paragraph"`
	// Worked counts the lines that had to be worked for this reckoning; the
	// others of Of were taken over from the one before.
	Worked int `json:"worked"`
	Of     int `json:"of"`
	// Changed says that Lines are only those that differ from Options.Told.
	Changed bool `json:"changed,omitempty"`

	// basis is what Lines were told from, all of them.
	basis basis
}

// Answer is what the seasons say about one line. Numbers are in Unit and nil
// when the line comes to none.
type Answer struct {
	ID       string   `json:"id"`
	Label    string   `json:"label"`
	Chapter  string   `json:"chapter"`
	Unit     string   `json:"unit"`
	Kind     string   `json:"kind"`
	AtLikely *float64 `json:"at_likely"`
	Mean     *float64 `json:"mean"`
	P05      *float64 `json:"p05"`
	P10      *float64 `json:"p10"`
	P50      *float64 `json:"p50"`
	P90      *float64 `json:"p90"`
	P95      *float64 `json:"p95"`
	Headline bool     `json:"headline"`
	// Better is "more", "less" or empty.
	Better string `json:"better,omitempty"`
	// Goal is the goal in words; GoalMet the share of seasons that meet it.
	Goal    string   `json:"goal,omitempty"`
	GoalMet *float64 `json:"goal_met"`
	// Dots are twenty seasons that stand for all, from the lowest: a headline's
	// percentiles 2.5, 7.5, … 97.5. Each is as likely as the others.
	Dots []float64 `json:"dots,omitempty"`
	// GoalDots says which of Dots meet the goal, when there is one.
	GoalDots []bool `json:"goal_dots,omitempty"`
	// Choice is the name a choice line stands at.
	Choice string `json:"choice,omitempty"`
	// Table, Row and Column are set for a table's cell.
	Table  string `json:"table,omitempty"`
	Row    string `json:"row,omitempty"`
	Column string `json:"column,omitempty"`
	Shown  Shown  `json:"shown"`
}

// Shown holds the numbers of an Answer as they are read, unit and all.
type Shown struct {
	Likely string `json:"likely"`
	Low    string `json:"low"`
	Middle string `json:"middle"`
	High   string `json:"high"`
	Mean   string `json:"mean"`
	// Goal is "9 seasons of 10", empty when there is no goal.
	Goal string `json:"goal,omitempty"`
}

// Caution is a warning about work that can hurt, beside what it is about.
type Caution struct {
	About  string `json:"about"`
	Text   string `json:"text"`
	Source string `json:"source"`
}
