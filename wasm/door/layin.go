package door

import "thawbook/engine"

// layIn lists what to gather or buy for the open sheet.
func (d *Door) layIn(payload []byte) (any, []byte, error) {
	var call struct {
		Chance  string  `json:"chance"`
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
	list, err := d.book.LayIn(engine.LayInQuestion{Options: d.options(besideCall{Seasons: call.Seasons, Seed: call.Seed, System: call.System}), Chance: call.Chance})
	return list, nil, err
}
