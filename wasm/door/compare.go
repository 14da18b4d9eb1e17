package door

import (
	"fmt"
	"maps"

	"thawbook/engine"
	"thawbook/engine/diag"
)

// aside keeps the sheets that were last set beside the open one, so that asking
// again after an edit does not work them anew.
type aside struct {
	files map[string]string
	books map[string]*engine.Book
}

// besideCall names what to set beside the open sheet. Files has the text of each
// and of whatever it is taken from.
type besideCall struct {
	With    []string          `json:"with"`
	Files   map[string]string `json:"files"`
	Seasons int               `json:"seasons"`
	Seed    *uint64           `json:"seed"`
	System  string            `json:"system"`
}

type compareCall struct {
	besideCall
	On []string `json:"on"`
}

type flipCall struct {
	besideCall
	engine.FlipQuestion
}

// compare sets the open sheet and those it names side by side.
func (d *Door) compare(payload []byte) (any, []byte, error) {
	var call compareCall
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	books, err := d.beside(call.besideCall)
	if err != nil {
		return nil, nil, err
	}
	c, err := engine.Compare(books, engine.CompareOptions{Options: d.options(call.besideCall), On: call.On})
	return c, nil, err
}

// flip finds where the answer turns between the open sheet and each it names.
func (d *Door) flip(payload []byte) (any, []byte, error) {
	var call flipCall
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	books, err := d.beside(call.besideCall)
	if err != nil {
		return nil, nil, err
	}
	flips := []*engine.Flip{}
	for _, other := range books[1:] {
		f, err := engine.FindFlip(books[0], other, call.FlipQuestion, d.options(call.besideCall))
		if err != nil {
			return nil, nil, err
		}
		flips = append(flips, f)
	}
	return map[string]any{"flips": flips}, nil, nil
}

func (d *Door) options(call besideCall) engine.Options {
	o := engine.Options{Seasons: call.Seasons, Seed: call.Seed, System: system(call.System)}
	if d.Progress != nil {
		o.Progress = func(done, total int) bool { d.Progress(done, total); return true }
	}
	return o
}

// beside gives the open book and those the call names. One that cannot be read
// is told by its first diagnostic.
func (d *Door) beside(call besideCall) ([]*engine.Book, error) {
	if err := d.needBook(); err != nil {
		return nil, err
	}
	if len(call.With) == 0 {
		return nil, Failure{badPayload, "no sheet to set beside the open one is named", ""}
	}
	if d.aside.books == nil || !maps.Equal(d.aside.files, call.Files) {
		d.aside = aside{call.Files, map[string]*engine.Book{}}
	}
	books := []*engine.Book{d.book}
	for _, name := range call.With {
		if d.aside.books[name] == nil {
			book, list := engine.Open(name, loadFrom(call.Files))
			if book == nil {
				return nil, firstOf(list, name)
			}
			d.aside.books[name] = book
		}
		books = append(books, d.aside.books[name])
	}
	return books, nil
}

func firstOf(list diag.List, name string) error {
	if len(list) > 0 {
		return list[0]
	}
	return Failure{broke, fmt.Sprintf("%q cannot be read", name), ""}
}

func loadFrom(files map[string]string) engine.Load {
	return func(name string) ([]byte, error) {
		text, ok := files[name]
		if !ok {
			return nil, fmt.Errorf("no such file was given")
		}
		return []byte(text), nil
	}
}
