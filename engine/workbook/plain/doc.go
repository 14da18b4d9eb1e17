// Package plain reads a workbook that was never ours: a household's own list,
// with a name, a number and a unit to a row and perhaps a low and a high, or its
// boil log, with what was boiled on each day. It knows columns by their headings,
// shows what it took each for, and tells what it left out.
package plain

import (
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

// Found is what was understood of a workbook.
type Found struct {
	Lists []List    `json:"lists"`
	Logs  []Log     `json:"logs"`
	Told  diag.List `json:"told"`
}

// Empty says whether nothing was understood.
func (f *Found) Empty() bool { return len(f.Lists) == 0 && len(f.Logs) == 0 }

// Heading is a column and what it was taken for.
type Heading struct {
	// Text is what stands at the head of the column.
	Text string `json:"text"`
	// Means is name, number, unit, low, high or note in a list; day, sap, sugar,
	// hours, fuel or syrup in a log; "" for a column that was left out.
	Means string `json:"means"`
	Unit  string `json:"unit,omitempty"`
}

// List is a list of things with numbers.
type List struct {
	Sheet    string    `json:"sheet"`
	Row      int       `json:"row"` // of the headings
	Headings []Heading `json:"headings"`
	Lines    []Line    `json:"lines"`
}

// Line is one of a list's rows, as a line of a sheet.
type Line struct {
	Row     int    `json:"row"`
	ID      string `json:"id"`
	Label   string `json:"label"`
	Unit    string `json:"unit"`
	Note    string `json:"note,omitempty"`
	Chapter string `json:"chapter"`
	// Is or Guess is set, never both.
	Is    *float64          `json:"is,omitempty"`
	Guess *sheet.GuessValue `json:"guess,omitempty"`
}

// Log is a boil log, as a table of a sheet.
type Log struct {
	Sheet    string    `json:"sheet"`
	Row      int       `json:"row"`
	Headings []Heading `json:"headings"`
	ID       string    `json:"id"`
	Label    string    `json:"label"`
	Columns  []Column  `json:"columns"`
	Days     []Day     `json:"days"`
}

// Column is a column of numbers in a log.
type Column struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Unit  string `json:"unit"`
}

// Day is a row of a log; Cells stand in the order of the columns, null where
// nothing was written.
type Day struct {
	Row   int        `json:"row"`
	ID    string     `json:"id"`
	Label string     `json:"label"`
	Cells []*float64 `json:"cells"`
}

// Edits are what makes the lists' lines part of a sheet, one for each line.
func (f *Found) Edits() []sheet.Edit {
	var out []sheet.Edit
	for _, list := range f.Lists {
		for _, l := range list.Lines {
			set := sheet.Set{Is: l.Is, Guess: l.Guess, Label: &l.Label, Unit: &l.Unit}
			if l.Note != "" {
				set.Note = &l.Note
			}
			out = append(out, sheet.Edit{About: l.ID, Set: set, Add: &sheet.Add{Chapter: l.Chapter}})
		}
	}
	return out
}
