package back

import (
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

// What says what kind of change a [Change] is.
type What string

// The kinds of change.
const (
	Numbers  What = "numbers" // another number, guess, records or choice
	Formulas What = "formula" // another working, or a working where a number stood
	Words    What = "words"   // another label, note or unit
	NewLine  What = "line"    // a line the partner added
	NewRow   What = "row"     // a table's row the partner added
	Remarks  What = "remark"  // words to be kept in the line's note
)

// Where is where something stood in the workbook that came back.
type Where struct {
	Sheet string `json:"sheet"`
	Row   int    `json:"row"`
}

// Change is one thing that came back differently. It is taken or refused whole.
type Change struct {
	// Key names the change when it is accepted. It is the line's id, with a word
	// behind when one line has several changes ("taps note").
	Key   string `json:"key"`
	About string `json:"about"`
	Label string `json:"label"`
	What  What   `json:"what"`
	Where Where  `json:"where"`
	// Sent is what went out, Here what the sheet says now and Came what the
	// partner says, all in words with units. Here is "" when it is as it was
	// sent.
	Sent string `json:"sent"`
	Here string `json:"here,omitempty"`
	Came string `json:"came"`
	// By says how far a number moved, "" when that says nothing.
	By string `json:"by,omitempty"`
	// Conflict says that the line was changed here too since it was sent, to
	// something else.
	Conflict bool `json:"conflict,omitempty"`
	// Note says what there is to know before taking it. Problem says why it
	// cannot be taken; it then has no edits.
	Note    string `json:"note,omitempty"`
	Problem string `json:"problem,omitempty"`
	// Effects are what it would do to the season, for those who reckon it.
	Effects []Effect     `json:"effects"`
	Edits   []sheet.Edit `json:"edits"`
}

// Effect is what a change does to one outcome: its middle season before and
// after.
type Effect struct {
	About  string `json:"about"`
	Label  string `json:"label"`
	Before string `json:"before"`
	After  string `json:"after"`
	// By is how far the middle moved; Better says whether that is to the good,
	// "" when the sheet does not say which way is.
	By     string `json:"by"`
	Better string `json:"better,omitempty"` // yes or no
}

// Lost is a cell of ours that did not come back. It changes nothing.
type Lost struct {
	About string `json:"about"`
	Label string `json:"label"`
	// What is "the row is gone", "the number is gone" and the like.
	What string `json:"what"`
}

// Report is all that came back for one plan.
type Report struct {
	// Changes are in the order of the sheet, what was added at the end.
	Changes []Change `json:"changes"`
	// Agreed lists the lines that were changed the same way here.
	Agreed []string `json:"agreed"`
	Lost   []Lost   `json:"lost"`
	// Told is what could not be understood, and where.
	Told diag.List `json:"told"`
}
