package engine

import "thawbook/engine/diag"

// PriceCard is what each size that is sold costs and leaves.
type PriceCard struct {
	Title string `json:"title"`
	// Money is the ISO code of the sheet's currency.
	Money   string `json:"money"`
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Table is the id of the table of sizes, "" when one size stands in lines.
	Table string `json:"table"`
	Label string `json:"label"`
	// Sizes are in the order of the sheet, Ladder the largest first.
	Sizes  []PricedSize `json:"sizes"`
	Ladder []Rung       `json:"ladder"`
	// Season is what the season comes to: syrup, takings, fees, hours, what is left.
	Season  []NamedAmount  `json:"season"`
	Outlets []PricedOutlet `json:"outlets"`
	// SalesAnswer says that fewer are sold at a higher price, as far as the sheet
	// knows; SalesNote says so in words.
	SalesAnswer bool   `json:"sales_answer"`
	SalesNote   string `json:"sales_note"`
	// Tenths say what a price a tenth higher does, for each size and for all.
	Tenths []PriceMove `json:"tenths"`
	// Change is what the changes asked for do; Wage the prices that pay the wage
	// asked for. Both are nil when nothing was asked.
	Change *PriceChange `json:"change"`
	Wage   *WagePrices  `json:"wage"`
	// Reference is what others got, for reference and never as advice.
	Reference *PriceReference `json:"reference"`
	// NotCounted says what the card leaves out because the sheet has no line for it.
	NotCounted []string  `json:"not_counted"`
	Warnings   diag.List `json:"warnings"`
}

// Amount is one number at the likely numbers and over the seasons. Numbers are in
// Unit, nil when there is none.
type Amount struct {
	Unit   string   `json:"unit"`
	Likely *float64 `json:"at_likely"`
	Mean   *float64 `json:"mean"`
	P10    *float64 `json:"p10"`
	P50    *float64 `json:"p50"`
	P90    *float64 `json:"p90"`
	// Missing counts the seasons that came to no number.
	Missing int         `json:"missing,omitempty"`
	Shown   ShownAmount `json:"shown"`
}

// ShownAmount holds an Amount as it is read.
type ShownAmount struct {
	Likely string `json:"likely"`
	Mean   string `json:"mean"`
	Low    string `json:"low"`
	Middle string `json:"middle"`
	High   string `json:"high"`
}

// NamedAmount is an Amount with what it is of. ID is a line's, or "" for one that
// the card works itself.
type NamedAmount struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Amount
}

// PricedSize is one size: where the money for one goes. Amounts that hang on what
// the sheet does not say are nil. At the likely numbers Brings is the sum of
// Selling, Parts, Syrup and Left, and Left that of Worked and After.
type PricedSize struct {
	// ID is the table's row, or the price line; PriceID is the cell to change.
	ID      string `json:"id"`
	Label   string `json:"label"`
	PriceID string `json:"price_id"`
	Size    Amount `json:"size"`
	Filled  Amount `json:"filled"`
	Price   Amount `json:"price"`
	// Brings is what one brings on the mean of all outlets, sold or not.
	Brings  Amount        `json:"brings"`
	Selling *Amount       `json:"selling"`
	Parts   []NamedAmount `json:"parts"`
	Syrup   *Amount       `json:"syrup"`
	// Left is what remains for the hours, for one, for each volume in it and for
	// each hour in it.
	Left     Amount  `json:"left"`
	ByVolume Amount  `json:"left_by_volume"`
	ByHour   *Amount `json:"left_by_hour"`
	Hours    *Amount `json:"hours"`
	// Worked is what the hours are worth, After what remains behind them.
	Worked *Amount `json:"worked"`
	After  *Amount `json:"after"`
}

// Rung is one size on the ladder of prices by volume.
type Rung struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	// ByVolume is the price of one volume, Against it over that of the largest.
	ByVolume Amount   `json:"by_volume"`
	Against  *float64 `json:"against_largest"`
	// Falls says that it is lower than the next larger size's at the likely
	// numbers; FallsIn is the share of the seasons in which it is.
	Falls   bool     `json:"falls"`
	FallsIn *float64 `json:"falls_in"`
	// Shown has Against and FallsIn in words.
	Shown ShownRung `json:"shown"`
}

// ShownRung holds a Rung's shares as they are read.
type ShownRung struct {
	Against string `json:"against"`
	FallsIn string `json:"falls_in,omitempty"`
}

// PricedOutlet is one place where jars are sold.
type PricedOutlet struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	// Level is the share of the price that is asked there.
	Level Amount `json:"level"`
	// Taken is the money it brings in a season; Kept what is left of it behind its
	// fees and its own cost.
	Taken Amount `json:"taken"`
	Kept  Amount `json:"kept"`
	// Sizes are in the order of the card's.
	Sizes []OutletSize `json:"sizes"`
}

