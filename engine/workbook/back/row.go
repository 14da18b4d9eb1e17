package back

import (
	"strconv"
	"strings"

	"thawbook/engine/workbook"
	"thawbook/engine/workbook/calc"
	"thawbook/engine/workbook/guard"
)

// line is what the row is about: a line, or a table's row as "table.row".
func (r *row) line() string {
	if r.area == workbook.TableArea {
		return r.of + "." + r.id
	}
	return r.id
}

func (r *row) key() rowKey { return rowKey{r.plan, r.of, r.id} }

// cell is the row's cell in a column, a blank one when the column is gone.
func (r *row) cell(k columnKey) guard.Cell {
	if column, ok := r.columns[k]; ok {
		return r.sheet.At(r.at, column)
	}
	return guard.Cell{}
}

func (r *row) text(part workbook.Part) string {
	return strings.TrimSpace(textOf(r.cell(columnKey{part: part})))
}

// holds says whether anything stands in the row but an id.
func (r *row) holds() bool {
	for k := range r.columns {
		if c := r.cell(k); k.part != workbook.ID && k.part != workbook.Working && (c.Kind != guard.Blank || c.Formula != "") {
			return true
		}
	}
	return false
}

// settle notes where the numbers of a row's lines stand.
func (w *Workbook) settle(r *row) {
	for k, column := range r.columns {
		if k.part != workbook.Value && k.part != workbook.Low && k.part != workbook.High {
			continue
		}
		id := r.line()
		if k.column != "" {
			id += "." + k.column
		}
		w.cells[cellKey{lineKey{r.plan, id}, k.part}] = spot{r.sheet, r.at, column}
	}
}

// byName finds by their defined names what the marks did not find, and where a
// row was copied lets the name say which of the two is ours.
func (w *Workbook) byName() {
	for _, e := range w.Index.Entries {
		k := cellKey{lineKey{e.Plan, e.ID}, e.Part}
		r, named := w.names[strings.ToLower(e.Name)]
		if e.Part == workbook.Past {
			if _, found := w.past[k.lineKey]; !found && named {
				w.past[k.lineKey] = w.spots(r)
			}
			continue
		}
		if !named || !r.Single() {
			continue
		}
		at := w.spots(r)
		if len(at) == 0 {
			continue
		}
		if _, found := w.cells[k]; !found {
			// The row of another line is no row of this one, whatever a name that
			// was not moved along says.
			if !w.taken[rowAt{at[0].sheet, at[0].row}] {
				w.cells[k] = at[0]
			}
		} else if e.Part == workbook.Value {
			w.original(e, at[0])
		}
	}
}

// original swaps a row with its copy when the name of one of its cells is in the
// copy.
func (w *Workbook) original(e workbook.Entry, at spot) {
	for i, r := range w.extra {
		if !r.copy || r.sheet != at.sheet || r.at != at.row || r.plan != e.Plan {
			continue
		}
		w.extra[i] = w.rows[r.key()]
		w.extra[i].copy, r.copy = true, false
		w.rows[r.key()] = r
		w.settle(r)
		return
	}
}

const maxSpots = 10_000

// spots are the cells of a range, row by row.
func (w *Workbook) spots(r calc.Range) []spot {
	s := w.book.Sheet(r.Sheet)
	if s == nil || (r.Row2-r.Row+1)*(r.Column2-r.Column+1) > maxSpots {
		return nil
	}
	var out []spot
	for row := r.Row; row <= r.Row2; row++ {
		for column := r.Column; column <= r.Column2; column++ {
			out = append(out, spot{s, row, column})
		}
	}
	return out
}

// textOf is what stands in a cell, as text.
func textOf(c guard.Cell) string {
	switch c.Kind {
	case guard.Number:
		return strconv.FormatFloat(c.Number, 'g', -1, 64)
	case guard.Truth:
		if c.Number != 0 {
			return "yes"
		}
		return "no"
	}
	return c.Text
}
