package engine

import "thawbook/engine/diag"

// GearQuestion asks which gear pays. A sheet says what a piece costs and saves in
// a table with a row for each piece and columns of these ids:
//
//	price        what it costs, in money
//	life         how long it lasts, in years or another time
//	left_over    the share of its price it fetches then; nothing when not said
//	saves_money  the money it saves in a year, or of the season of a year
//	saves_hours  the hours it saves in a year, or of the season of a year
//
// of which price, life and one of the last two must be there.
type GearQuestion struct {
	Options
	// Worth is the id of the line that says what an hour is worth, or a number of
	// the sheet's money for an hour; "" takes the line called worth, if there is
	// one. Without it hours are counted but not valued.
	Worth string
	// Rate is the id of the line that says what money costs a year, or a share (0.05
	// for 5 %); "" takes the line called rate, if there is one, and else nothing.
	Rate string
}

// GearList answers a GearQuestion. A drawn season stands for every year of a
// piece's life: a range is wider than that of many unlike years would be.
type GearList struct {
	Title   string `json:"title"`
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Rate and Worth are what was reckoned with; Worth is nil when hours are not
	// valued.
	Rate  GearTerm  `json:"rate"`
	Worth *GearTerm `json:"worth"`
	// Pieces are the rows that save something, in the order of the sheet; Silent
	// are the labels of the others of their tables.
	Pieces   []GearPiece `json:"pieces"`
	Silent   []string    `json:"silent"`
	Warnings diag.List   `json:"warnings"`
	// Paragraph says it in plain words.
	Paragraph string `json:"paragraph"`
}

// GearTerm is a number of the sheet that all pieces are reckoned with. ID is empty
// when it was given as a number or not at all.
type GearTerm struct {
	ID    string `json:"id,omitempty"`
	Label string `json:"label"`
	Shown string `json:"shown"`
}

// GearPiece is one row. All money is in the sheet's money, hours in h.
type GearPiece struct {
	// ID is table.row.
	ID         string    `json:"id"`
	Label      string    `json:"label"`
	Note       string    `json:"note,omitempty"`
	Price      GearRange `json:"price"`
	Life       GearRange `json:"life"` // in years
	SavesMoney GearRange `json:"saves_money"`
	SavesHours GearRange `json:"saves_hours"`
	// YearShare is what it costs in each year of its life, with money at its rate
	// and what it fetches at the end taken off.
	YearShare GearRange `json:"year_share"`
	// Money weighs the money saved alone; WithHours the hours as well, at their
	// worth, nil when they have none.
	Money     GearVerdict  `json:"money"`
	WithHours *GearVerdict `json:"with_hours"`
	// HourCosts is what the piece asks for each hour it saves: its year's share,
	// less the money it saves, over the hours. It pays for a household whose hour is
	// worth more. Nil when it saves no hours.
	HourCosts *GearRange `json:"hour_costs"`
	// Missing counts the seasons that came to no number.
	Missing int `json:"missing"`
	// Sentence is the verdict in words.
	Sentence string `json:"sentence"`
}

// GearVerdict says whether a saving pays.
type GearVerdict struct {
	// Years is after how many years the price is paid back, what the piece
	// fetches at the end not counted. A number is nil where it never is, which is
	// shown as "never".
	Years GearRange `json:"years"`
	// Repays is the share of the seasons in which it pays within its life: the
	// saving is as much as the year's share or more, so that with what it fetches
	// at the end nothing is lost on it.
	Repays *float64 `json:"repays"`
	// Leaves is the saving less the year's share.
	Leaves      GearRange `json:"leaves"`
	ShownRepays string    `json:"shown_repays"`
}

// GearRange is a number over the seasons. Shown is the middle, Range "$220 to
// $480" or empty when it is certain.
type GearRange struct {
	P10   *float64 `json:"p10"`
	P50   *float64 `json:"p50"`
	P90   *float64 `json:"p90"`
	Shown string   `json:"shown"`
	Range string   `json:"range,omitempty"`
}
