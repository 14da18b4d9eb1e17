package sheet

import (
	"slices"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

var (
	tableKeys  = []string{"id", "label", "note", "columns", "rows"}
	columnKeys = []string{"id", "label", "unit", "formula", "note"}
	rowKeys    = []string{"id", "label", "note", "source", "caution"}
)

func (r *reader) table(n *yaml.Node) *tablePart {
	entries := r.entries(n, "a table")
	if entries == nil {
		return nil
	}
	t := &tablePart{place: r.place(n)}
	if id := lookUp(n, "id"); id != nil {
		t.id = r.id(id, functionFault)
	} else {
		r.tell(diag.MissingKey, n, "id: fuels", "the table has no id")
	}
	for _, e := range entries {
		switch e.key {
		case "id":
		case "label":
			t.label = r.text(e.value)
		case "note":
			t.note = r.text(e.value)
		case "columns":
			for _, item := range r.items(e.value, `"columns"`) {
				r.column(t, item)
			}
		case "rows":
			for _, item := range r.items(e.value, `"rows"`) {
				if row := r.row(t.id, item); row != nil {
					t.rows = append(t.rows, row)
				}
			}
		default:
			r.unknown(e, "a table", tableKeys)
		}
	}
	return t
}

// columnFault is idFault for columns, which formulas name bare in their rows and
// which stand among a row's own keys.
func columnFault(id string) (fault, hint string) {
	if slices.Contains(rowKeys, id) {
		return "is a key every row has", "call the column " + id + "_column, or something better"
	}
	return functionFault(id)
}

func (r *reader) column(t *tablePart, n *yaml.Node) {
	c := Column{Place: r.place(n), Places: map[string]diag.Place{}}
	for _, e := range r.entries(n, "a column") {
		c.Places[e.key] = r.place(e.value)
		switch e.key {
		case "id":
			c.ID = r.id(e.value, columnFault)
		case "label":
			c.Label = r.text(e.value)
		case "unit":
			c.Unit = r.text(e.value)
		case "formula":
			c.Formula = r.text(e.value)
		case "note":
			c.Note = r.text(e.value)
		default:
			r.unknown(e, "a column", columnKeys)
		}
	}
	switch {
	case n.Kind != yaml.MappingNode:
	case c.ID == "":
		if lookUp(n, "id") == nil {
			r.tell(diag.MissingKey, n, "id: price", "the column has no id")
		}
	case t.column(c.ID) != nil:
		r.tell(diag.DuplicateID, n, "give one of the two another id", "the table has a column %s already", quote(c.ID))
	default:
		if c.Label == "" {
			c.Label = labelFrom(c.ID)
		}
		t.columns = append(t.columns, c)
	}
}

func (r *reader) row(table string, n *yaml.Node) *rowPart {
	entries := r.entries(n, "a row")
	if entries == nil {
		return nil
	}
	out := &rowPart{row: Row{Place: r.place(n)}}
	if id := lookUp(n, "id"); id != nil {
		out.row.ID = r.id(id, idFault)
	} else {
		r.tell(diag.MissingKey, n, "id: propane", "the row has no id")
	}
	for _, e := range entries {
		switch e.key {
		case "id":
		case "label":
			out.row.Label = r.text(e.value)
		case "note":
			out.row.Note = r.text(e.value)
		case "source":
			out.row.Source = r.text(e.value)
		case "caution":
			out.row.Caution = r.text(e.value)
		default:
			r.about = table + "." + out.row.ID + "." + e.key
			if l := r.cell(e); l != nil {
				out.cells = append(out.cells, &cellPart{e.key, r.place(e.at), l})
			}
			r.about = ""
		}
	}
	if out.row.Label == "" {
		out.row.Label = labelFrom(out.row.ID)
	}
	return out
}

// cell reads a row's value for a column: a number, or a mapping of line keys.
func (r *reader) cell(e entry) *Line {
	if !r.room(e.at) {
		return nil
	}
	l := &Line{Place: r.place(e.value), Places: map[string]diag.Place{}}
	if e.value.Kind == yaml.MappingNode {
		r.lineKeys(l, r.entries(e.value, "a cell"), cellKeys)
		r.needsKind(l, e.value)
		return l
	}
	l.Kind = Is
	l.Places["is"] = l.Place
	l.Is, _ = r.number(e.value)
	return l
}
