package sheet

import (
	"fmt"

	"thawbook/engine/diag"
)

// Edit is one change to a sheet's text.
type Edit struct {
	// About is the id of a line or cell, of a table's row ("fuels.propane") or
	// column ("fuels.price"), or "" for the top of the file.
	About string `json:"about"`
	Set   Set    `json:"set"`
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
	settings, list := e.Set.settings(e.About)
	for i := range list {
		list[i].About = e.About
	}
	if len(list) > 0 {
		return d, list
	}
	now := d
	for _, s := range settings {
		next, refused := now.set(e.About, s, in)
		if refused != nil {
			refused.Place.File = d.name
			refused.About = e.About
			return d, diag.List{*refused}
		}
		now = next
	}
	return now, nil
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
	if w.stuck {
		return nil, d.unwritable(t)
	}
	if len(w.splices) == 0 {
		return d, nil // it says so already
	}
	next, told := Parse(d.name, []byte(w.spliced()))
	if next == nil {
		return nil, &told[0]
	}
	if !sameBut(d.root, next.root, allowed) || !next.says(about, s, in) {
		return nil, d.unwritable(t)
	}
	return next, nil
}

func (d *Doc) unwritable(t target) *diag.Diagnostic {
	refused := refuse(diag.EditUnknown, "change the file by hand there", "the change cannot be written into the file as it stands")
	if n := t.node(); n != nil {
		refused.Place.Line, refused.Place.Column = n.Line, n.Column
	}
	return refused
}

func refuse(code diag.Code, hint, format string, args ...any) *diag.Diagnostic {
	return &diag.Diagnostic{Code: code, Severity: diag.Error, Message: fmt.Sprintf(format, args...), Hint: hint}
}
