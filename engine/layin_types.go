package engine

import "thawbook/engine/diag"

// LayInQuestion asks what to gather or buy before the season.
type LayInQuestion struct {
	Options
	// Chance is in how many seasons each thing should last, as in "9/10", which
	// is also what "" means.
	Chance string
}

// LayInList is what to lay in: every line marked lay_in, by chapter.
type LayInList struct {
	Title   string `json:"title"`
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Chance is the share of the seasons each thing should last in, ChanceShown
	// the same in words: "9 seasons of 10".
	Chance      float64      `json:"chance"`
	ChanceShown string       `json:"chance_shown"`
	Groups      []LayInGroup `json:"groups"`
	// Total is what all that has a price costs together; Unpriced counts the
	// things to buy that have none. Total is nil when nothing has one.
	Total    *LayInCost `json:"total"`
	Unpriced int        `json:"unpriced"`
	// AllLast is the share of the seasons in which nothing of the list runs short
	// once it is bought: fewer than each thing alone, because seasons differ in
	// what they run short of. AllNow is the same with what is on hand alone.
	AllLast *float64       `json:"all_last"`
	AllNow  *float64       `json:"all_now"`
	Shown   ShownLayInList `json:"shown"`
	// Warnings are things that could not be listed or priced, and why.
	Warnings diag.List `json:"warnings"`
	// Paragraph says the list in plain words.
	Paragraph string `json:"paragraph"`
}

// LayInGroup is what one chapter wants.
type LayInGroup struct {
	Chapter string      `json:"chapter"`
	Items   []LayInItem `json:"items"`
}

// LayInItem is one thing on the list. All quantities are in Unit; a number is nil
// when the seasons do not say.
type LayInItem struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Note  string `json:"note,omitempty"`
	Unit  string `json:"unit"`
	// Need is what lasts in the chance asked for, Middle what the middle season
	// takes.
	Need   *float64 `json:"need"`
	Middle *float64 `json:"middle"`
	OnHand float64  `json:"on_hand"`
	// Round is the whole thing it is bought by, Buy how much to buy of it, a
	// whole number of these, and Packs how many of these.
	Round float64  `json:"round"`
	Buy   *float64 `json:"buy"`
	Packs *float64 `json:"packs"`
	// ShortNow is the share of the seasons in which what is on hand is too
	// little, ShortThen that in which it still is once Buy is bought.
	ShortNow  *float64 `json:"short_now"`
	ShortThen *float64 `json:"short_then"`
	// Missing counts the seasons that came to no number.
	Missing int `json:"missing"`
	// Cost is what Buy costs; nil when the sheet names no price.
	Cost  *LayInCost     `json:"cost"`
	Shown ShownLayInItem `json:"shown"`
}

// LayInCost is a sum of money over the seasons, in the sheet's money.
type LayInCost struct {
	Mean *float64 `json:"mean"`
	P10  *float64 `json:"p10"`
	P50  *float64 `json:"p50"`
	P90  *float64 `json:"p90"`
	// Shown is the middle, Range "$38 to $61" or empty when it is certain.
	Shown string `json:"shown"`
	Range string `json:"range,omitempty"`
}

// ShownLayInItem is a LayInItem as it is read.
type ShownLayInItem struct {
	Need      string `json:"need"`
	Middle    string `json:"middle"`
	OnHand    string `json:"on_hand"`
	Buy       string `json:"buy"`
	Packs     string `json:"packs,omitempty"` // "4 × 12 jars"
	ShortNow  string `json:"short_now"`
	ShortThen string `json:"short_then"`
	Price     string `json:"price,omitempty"`
}

// ShownLayInList is the rest of the list as it is read.
type ShownLayInList struct {
	AllLast string `json:"all_last"`
	AllNow  string `json:"all_now"`
}
