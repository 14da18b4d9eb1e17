package back

import (
	"strings"

	"thawbook/engine/diag"
	"thawbook/engine/workbook"
	"thawbook/engine/workbook/calc"
	"thawbook/engine/workbook/guard"
)

// Workbook is a copy of ours, with its cells found.
type Workbook struct {
	// Index is what was sent. It is empty when Lost.
	Index workbook.Index
	// Lost says that the hidden list is gone or damaged, so that only the marks
	// tell what a cell is, and nothing tells what stood in it.
	Lost bool
	// Told is what was noticed on the way.
	Told diag.List

	book  *guard.Book
	names map[string]calc.Range // by small letters
	cells map[cellKey]spot
	past  map[lineKey][]spot
	rows  map[rowKey]*row
	extra []*row // rows that were not sent
	// taken are the rows that are known to be a line's, or none.
	taken map[rowAt]bool
	looks int              // how many cells may still be looked at
	lines map[lineKey]bool // every line, and every table's row, that was sent
}

// spot is a cell of the workbook.
type spot struct {
	sheet       *guard.Sheet
	row, column int
}

func (s spot) cell() guard.Cell { return s.sheet.At(s.row, s.column) }

type lineKey struct {
	plan int
	id   string
}

type cellKey struct {
	lineKey
	part workbook.Part
}

// block is what stands below a row of marks.
type block struct {
	area    workbook.Area
	plan    int
	of      string
	columns map[columnKey]int
	// last is the id of the row read last.
	last string
}

type columnKey struct {
	part   workbook.Part
	column string
}

// row is a row of a block.
type row struct {
	*block
	id    string
	sheet *guard.Sheet
	at    int
	// after is the id of the last line above it in its block.
	after string
	copy  bool
}

type rowKey struct {
	plan   int
	of, id string
}

const (
	maxRows  = 100_000 // rows found
	maxExtra = 1000    // rows added by the partner
	maxLooks = 1 << 20 // cells looked at by row and mark, many of them empty
	noLine   = "thawbook"
	// indexTitle is the first cell of the hidden list, as package workbook has it.
	indexTitle = "thawbook index"
)

// Find looks for our cells in a workbook. It is nil when there is no trace of
// them: then it was never ours.
func Find(b *guard.Book) *Workbook {
	w := &Workbook{book: b, names: map[string]calc.Range{}, cells: map[cellKey]spot{}, past: map[lineKey][]spot{},
		rows: map[rowKey]*row{}, looks: maxLooks, lines: map[lineKey]bool{}, taken: map[rowAt]bool{}}
	for _, n := range b.Names {
		if r, ok := calc.ReadRange(n.Text); ok {
			w.names[strings.ToLower(n.Name)] = r
		}
	}
	w.readIndex()
	marked := false
	for _, s := range b.Sheets {
		marked = w.scan(s) || marked
	}
	switch {
	case w.Lost && !marked:
		return nil
	case w.Lost:
		w.tell(diag.MarksLost, "what was sent is not known, so all that differs from the sheet here is shown", "the workbook's hidden list is gone")
	case !marked:
		w.tell(diag.MarksLost, "lines were looked for by their names alone", "the hidden rows of marks are gone")
	}
	w.byName()
	return w
}

func (w *Workbook) tell(code diag.Code, hint, message string) {
	w.Told = append(w.Told, diag.Diagnostic{Code: code, Severity: diag.Warning, Message: message, Hint: hint})
}

// readIndex looks for the hidden list, first where its name says.
func (w *Workbook) readIndex() {
	w.Lost = true
	for _, s := range w.book.Sheets {
		for _, c := range s.Cells[:min(len(s.Cells), 200)] {
			if c.Kind == guard.Text && strings.TrimSpace(c.Text) == indexTitle {
				w.takeIndex(s, c)
				if !w.Lost {
					return
				}
			}
		}
	}
}