// OutletSize is one size sold at one outlet: the price there, and what is left for
// the hours behind fees, the outlet's own cost, jar and syrup.
type OutletSize struct {
	ID    string `json:"id"`
	Price Amount `json:"price"`
	Left  Amount `json:"left"`
}

// PriceMove is what a change of one price does to the season.
type PriceMove struct {
	// ID is the size's, "" for all sizes together.
	ID    string `json:"id"`
	Label string `json:"label"`
	// Takings and Left are differences to the season as it stands; nil when the
	// sheet has no such line.
	Takings *Amount `json:"takings"`
	Left    *Amount `json:"left"`
}

// PriceChange is what the changes asked for do, over the same seasons.
type PriceChange struct {
	Lines    []ChangedValue   `json:"lines"`
	Outcomes []ChangedOutcome `json:"outcomes"`
	Warnings diag.List        `json:"warnings"`
}

// ChangedValue is one value that was changed, in words.
type ChangedValue struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Was   string `json:"was"`
	Is    string `json:"is"`
}

// ChangedOutcome is one outcome before and after.
type ChangedOutcome struct {
	ID         string `json:"id"`
	Label      string `json:"label"`
	Before     Amount `json:"before"`
	After      Amount `json:"after"`
	Difference Amount `json:"difference"`
	// More is the share of the seasons in which it comes to more.
	More      *float64 `json:"more"`
	ShownMore string   `json:"shown_more"`
}

// WagePrices are the prices that pay an hour's wage.
type WagePrices struct {
	Wage      float64 `json:"wage"`
	ShownWage string  `json:"shown_wage"`
	// Now is what an hour is paid as the sheet stands.
	Now NamedAmount `json:"now"`
	// Middle pays the wage in the middle season, Bad in 9 seasons of 10.
	Middle WageAnswer `json:"middle"`
	Bad    WageAnswer `json:"bad"`
}

// WageAnswer is how far to move the prices: all of them alike, or one alone.
type WageAnswer struct {
	All  ScaledPrices   `json:"all"`
	Each []ScaledPrices `json:"each"`
}

// ScaledPrices are prices multiplied by one factor.
type ScaledPrices struct {
	// ID is the size's, "" for all.
	ID string `json:"id"`
	// Found is false when no factor from a tenth to ten times does it; Several
	// when more than one does, and Factor is the one that changes prices least.
	Found   bool     `json:"found"`
	Several bool     `json:"several,omitempty"`
	Factor  *float64 `json:"factor"`
	// Shown is Factor in words, or that there is none.
	Shown  string        `json:"shown"`
	Prices []ScaledPrice `json:"prices"`
}

// ScaledPrice is the likely price of one size, multiplied.
type ScaledPrice struct {
	ID    string  `json:"id"`
	Label string  `json:"label"`
	Price float64 `json:"price"`
	Shown string  `json:"shown"`
}

// PriceReference is what others got in the last year that was surveyed.
type PriceReference struct {
	Source string `json:"source"`
	Year   int    `json:"year"`
	// Note says what the prices are and are not.
	Note  string          `json:"note"`
	State string          `json:"state,omitempty"`
	Sizes []ReferenceSize `json:"sizes"`
	// AllSales is what a gallon brought over all sales of the whole country, of the
	// newest year last.
	AllSales []ReferenceYear `json:"all_sales"`
}

// ReferenceSize is a size of the sheet with the prices of the survey's container
// of that size, in US dollars; Retail and Wholesale are nil when it has none.
type ReferenceSize struct {
	ID        string           `json:"id"`
	Label     string           `json:"label"`
	Container string           `json:"container,omitempty"`
	Retail    *ReferenceSpread `json:"retail"`
	Wholesale *ReferenceSpread `json:"wholesale"`
	// InState is the retail price of the state asked for.
	InState      *float64 `json:"in_state"`
	ShownInState string   `json:"shown_in_state,omitempty"`
}

// ReferenceSpread is the middle and the ends of the states' prices.
type ReferenceSpread struct {
	States      int     `json:"states"`
	Low         float64 `json:"low"`
	Median      float64 `json:"median"`
	High        float64 `json:"high"`
	ShownMedian string  `json:"shown_median"`
	ShownRange  string  `json:"shown_range"`
}

// ReferenceYear is a year's price of a gallon.
type ReferenceYear struct {
	Year      int     `json:"year"`
	PerGallon float64 `json:"per_gallon"`
	Shown     string  `json:"shown"`
}
