package engine

// FlipQuestion asks from which value of a shared number on the other of two
// scenarios comes out ahead.
type FlipQuestion struct {
	// About is the id of a number, guess or line of records that both scenarios
	// have. It is held at each value tried, in both.
	About string `json:"about"`
	// Outcome is the id of the line they are judged by.
	Outcome string `json:"outcome"`
	// Low and High are where to look, in the line's own unit in the first
	// scenario. nil stands for its floor and ceiling when it has both, otherwise
	// for nothing and three times what it is likely to be.
	Low  *float64 `json:"low"`
	High *float64 `json:"high"`
}

// Flip is how the difference between two scenarios hangs on one number. Values
// of that number are in Unit, differences in OutcomeUnit; a difference is always
// Second's less First's.
type Flip struct {
	About        string `json:"about"`
	Label        string `json:"label"`
	Unit         string `json:"unit"`
	Outcome      string `json:"outcome"`
	OutcomeLabel string `json:"outcome_label"`
	OutcomeUnit  string `json:"outcome_unit"`
	// Better is "more", "less" or empty, as the outcome says.
	Better string `json:"better,omitempty"`
	// First and Second are the scenarios' short titles.
	First   string  `json:"first"`
	Second  string  `json:"second"`
	Seasons int     `json:"seasons"`
	Seed    uint64  `json:"seed"`
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
	// Now is what the number is likely to be in the first scenario.
	Now *float64 `json:"now"`
	// Flips are the values at which the middle difference changes sign, rising;
	// there may be none.
	Flips []FlipAt `json:"flips"`
	// Sides are the stretches between the flips, with who is ahead in the middle
	// season there.
	Sides []FlipStretch `json:"sides"`
	// Balance are the stretches in which the 10th percentile of the difference is
	// below nothing and the 90th above it: neither comes out ahead in 9 seasons
	// of 10. Their ends are where one of the two changes sign.
	Balance []FlipStretch `json:"balance"`
	// Curve has the difference at every value tried at equal steps.
	Curve []FlipPoint `json:"curve"`
	// Sentence says it in plain words.
	Sentence string    `json:"sentence"`
	Shown    ShownFlip `json:"shown"`
}

// FlipAt is one value at which the answer turns.
type FlipAt struct {
	At    float64 `json:"at"`
	Shown string  `json:"shown"`
}

// FlipStretch is a stretch of values. Ahead is "first", "second", "even", or
// "none" where no season comes to a number; without a Better, who comes to more
// counts as ahead. It is empty for a stretch in the balance.
type FlipStretch struct {
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Ahead string  `json:"ahead,omitempty"`
	Shown string  `json:"shown"`
}

// FlipPoint is the difference at one value. A number is nil where no season
// comes to one.
type FlipPoint struct {
	Value float64  `json:"value"`
	P10   *float64 `json:"p10"`
	P50   *float64 `json:"p50"`
	P90   *float64 `json:"p90"`
	// More and Less are the shares of the seasons in which Second comes to more
	// and to less; Ahead is the share in which it comes out ahead (in which it
	// comes to more, when the outcome does not say what is better).
	More    *float64       `json:"more"`
	Less    *float64       `json:"less"`
	Ahead   *float64       `json:"ahead"`
	Missing int            `json:"missing"`
	Shown   ShownFlipPoint `json:"shown"`
}

// ShownFlipPoint is a FlipPoint as it is read.
type ShownFlipPoint struct {
	Value  string `json:"value"`
	Middle string `json:"middle"`
	Ahead  string `json:"ahead"`
}

// ShownFlip holds a Flip's limits as they are read.
type ShownFlip struct {
	Low  string `json:"low"`
	High string `json:"high"`
	Now  string `json:"now"`
}
