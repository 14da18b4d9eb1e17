// Package engine is the front door: it opens a sheet, edits it and answers
// questions about it. The command line and the page's module call nothing else.
//
// The engine reaches neither the network nor the file system nor the clock:
// sheets come in as bytes, and the files a scenario is taken from are asked for
// through a Load.
package engine

import (
	"thawbook/engine/diag"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// Load gives the text of a sheet by the name that stands after "from". Its error
// becomes a diagnostic at that place.
type Load = func(name string) ([]byte, error)

// Book is an opened sheet. A Book never changes: Edit and Try give new ones,
// which take over whatever the change left alone. A Book remembers its last run,
// so it must not be used from two goroutines at once.
type Book struct {
	name  string
	load  Load
	doc   *sheet.Doc
	sheet *sheet.Sheet
	plan  *formula.Plan
	list  diag.List
	last  *run
}

// Open reads the sheet called name through load. The diagnostics tell all that
// is wrong with it; the Book is nil only when it cannot be read as a sheet.
func Open(name string, load Load) (*Book, diag.List) {
	source, err := load(name)
	if err != nil {
		return nil, diag.List{{Code: diag.FromMissing, Severity: diag.Error, Place: diag.Place{File: name},
			Message: "cannot read \"" + name + "\": " + err.Error(), Hint: "check the name and where it is looked for"}}
	}
	doc, list := sheet.Parse(name, source)
	if doc == nil {
		return nil, list
	}
	return assemble(name, load, doc, list, nil)
}

// assemble resolves and binds a document. last is what an earlier form of the
// same sheet left behind, or nil.
func assemble(name string, load Load, doc *sheet.Doc, list diag.List, last *run) (*Book, diag.List) {
	resolved, more := sheet.Resolve(doc, load)
	list = append(list, more...)
	if resolved == nil {
		list.Sort()
		return nil, list
	}
	plan, more := formula.Bind(resolved)
	for _, d := range more {
		if !told(list, d) {
			list = append(list, d)
		}
	}
	list.Sort()
	return &Book{name: name, load: load, doc: doc, sheet: resolved, plan: plan, list: list, last: last}, list
}

// Name is the name the sheet was opened by.
func (b *Book) Name() string { return b.name }

// Source is the sheet file as it stands, byte for byte. It must not be changed.
func (b *Book) Source() []byte { return b.doc.Source() }

// Sheet is the resolved sheet. It must not be changed.
func (b *Book) Sheet() *sheet.Sheet { return b.sheet }

// Plan is the bound sheet. It must not be changed.
func (b *Book) Plan() *formula.Plan { return b.plan }

// Diagnostics are what is wrong with the sheet, in the order of the file.
func (b *Book) Diagnostics() diag.List { return b.list }

// Edit changes one line of the file's text and gives the book of the new text.
// When the edit cannot be made, the diagnostics say why and the Book is b
// itself. Whatever the edit left alone is not worked again by the next Reckon.
func (b *Book) Edit(e sheet.Edit) (*Book, diag.List) {
	doc, list := b.doc.Edit(e, b.sheet)
	if len(list) > 0 {
		return b, list
	}
	next, list := assemble(b.name, b.load, doc, doc.Diagnostics(), b.last)
	if next == nil {
		return b, list
	}
	return next, nil
}

// Write gives the book of another text of the same sheet, as an undo has it.
// Whatever the two texts share is not worked again by the next Reckon. When the
// text cannot be read as a sheet, the diagnostics say why and the Book is b
// itself.
func (b *Book) Write(source []byte) (*Book, diag.List) {
	doc, list := sheet.Parse(b.name, source)
	if doc == nil {
		return b, list
	}
	next, list := assemble(b.name, b.load, doc, list, b.last)
	if next == nil {
		return b, list
	}
	return next, nil
}

// Try is Edit without touching the file's text: a what-if for as long as the new
// Book is held. It takes numbers, guesses, records, choices and formulas.
func (b *Book) Try(edits ...sheet.Edit) (*Book, diag.List) {
	changed, list := sheet.Try(b.sheet, edits)
	if len(list) > 0 {
		return b, list
	}
	plan, list := b.plan.Rebind(changed)
	about := map[string]bool{}
	for _, e := range edits {
		about[e.About] = true
	}
	for _, d := range list {
		if about[d.About] && !told(b.list, d) {
			return b, diag.List{d}
		}
	}
	// What was wrong with other lines is wrong with them still.
	kept := diag.List{}
	for _, d := range b.list {
		if !about[d.About] {
			kept = append(kept, d)
		}
	}
	return &Book{name: b.name, load: b.load, doc: b.doc, sheet: changed, plan: plan, list: kept, last: b.last}, nil
}

// told reports whether list already has d's complaint about d's line: a guess
// out of order is seen by the sheet and by its shape.
func told(list diag.List, d diag.Diagnostic) bool {
	for _, have := range list {
		if have.About == d.About && have.Code == d.Code {
			return true
		}
	}
	return false
}
