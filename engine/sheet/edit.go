package sheet

import (
	"fmt"

	"go.yaml.in/yaml/v3"

	"thawbook/engine/diag"
)

// Edit is one change to a sheet's text.
type Edit struct {
	// About is the id of a line or cell, of a table's row ("fuels.propane") or
	// column ("fuels.price"), or "" for the top of the file.
	About string `json:"about"`
	Set   Set    `json:"set"`
	// Add makes About a new line that says what Set does, or, when About is
	// "table.row", a new row whose every value is 0.
	Add *Add `json:"add,omitempty"`
	// Remove takes a line, a table, a column or a row out; a scenario drops
	// what it inherits. Set must be empty.
	Remove bool `json:"remove,omitempty"`
	// Restore takes back a scenario's change of About, or a row's own value
	// where its column has a formula. Set must be empty.
	Restore bool `json:"restore,omitempty"`
	// Rename is another id for a line or table of this file: whatever in the
	// file names it follows. Set must be empty.
	Rename string `json:"rename,omitempty"`
	// Move puts a line, table, column or row of this file elsewhere. Set must be
	// empty.
	Move *Move `json:"move,omitempty"`
	// Duplicate is the id of a copy of a line, table or row, written behind it; a
	// row's without its table's. The copy says what Set does.
	Duplicate string `json:"duplicate,omitempty"`
}

// Move says where something goes. One of the two is set.
type Move struct {
	// By counts places down its list, or up when negative.
	By int `json:"by,omitempty"`
	// Chapter is the title of another chapter of the file, at whose end it goes.
	Chapter string `json:"chapter,omitempty"`
}

// asks counts the things the edit asks for, besides what it sets.
func (e Edit) asks() int {
	n := 0
	for _, asked := range []bool{e.Add != nil, e.Remove, e.Restore, e.Rename != "", e.Move != nil, e.Duplicate != ""} {
		if asked {
			n++
		}
	}
	return n
}

// Add says where a new line goes.
type Add struct {
	// Chapter is the title of a chapter; a new one is made when there is none.
	Chapter string `json:"chapter,omitempty"`
	// After is the id of a line of that chapter in the same file; "" is the end.
	After string `json:"after,omitempty"`
}

// Set is what to write; nil leaves a key as it is. At most one of Is, Guess,
// Records, Choose and Formula may be set: it takes the place of whatever the
// line came to before. An empty Label, Note, Source, Title or About takes that key
// out. Title, About, Seasons and Seed belong to the top of the file.
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
	About   *string `json:"about,omitempty"`
	Seasons *int    `json:"seasons,omitempty"`
	Seed    *uint64 `json:"seed,omitempty"`
}

// GuessValue is a guess's three numbers, in the line's unit.
type GuessValue struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// Edit is a new Doc whose text says what e asks for and is otherwise the same,
// byte for byte. in is what d resolved to; a scenario needs it to write a line it
// inherits under its own change, any other sheet may give nil. When the edit
// cannot be made the Doc is d itself and the list tells why; else the list is
// empty. An edit may well leave a sheet that has errors of sense (a guess out of
// order, a unit that cannot be read): Parse's and Resolve's lists of the new Doc
// tell those.
func (d *Doc) Edit(e Edit, in *Sheet) (*Doc, diag.List) {
	next, list := d.edit(e, in)
	if len(list) == 0 {
		return next, nil
	}
	for i := range list {
		list[i].Place.File = d.name
		list[i].About = e.About
	}
	return d, list
}

func (d *Doc) edit(e Edit, in *Sheet) (*Doc, diag.List) {
	settings, list := e.Set.settings()
	switch structural := e.asks() > 0; {
	case len(list) > 0:
		return nil, list
	case len(settings) == 0 && !structural:
		return nil, diag.List{*refuse(diag.EditUnknown, "set is, guess, formula or another key", "the edit of %s sets nothing", quote(e.About))}
	case structural:
		next, refused := d.restructure(e, settings, in)
		return next, listed(refused)
	}
	now := d
	for _, s := range settings {
		next, refused := now.set(e.About, s, in)
		if refused != nil {
			return nil, listed(refused)
		}
		now = next
	}
	return now, nil
}

func listed(d *diag.Diagnostic) diag.List {
	if d == nil {
		return nil
	}
	return diag.List{*d}
}

// set is Edit for one key.
func (d *Doc) set(about string, s setting, in *Sheet) (*Doc, *diag.Diagnostic) {
	t, refused := d.locate(about, in)
	if refused == nil {
		refused = t.takes(s)
	}
	if refused != nil {
		return nil, refused
	}
	w := &writer{marks: d.marks}
	allowed := w.set(t, s)
	next, refused := d.written(w, allowed, t.node())
	if refused == nil && !next.says(about, s, in) {
		refused = unwritable(t.node())
	}
	return next, refused
}

// written is the document with a writer's splices made. It is refused when the
// new text cannot be read, or differs outside the allowed paths of its tree.
// near is where a refusal points.
func (d *Doc) written(w *writer, allowed []string, near *yaml.Node) (*Doc, *diag.Diagnostic) {
	switch {
	case w.stuck:
		return nil, unwritable(near)
	case len(w.splices) == 0:
		return d, nil // it says so already
	}
	next, told := Parse(d.name, []byte(w.spliced()))
	switch {
	case next == nil && told[0].Code == diag.FileTooLarge:
		return nil, &told[0]
	case next == nil || !sameBut(d.root, next.root, allowed):
		return nil, unwritable(near)
	}
	return next, nil
}

func unwritable(near *yaml.Node) *diag.Diagnostic {
	refused := refuse(diag.EditUnknown, "change the file by hand there", "the change cannot be written into the file as it stands")
	if near != nil {
		refused.Place.Line, refused.Place.Column = near.Line, near.Column
	}
	return refused
}

func refuse(code diag.Code, hint, format string, args ...any) *diag.Diagnostic {
	return &diag.Diagnostic{Code: code, Severity: diag.Error, Message: fmt.Sprintf(format, args...), Hint: hint}
}
