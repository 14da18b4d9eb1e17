package engine

// KnowingOptions say what a choice is made by.
type KnowingOptions struct {
	Options
	// Better is "more" or "less": which is better of the outcome. Empty takes
	// what the line's headline says.
	Better string
}

// Worth says what it is worth to know guesses before choosing between scenarios.
// All money is in Unit and for one season.
type Worth struct {
	Seasons int    `json:"seasons"`
	Seed    uint64 `json:"seed"`
	// Outcome is the line the choice is made by.
	Outcome Named  `json:"outcome"`
	Unit    string `json:"unit"`
	Better  string `json:"better"`
	// Scenarios are in the order asked for; Best is the place, from 0, of the one
	// to choose knowing no more than the guesses.
	Scenarios []WorthScenario `json:"scenarios"`
	Best      int             `json:"best"`
	// All is the worth of knowing every guess beforehand; none is worth more.
	All Worthy `json:"all"`
	// Guesses are those the outcome hangs on in any of the scenarios, the one most
	// worth knowing first.
	Guesses []WorthKnowing `json:"guesses"`
	// Missing counts the seasons left out because a scenario came to no number.
	Missing int `json:"missing"`
	// Paragraph says the same in plain words.
	Paragraph string `json:"paragraph"`
}

// WorthScenario is one of the scenarios to choose from.
type WorthScenario struct {
	Title string `json:"title"`
	// Name is what the sheet was opened by, Short the title without what all the
	// titles begin with.
	Name  string `json:"name"`
	Short string `json:"short"`
	// Mean is the mean of the outcome, Ahead the share of the seasons in which no
	// other scenario does better.
	Mean  *float64 `json:"mean"`
	Ahead *float64 `json:"ahead"`
	Shown struct {
		Mean  string `json:"mean"`
		Ahead string `json:"ahead"`
	} `json:"shown"`
}

// Worthy is a worth for one season, never below 0.
type Worthy struct {
	Value float64 `json:"value"`
	// Error is the standard error from the seasons being a sample.
	Error float64 `json:"error"`
	// AboutNothing says that the worth cannot be told from nothing.
	AboutNothing bool `json:"about_nothing"`
	// Changes is the share of the seasons in which knowing would change the choice.
	Changes float64 `json:"changes"`
	Shown   struct {
		Value string `json:"value"`
		// Error is two errors: the worth lies within them in about 19 of 20 samples.
		Error   string `json:"error,omitempty"`
		Changes string `json:"changes"`
	} `json:"shown"`
}

// WorthKnowing is one guess and what it is worth to know.
type WorthKnowing struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Unit  string `json:"unit"`
	// Note and Source are the line's own: what one could do about it.
	Note   string `json:"note,omitempty"`
	Source string `json:"source,omitempty"`
	Worth  Worthy `json:"worth"`
	// Turns are the values at which the choice turns, in Unit and rising: Below and
	// Above are the scenarios to choose on either side. Empty when it does not
	// turn, or the scenarios do not guess the line alike.
	Turns []Turn `json:"turns"`
	// Sentence says the turns in words: "Under about 38 lb/pallet choose propane,
	// above it old pallets."
	Sentence string `json:"sentence,omitempty"`
}

// Turn is a value of a guess at which the choice turns.
type Turn struct {
	At    float64 `json:"at"`
	Shown string  `json:"shown"`
	Below int     `json:"below"`
	Above int     `json:"above"`
}
