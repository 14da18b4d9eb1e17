package door

import "thawbook/engine"

// gear weighs what the gear of the open sheet saves against its price.
func (d *Door) gear(payload []byte) (any, []byte, error) {
	var call struct {
		Worth   string  `json:"worth"`
		Rate    string  `json:"rate"`
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
	list, err := d.book.Gear(engine.GearQuestion{Options: d.options(besideCall{Seasons: call.Seasons, Seed: call.Seed, System: call.System}),
		Worth: call.Worth, Rate: call.Rate})
	return list, nil, err
}
