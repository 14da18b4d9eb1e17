package engine

import "thawbook/engine/diag"

// CompareOptions say what to compare and how.
type CompareOptions struct {
	Options
	// On are the lines or cells to compare; empty takes the headline lines.
	On []string
}

// Comparison sets scenarios of one sheet side by side over the same seasons.
type Comparison struct {
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Scenarios are in the order asked for; the first is what the others are
	// measured against.
	Scenarios []Scenario `json:"scenarios"`
	// Lines are the outcomes compared.
	Lines    []ComparedLine `json:"lines"`
	Warnings diag.List      `json:"warnings"`
	// Paragraph says in plain words on what each scenario comes out ahead.
	Paragraph string `json:"paragraph"`
	// Flips answer from which value of a shared number the answer turns. Compare
	// leaves them empty; see [FindFlip].
	Flips []*Flip `json:"flips,omitempty"`
}

// Scenario is one of the sheets compared.
type Scenario struct {
	Title string `json:"title"`
	// Name is what the sheet was opened by.
	Name string `json:"name"`
	// Short is the title without what all the titles begin with.
	Short string `json:"short"`
	// Changes are what it says otherwise than the first, in the order of the
	// file; empty for the first itself.
	Changes []SheetChange `json:"changes"`
}

// SheetChange is one thing two scenarios say otherwise.
type SheetChange struct {
	// About is the id of a line, cell or column, or empty for all lines that were
	// added or dropped.
	About string `json:"about"`
	Label string `json:"label"`
	// Was and Is are what the first scenario and the other say, in words.
	Was string `json:"was"`
	Is  string `json:"is"`
}

// ComparedLine is one outcome in every scenario. All numbers are in Unit, those
// of a difference too (for a temperature, in degrees of difference).
type ComparedLine struct {
	ID       string `json:"id"`
	Label    string `json:"label"`
	Chapter  string `json:"chapter"`
	Unit     string `json:"unit"`
	Headline bool   `json:"headline"`
	// Better is "more", "less" or empty.
	Better string `json:"better,omitempty"`
	// Values has one entry a scenario.
	Values []ComparedValue `json:"values"`
	// Difference has one entry for each scenario after the first.
	Difference []ComparedDifference `json:"difference"`
}

// ComparedValue is an outcome in one scenario; a number is nil when there is none.
type ComparedValue struct {
	AtLikely *float64 `json:"at_likely"`
	Mean     *float64 `json:"mean"`
	P05      *float64 `json:"p05"`
	P10      *float64 `json:"p10"`
	P50      *float64 `json:"p50"`
	P90      *float64 `json:"p90"`
	P95      *float64 `json:"p95"`
	Shown    Shown    `json:"shown"`
}

// ComparedDifference is a scenario's outcome less the first's, season by season.
type ComparedDifference struct {
	// Scenario is its place in the scenarios, from 1.
	Scenario int      `json:"scenario"`
	Mean     *float64 `json:"mean"`
	P05      *float64 `json:"p05"`
	P10      *float64 `json:"p10"`
	P50      *float64 `json:"p50"`
	P90      *float64 `json:"p90"`
	P95      *float64 `json:"p95"`
	// More, Less and Even are the shares of the seasons in which it comes to
	// more, less and the same.
	More *float64 `json:"more"`
	Less *float64 `json:"less"`
	Even *float64 `json:"even"`
	// Ahead is the share of the seasons in which it comes out ahead in the sense
	// of Better, Behind in which it falls behind; nil when the line has no Better.
	Ahead  *float64 `json:"ahead"`
	Behind *float64 `json:"behind"`
	// Missing counts the seasons left out because one of the two came to no
	// number.
	Missing int `json:"missing"`
	// Dominance is "more" or "less" when, rank by rank, no season of it is below
	// or none above the first's; otherwise empty.
	Dominance string `json:"dominance,omitempty"`
	// Explained are the changes that move the mean, each applied alone to the
	// first scenario, in the order of the file. With Together, which is what they
	// do only jointly, their means sum to Mean.
	Explained []Explained `json:"explained"`
	Together  Explained   `json:"together"`
	// Sentence says the difference in plain words, Explanation what it comes from.
	Sentence    string          `json:"sentence"`
	Explanation string          `json:"explanation"`
	Shown       ShownDifference `json:"shown"`
}

// Explained is what one change alone does to the mean of an outcome.
type Explained struct {
	About string   `json:"about"`
	Label string   `json:"label"`
	Mean  *float64 `json:"mean"`
	Shown string   `json:"shown"`
}

// ShownDifference holds a difference as it is read: "$869 less".
type ShownDifference struct {
	Low    string `json:"low"`
	Middle string `json:"middle"`
	High   string `json:"high"`
	Mean   string `json:"mean"`
	// Ahead is "7 seasons of 10", empty when the line does not say what is better.
	Ahead string `json:"ahead,omitempty"`
}
