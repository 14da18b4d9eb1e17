package engine

// FindQuestion asks at which value of a line an outcome reaches a target. All
// numbers are in the sheet's own units, whatever Options.System the answer is
// shown in.
type FindQuestion struct {
	Options
	// Line is the id of the line or cell whose value is looked for. A number
	// becomes the value tried. A guess's likely does, and its low and high go
	// along so that the spread stays in proportion (see spread); records move as
	// a guess does, their middle taken for the likely. A formula is set aside and
	// the line taken for a certain number.
	Line string
	// Certain takes a guess or records for a certain number too.
	Certain bool
	// Outcome is the id of the line or cell that should reach the target.
	Outcome string
	// At most one of Is, AtLeast and AtMost is set. With none of them the target
	// is the outcome's own goal.
	Is, AtLeast, AtMost *float64
	// In says what of the outcome should reach it: "middle" (and "") the middle
	// season, "mean" the mean of the seasons, "low" and "high" the value that 1
	// season in 10 stays below or goes above, "bad" whichever of these two is the
	// worse by the outcome's better, and "9/10" every season of so many.
	In string
	// Low and High are the limits to look between; both are nil for the usual
	// ones: the whole way from floor to ceiling when the line has both, otherwise
	// half to double the value now (for a temperature 50 °F to either side), kept
	// within the bound there is.
	Low, High *float64
}

// Found answers a FindQuestion. Values of the line are in Line.Unit, those of the
// outcome in Outcome.Unit.
type Found struct {
	Title   string    `json:"title"`
	Seasons int       `json:"seasons"`
	Seed    uint64    `json:"seed"`
	Line    FoundLine `json:"line"`
	Outcome FoundLine `json:"outcome"`
	// In is what of the outcome should reach the target, as asked.
	In string `json:"in"`
	// Asked is "is", "at_least" or "at_most" and Target how much.
	Asked  string  `json:"asked"`
	Target float64 `json:"target"`
	// Wish is the target in words: "at least 30 gal in 9 seasons of 10".
	Wish string `json:"wish"`
	// Whole says that only whole numbers were tried; Moved how the line was:
	// "number", "guess" or "formula".
	Whole bool   `json:"whole"`
	Moved string `json:"moved"`
	// Now is the line as it stands; Lowest and Highest are the limits.
	Now     FoundAt `json:"now"`
	Lowest  FoundAt `json:"lowest"`
	Highest FoundAt `json:"highest"`
	// Answers rise. There may be none, and then Nearest is the value tried whose
	// outcome comes nearest the target, nil when none comes to a number.
	Answers []FoundAnswer `json:"answers"`
	Nearest *FoundAt      `json:"nearest"`
	// Curve has every value tried on the way and what the outcome came to.
	Curve []FoundPoint `json:"curve"`
	// NoNumber counts the values of Curve at which it came to none.
	NoNumber int `json:"no_number"`
	// Paragraph says it all in plain words.
	Paragraph string `json:"paragraph"`
}

// FoundLine names one of the two lines.
type FoundLine struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Unit  string `json:"unit"`
}

// FoundAnswer is one answer: a value, or values from one to another.
type FoundAnswer struct {
	// Kind is "at" for one value that meets the target; "along" when every value
	// from From to To does; "over" when the outcome steps over the target between
	// From and To, which are as close as values can be told apart.
	Kind string  `json:"kind"`
	From FoundAt `json:"from"`
	To   FoundAt `json:"to"`
	// Ends say that the answer goes on as far as was looked.
	EndsLow  bool `json:"ends_low"`
	EndsHigh bool `json:"ends_high"`
	// Sentence is the answer alone in words.
	Sentence string `json:"sentence"`
}

// FoundAt is one value of the line and what the outcome comes to there. A number
// is nil when there is none.
type FoundAt struct {
	Value *float64 `json:"value"`
	// Low and High are a moved guess's; nil when the line is a certain number.
	Low  *float64 `json:"low"`
	High *float64 `json:"high"`
	// Reached is what should reach the target: the middle, the mean or another,
	// as asked.
	Reached *float64 `json:"reached"`
	Mean    *float64 `json:"mean"`
	P10     *float64 `json:"p10"`
	P50     *float64 `json:"p50"`
	P90     *float64 `json:"p90"`
	// Met is the share of the seasons that meet an at_least or at_most.
	Met   *float64     `json:"met"`
	Shown ShownFoundAt `json:"shown"`
}

// ShownFoundAt is a FoundAt as it is read. Range is that of the outcome, Guess
// that of the line, empty for a certain number.
type ShownFoundAt struct {
	Value   string `json:"value"`
	Guess   string `json:"guess,omitempty"`
	Reached string `json:"reached"`
	Middle  string `json:"middle"`
	Range   string `json:"range"`
	Mean    string `json:"mean"`
	Met     string `json:"met,omitempty"`
}

// FoundPoint is one point of the way.
type FoundPoint struct {
	Value   float64  `json:"value"`
	Reached *float64 `json:"reached"`
}