// takeIndex reads the list whose first cell is given.
func (w *Workbook) takeIndex(s *guard.Sheet, first guard.Cell) {
	var rows [][]string
	for _, c := range s.Cells {
		if c.Row < first.Row || c.Column < first.Column {
			continue
		}
		for len(rows) <= c.Row-first.Row {
			if len(rows) > guard.MaxCells {
				return
			}
			rows = append(rows, nil)
		}
		r := &rows[c.Row-first.Row]
		for len(*r) < c.Column-first.Column {
			*r = append(*r, "")
		}
		*r = append(*r, textOf(c))
	}
	index, err := workbook.ReadIndex(rows)
	if err != nil {
		w.tell(diag.MarksLost, "", err.Error())
		return
	}
	w.Index, w.Lost = index, false
	for _, e := range index.Entries {
		id := e.ID
		if cut := strings.LastIndexByte(id, '.'); cut >= 0 {
			id = id[:cut] // the table's row
		}
		w.lines[lineKey{e.Plan, id}] = true
	}
}

// scan finds the rows below a sheet's marks; false when it has no marks.
func (w *Workbook) scan(s *guard.Sheet) bool {
	now := map[int]*block{} // by column
	marked := false
	for from := 0; from < len(s.Cells); {
		to := from
		for to < len(s.Cells) && s.Cells[to].Row == s.Cells[from].Row {
			to++
		}
		cells := s.Cells[from:to]
		from = to
		if marks := marksIn(cells); len(marks) > 0 {
			w.begin(now, marks)
			marked = true
			continue
		}
		touched := map[*block]bool{}
		for _, c := range cells {
			if b := now[c.Column]; b != nil && !touched[b] {
				touched[b] = true
				w.look(b, s, c.Row, to < len(s.Cells) && s.Cells[to].Row == c.Row+1 && len(marksIn(s.Cells[to:to+1])) > 0)
			}
		}
	}
	return marked
}

func marksIn(cells []guard.Cell) map[int]workbook.Mark {
	var out map[int]workbook.Mark
	for _, c := range cells {
		if c.Kind != guard.Text || !strings.Contains(c.Text, noLine) {
			continue
		}
		if m, ok := workbook.ParseMark(c.Text); ok {
			if out == nil {
				out = map[int]workbook.Mark{}
			}
			out[c.Column] = m
		}
	}
	return out
}

// begin puts the blocks of a row of marks in the columns they speak of.
func (w *Workbook) begin(now map[int]*block, marks map[int]workbook.Mark) {
	type key struct {
		area workbook.Area
		plan int
		of   string
	}
	blocks := map[key]*block{}
	for column, m := range marks {
		k := key{m.Area, m.Plan, m.Of}
		if blocks[k] == nil {
			blocks[k] = &block{area: m.Area, plan: m.Plan, of: m.Of, columns: map[columnKey]int{}}
		}
		// Where a column was copied, the one further left is ours.
		part := columnKey{m.Part, m.Column}
		if at, taken := blocks[k].columns[part]; !taken || column < at {
			blocks[k].columns[part] = column
		}
		now[column] = blocks[k]
	}
}

// look takes a row of a block: a line's, a table row's, a record or a row that
// was not sent. heading says that a row of marks follows, so that it is a title
// of what comes next.
func (w *Workbook) look(b *block, s *guard.Sheet, at int, heading bool) {
	if w.looks -= len(b.columns); w.looks < 0 {
		return
	}
	r := &row{block: b, sheet: s, at: at}
	switch b.area {
	case workbook.RecordsArea:
		k := lineKey{b.plan, b.of}
		w.past[k] = append(w.past[k], spot{s, at, b.columns[columnKey{part: workbook.Value}]})
		return
	case workbook.NamesArea:
		return
	case workbook.PlanArea, workbook.TableArea:
		r.id = strings.TrimSpace(textOf(r.cell(columnKey{part: workbook.ID})))
		if r.id == noLine || heading {
			w.taken[rowAt{s, at}] = true
			return
		}
	}
	r.after = b.last
	known := w.rows[r.key()]
	switch {
	case r.id == "" || known != nil || !w.Lost && !w.lines[lineKey{r.plan, r.line()}]:
		r.copy = known != nil
		if len(w.extra) < maxExtra && r.holds() {
			w.extra = append(w.extra, r)
		}
	case len(w.rows) < maxRows:
		w.rows[r.key()] = r
		w.taken[rowAt{s, at}] = true
		w.settle(r)
		b.last = r.id
	}
}
