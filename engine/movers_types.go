package engine

// Movers say which guesses move one outcome, and how much.
type Movers struct {
	Title string `json:"title"`
	// Seasons is how many were drawn, at most 100,000.
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Outcome is what the same seasons say of the line asked about.
	Outcome Answer `json:"outcome"`
	// Movers stand in order, the largest Total first. Empty when the outcome is
	// the same in every season.
	Movers []Mover `json:"movers"`
	// Alone is the part of the spread that the guesses make each by itself; the
	// rest arises only where guesses act together.
	Alone Share `json:"alone"`
	// Apart are the guesses that the outcome does not hang on, in sheet order.
	Apart []Named `json:"apart"`
	// Paragraph says the same in plain words.
	Paragraph string `json:"paragraph"`
}

// Mover is one guess, or several that move together taken as one.
type Mover struct {
	Guesses []MovingGuess `json:"guesses"`
	// Label is the guess's label, or the labels of all.
	Label string `json:"label"`
	// First is the part of the outcome's spread that the guess makes by itself,
	// Total the part that it has any hand in, Together what it does only together
	// with others: Total less First.
	First    Share `json:"first"`
	Total    Share `json:"total"`
	Together Share `json:"together"`
	// Interacts says that Together is more than noise.
	Interacts bool `json:"interacts"`
	// Missing counts the seasons left out because the outcome came to no number.
	Missing int `json:"missing"`
}

// MovingGuess is one guess of a Mover, with the plain swing of the outcome as
// that guess alone goes from its 1-in-10 low to its 1-in-10 high and every other
// stays at its likely number.
type MovingGuess struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Unit  string `json:"unit"`
	// Low and High are the guess's two numbers, in Unit.
	Low  float64 `json:"low"`
	High float64 `json:"high"`
	// AtLow and AtHigh are what the outcome comes to at them, in the outcome's
	// unit; nil when it comes to no number.
	AtLow  *float64 `json:"at_low"`
	AtHigh *float64 `json:"at_high"`
	// Direction is "up" when AtHigh is above AtLow, "down" when it is below, and
	// "" when the two are equal or either is missing.
	Direction string      `json:"direction"`
	Shown     ShownMoving `json:"shown"`
}

// ShownMoving holds the numbers of a MovingGuess as they are read.
type ShownMoving struct {
	Low    string `json:"low"`
	High   string `json:"high"`
	AtLow  string `json:"at_low"`
	AtHigh string `json:"at_high"`
}

// Share is a part of an outcome's spread, counted as variance: 0.4 is four
// tenths of it. Value and Error are nil when the outcome does not vary.
type Share struct {
	Value *float64 `json:"value"`
	// Error is the standard error from the seasons being a sample.
	Error *float64 `json:"error"`
	// AboutZero says that the share cannot be told from nothing.
	AboutZero bool `json:"about_zero"`
	// Shown is the share as it is read, ShownError two errors: the share lies
	// within them in about 19 of 20 such samples.
	Shown      string `json:"shown"`
	ShownError string `json:"shown_error,omitempty"`
}

// Named is a line by id and label.
type Named struct {
	ID    string `json:"id"`
	Label string `json:"label"`
}
