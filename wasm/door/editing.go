package door

import (
	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
)

// trial is what a what-if came to.
type trial struct {
	// Kept says it could not be tried; Diagnostics tell why.
	Kept        bool      `json:"kept,omitempty"`
	Diagnostics diag.List `json:"diagnostics"`
}

// try shows the sheet with changes that its text does not have: reckon, column,
// explain and shape are about it until the next try, edit or open. No edits show
// the sheet as it is written. Each try begins from the text, not from the last.
func (d *Door) try(payload []byte) (any, []byte, error) {
	var call struct {
		Edits []sheet.Edit `json:"edits"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	if len(call.Edits) == 0 {
		d.tried = nil
		return trial{Diagnostics: diag.List{}}, nil, nil
	}
	book, list := d.book.Try(call.Edits...)
	if len(list) > 0 {
		return trial{Kept: true, Diagnostics: list}, nil, nil
	}
	d.tried = book
	return trial{Diagnostics: diag.List{}}, nil, nil
}

// shown is the book that questions are about: the one being tried, or the open
// one.
func (d *Door) shown() *engine.Book {
	if d.tried != nil {
		return d.tried
	}
	return d.book
}

// settle makes a book the open one; what was tried on the one before is over.
func (d *Door) settle(book *engine.Book) { d.book, d.tried = book, nil }

// write puts another text in place of the open sheet's own, as an undo does.
func (d *Door) write(payload []byte) (any, []byte, error) {
	var call struct {
		Text string `json:"text"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	book, list := d.book.Write([]byte(call.Text))
	if len(list) > 0 {
		return d.kept(list), nil, nil
	}
	d.settle(book)
	return viewed{View: book.View()}, nil, nil
}

// shape tells what a guess in the making would do.
func (d *Door) shape(payload []byte) (any, []byte, error) {
	var call struct {
		engine.GuessQuestion
		System string `json:"system"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	answer, err := d.book.Shape(call.GuessQuestion, system(call.System))
	return answer, nil, err
}

// formula tells what a formula in the making comes to.
func (d *Door) formula(payload []byte) (any, []byte, error) {
	var call struct {
		About  string `json:"about"`
		Text   string `json:"text"`
		System string `json:"system"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	return d.book.CheckFormula(call.About, call.Text, system(call.System)), nil, nil
}
