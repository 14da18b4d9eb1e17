package door

import "thawbook/engine"

// movers says which guesses of the open sheet move a line most.
func (d *Door) movers(payload []byte) (any, []byte, error) {
	var call struct {
		For     string  `json:"for"`
		Seasons int     `json:"seasons"`
		Seed    *uint64 `json:"seed"`
		System  string  `json:"system"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	m, err := d.book.Movers(call.For, d.options(besideCall{Seasons: call.Seasons, Seed: call.Seed, System: call.System}))
	return m, nil, err
}

type worthCall struct {
	besideCall
	On     string `json:"on"`
	Better string `json:"better"`
}

// worth says what is worth finding out before choosing between the open sheet
// and those the call names.
func (d *Door) worth(payload []byte) (any, []byte, error) {
	var call worthCall
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	books, err := d.beside(call.besideCall)
	if err != nil {
		return nil, nil, err
	}
	w, err := engine.AskWorth(books, call.On, engine.KnowingOptions{Options: d.options(call.besideCall), Better: call.Better})
	return w, nil, err
}
