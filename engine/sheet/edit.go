package sheet

// Edit is one change to a sheet's text.
type Edit struct {
	// About is the id of a line or cell, of a table's row ("fuels.propane") or
	// column ("fuels.price"), or "" for the top of the file.
	About string `json:"about"`
	Set   Set    `json:"set"`
}

// Set is what to write; nil leaves a key as it is. At most one of Is, Guess,
// Records, Choose and Formula may be set: it takes the place of whatever the
// line came to before. An empty Note or Source takes that key out.
type Set struct {
	Is      *float64    `json:"is,omitempty"`
	Guess   *GuessValue `json:"guess,omitempty"`
	Records []float64   `json:"records,omitempty"`
	Choose  *string     `json:"choose,omitempty"`
	Formula *string     `json:"formula,omitempty"`

	Unit    *string  `json:"unit,omitempty"`
	Label   *string  `json:"label,omitempty"`
	Note    *string  `json:"note,omitempty"`
	Source  *string  `json:"source,omitempty"`
	Floor   *float64 `json:"floor,omitempty"`
	Ceiling *float64 `json:"ceiling,omitempty"`

	Title   *string `json:"title,omitempty"`
	Seasons *int    `json:"seasons,omitempty"`
	Seed    *uint64 `json:"seed,omitempty"`
}

// GuessValue is a guess's three numbers, in the line's unit.
type GuessValue struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}
