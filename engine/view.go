package engine

import (
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// View is a sheet as the page shows it: what its author wrote, with everything
// a scenario took over and changed in place.
type View struct {
	Name        string        `json:"name"`
	Title       string        `json:"title"`
	About       string        `json:"about,omitempty"`
	Money       string        `json:"money"`
	From        string        `json:"from,omitempty"`
	Seasons     int           `json:"seasons"`
	Seed        uint64        `json:"seed"`
	Chapters    []ChapterView `json:"chapters"`
	Diagnostics diag.List     `json:"diagnostics"`
	Source      string        `json:"source"`
}

// ChapterView is one chapter.
type ChapterView struct {
	Title  string      `json:"title"`
	Note   string      `json:"note,omitempty"`
	Lines  []LineView  `json:"lines"`
	Tables []TableView `json:"tables"`
}

// TableView is one table.
type TableView struct {
	ID      string       `json:"id"`
	Label   string       `json:"label"`
	Note    string       `json:"note,omitempty"`
	Columns []ColumnView `json:"columns"`
	Rows    []RowView    `json:"rows"`
}

// ColumnView is one column of a table.
type ColumnView struct {
	ID      string `json:"id"`
	Label   string `json:"label"`
	Unit    string `json:"unit"`
	Formula string `json:"formula,omitempty"`
	Note    string `json:"note,omitempty"`
}

// RowView is one row of a table; Cells stand in the order of the columns.
type RowView struct {
	ID      string     `json:"id"`
	Label   string     `json:"label"`
	Note    string     `json:"note,omitempty"`
	Source  string     `json:"source,omitempty"`
	Caution string     `json:"caution,omitempty"`
	Cells   []LineView `json:"cells"`
}

// LineView is one line or cell. Of the kinds' own keys only those of Kind are set.
type LineView struct {
	ID      string     `json:"id"`
	Label   string     `json:"label"`
	Kind    string     `json:"kind"`
	Unit    string     `json:"unit"`
	Is      *float64   `json:"is,omitempty"`
	Guess   *GuessView `json:"guess,omitempty"`
	Shape   string     `json:"shape,omitempty"`
	Floor   *float64   `json:"floor,omitempty"`
	Ceiling *float64   `json:"ceiling,omitempty"`
	Records []float64  `json:"records,omitempty"`
	Choose  string     `json:"choose,omitempty"`
	Among   []NameView `json:"among,omitempty"`
	Formula string     `json:"formula,omitempty"`
	Note    string     `json:"note,omitempty"`
	Source  string     `json:"source,omitempty"`
	Caution string     `json:"caution,omitempty"`
	Better  string     `json:"better,omitempty"`
	Goal    *GoalView  `json:"goal,omitempty"`
	// Headline says the line is among the outcomes shown first.
	Headline bool `json:"headline,omitempty"`
	// Changed says the scenario itself set or added the line.
	Changed bool `json:"changed,omitempty"`
	// Broken says the line cannot be reckoned; a diagnostic tells why.
	Broken bool `json:"broken,omitempty"`
}

// GuessView is a guess's three numbers in the line's unit.
type GuessView struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// GoalView is a headline's goal in the line's unit.
type GoalView struct {
	AtLeast *float64 `json:"at_least,omitempty"`
	AtMost  *float64 `json:"at_most,omitempty"`
}

// NameView is one name of a choice.
type NameView struct {
	ID    string `json:"id"`
	Label string `json:"label"`
}

// View is the sheet as it stands.
func (b *Book) View() View {
	s := b.sheet
	v := View{Name: b.name, Title: s.Title, About: s.About, Money: s.Money, From: s.From, Seasons: s.Seasons, Seed: s.Seed,
		Diagnostics: append(diag.List{}, b.list...), Source: string(b.doc.Source())}
	at := 0
	next := func() LineView {
		at++
		return lineView(b.plan.Slots[at-1])
	}
	for _, chapter := range s.Chapters {
		c := ChapterView{Title: chapter.Title, Note: chapter.Note, Lines: []LineView{}, Tables: []TableView{}}
		for range chapter.Lines {
			c.Lines = append(c.Lines, next())
		}
		for _, t := range chapter.Tables {
			c.Tables = append(c.Tables, tableView(t, next))
		}
		v.Chapters = append(v.Chapters, c)
	}
	return v
}

func tableView(t *sheet.Table, next func() LineView) TableView {
	v := TableView{ID: t.ID, Label: t.Label, Note: t.Note, Columns: []ColumnView{}, Rows: []RowView{}}
	for _, c := range t.Columns {
		v.Columns = append(v.Columns, ColumnView{ID: c.ID, Label: c.Label, Unit: c.Unit, Formula: c.Formula, Note: c.Note})
	}
	for _, r := range t.Rows {
		row := RowView{ID: r.ID, Label: r.Label, Note: r.Note, Source: r.Source, Caution: cautionText(r.Caution)}
		for range r.Cells {
			row.Cells = append(row.Cells, next())
		}
		v.Rows = append(v.Rows, row)
	}
	return v
}

func lineView(slot *formula.Slot) LineView {
	l := slot.Line
	v := LineView{ID: l.ID, Label: l.Label, Kind: string(l.Kind), Unit: l.Unit, Shape: l.Shape, Floor: l.Floor, Ceiling: l.Ceiling,
		Note: l.Note, Source: l.Source, Caution: cautionText(l.Caution), Changed: l.Changed, Broken: slot.Broken}
	if h := l.Headline; h != nil {
		v.Headline, v.Better = true, h.Better
		if h.Goal != nil {
			v.Goal = &GoalView{AtLeast: h.Goal.AtLeast, AtMost: h.Goal.AtMost}
		}
	}
	switch l.Kind {
	case sheet.Is:
		v.Is = &l.Is
	case sheet.Guess:
		v.Guess = &GuessView{l.Low, l.Likely, l.High}
	case sheet.Records:
		v.Records = l.Records
	case sheet.Choose:
		v.Choose = l.Choose
		for _, n := range l.Among {
			v.Among = append(v.Among, NameView{n.ID, n.Label})
		}
	case sheet.Formula:
		v.Formula = l.Formula
	}
	return v
}
