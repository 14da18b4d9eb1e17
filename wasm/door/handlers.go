package door

import (
	"encoding/binary"
	"fmt"
	"math"

	"thawbook/engine"
	"thawbook/engine/diag"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

type openCall struct {
	Name  string            `json:"name"`
	Files map[string]string `json:"files"`
}

// viewed is the sheet's view with the diagnostics of what was just asked, which
// may be about a text that was not taken.
type viewed struct {
	engine.View
	// Kept says the call could not be done and the sheet is as it was.
	Kept bool `json:"kept,omitempty"`
}

func (d *Door) open(payload []byte) (any, []byte, error) {
	var call openCall
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	load := func(name string) ([]byte, error) {
		text, ok := call.Files[name]
		if !ok {
			return nil, fmt.Errorf("no such file was given")
		}
		return []byte(text), nil
	}
	book, list := engine.Open(call.Name, load)
	if book == nil {
		return d.kept(list), nil, nil
	}
	d.settle(book)
	d.told = nil
	return viewed{View: book.View()}, nil, nil
}

// kept shows the open book beside diagnostics of something that was not taken.
func (d *Door) kept(list diag.List) viewed {
	v := viewed{Kept: true}
	if d.book != nil {
		v.View = d.book.View()
	} else {
		v.Chapters = []engine.ChapterView{}
	}
	v.Diagnostics = list
	return v
}

func (d *Door) edit(payload []byte) (any, []byte, error) {
	var call struct {
		Edits []sheet.Edit `json:"edits"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	book := d.book
	for _, e := range call.Edits {
		next, list := book.Edit(e)
		if len(list) > 0 {
			return d.kept(list), nil, nil
		}
		book = next
	}
	d.settle(book)
	return viewed{View: book.View()}, nil, nil
}

func (d *Door) reckon(payload []byte) (any, []byte, error) {
	var call struct {
		Seasons int     `json:"seasons"`
		Seed    *uint64 `json:"seed"`
		System  string  `json:"system"`
		// Changed asks for those lines only that differ from what was told last.
		Changed bool `json:"changed"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	o := engine.Options{Seasons: call.Seasons, Seed: call.Seed, System: system(call.System)}
	if call.Changed {
		o.Told = d.told
	}
	if d.Progress != nil {
		o.Progress = func(done, total int) bool { d.Progress(done, total); return true }
	}
	r, err := d.shown().Reckon(o)
	if err != nil {
		return nil, nil, err
	}
	d.told = r
	return r, nil, nil
}

func system(name string) units.System {
	switch name {
	case "customary":
		return units.Customary
	case "metric":
		return units.Metric
	}
	return units.AsWritten
}

// column gives one line's numbers, a season each, as little-endian float64.
func (d *Door) column(payload []byte) (any, []byte, error) {
	var call struct {
		ID string `json:"id"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	values, err := d.shown().Column(call.ID)
	if err != nil {
		return nil, nil, err
	}
	bytes := make([]byte, 8*len(values))
	for i, x := range values {
		binary.LittleEndian.PutUint64(bytes[8*i:], math.Float64bits(x))
	}
	return map[string]any{"id": call.ID, "seasons": len(values)}, bytes, nil
}

func (d *Door) functions([]byte) (any, []byte, error) { return engine.Functions(), nil, nil }

func (d *Door) source([]byte) (any, []byte, error) {
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	return map[string]string{"name": d.book.Name(), "text": string(d.book.Source())}, nil, nil
}
