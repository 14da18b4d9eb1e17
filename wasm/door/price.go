package door

import (
	"thawbook/engine"
	"thawbook/engine/sheet"
)

// price is the price card. Changes are tried beside the open sheet, which stays
// as it is.
func (d *Door) price(payload []byte) (any, []byte, error) {
	var call struct {
		Table   string            `json:"table"`
		Roles   map[string]string `json:"roles"`
		Changes []sheet.Edit      `json:"changes"`
		Wage    *float64          `json:"wage"`
		State   string            `json:"state"`
		Seasons int               `json:"seasons"`
		Seed    *uint64           `json:"seed"`
		System  string            `json:"system"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	o := engine.PriceOptions{Table: call.Table, Roles: call.Roles, Changes: call.Changes, Wage: call.Wage, State: call.State,
		Options: engine.Options{Seasons: call.Seasons, Seed: call.Seed, System: system(call.System)}}
	if d.Progress != nil {
		o.Progress = func(done, total int) bool { d.Progress(done, total); return true }
	}
	card, err := d.shown().PriceCard(o)
	return card, nil, err
}
