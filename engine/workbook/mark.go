package workbook

import (
	"strconv"
	"strings"
)

// Area says what kind of block a mark stands above.
type Area string

// The areas, as they read in a mark.
const (
	PlanArea    Area = "plan"    // the lines of a sheet's chapters
	TableArea   Area = "table"   // the rows of one table
	RecordsArea Area = "records" // the past values of one line
	NamesArea   Area = "names"   // the names of one choice
	OwnArea     Area = "own"     // rows for lines of the partner's own
)

// Part says which of a line's cells is meant.
type Part string

// The parts, as they read in a mark and in the index.
const (
	Label   Part = "label"
	Value   Part = "value" // what the line is, its likely guess, its choice, what its formula comes to
	Low     Part = "low"
	High    Part = "high"
	UnitOf  Part = "unit"
	Note    Part = "note"
	Remark  Part = "remark"
	ID      Part = "id"
	Working Part = "working" // the formula in our words
	Past    Part = "past"    // records, in the index only: the range of a line's past values
)

// Mark is the text in a hidden row that says what stands below it in its column.
type Mark struct {
	Area Area
	// Plan counts the plans of the workbook from 1.
	Plan int
	// Of is the table, or the line whose records or names these are; "" for a
	// plan's lines and for the partner's own.
	Of   string
	Part Part
	// Column is the table's column for the numbers of a table, else "".
	Column string
}

const markWord = "thawbook"

// String is the mark as it stands in its cell.
func (m Mark) String() string {
	words := []string{markWord, string(m.Area), strconv.Itoa(m.Plan)}
	if m.Of != "" {
		words = append(words, m.Of)
	}
	words = append(words, string(m.Part))
	if m.Column != "" {
		words = append(words, m.Column)
	}
	return strings.Join(words, " ")
}

// ParseMark reads what String writes; false for any other text. Spaces before,
// behind and between the words do not matter, as other programs trim them.
func ParseMark(text string) (Mark, bool) {
	if len(text) > 400 {
		return Mark{}, false
	}
	words := strings.Fields(text)
	if len(words) < 4 || words[0] != markWord {
		return Mark{}, false
	}
	m := Mark{Area: Area(words[1])}
	plan, err := strconv.Atoi(words[2])
	if err != nil || plan < 1 || plan > MaxPlans {
		return Mark{}, false
	}
	m.Plan, words = plan, words[3:]
	switch m.Area {
	case PlanArea, OwnArea:
	case TableArea, RecordsArea, NamesArea:
		m.Of, words = words[0], words[1:]
	default:
		return Mark{}, false
	}
	if len(words) == 0 || !Part(words[0]).known() {
		return Mark{}, false
	}
	m.Part, words = Part(words[0]), words[1:]
	if m.Area == TableArea && len(words) == 1 {
		m.Column, words = words[0], nil
	}
	return m, len(words) == 0
}

func (p Part) known() bool {
	switch p {
	case Label, Value, Low, High, UnitOf, Note, Remark, ID, Working:
		return true
	}
	return false
}
