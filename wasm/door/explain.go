package door

import "thawbook/engine"

// explain takes one number back to the guesses it came from.
func (d *Door) explain(payload []byte) (any, []byte, error) {
	var call struct {
		ID      string  `json:"id"`
		Season  string  `json:"season"`
		Depth   int     `json:"depth"`
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
	o := engine.ExplainOptions{Season: call.Season, Depth: call.Depth,
		Options: engine.Options{Seasons: call.Seasons, Seed: call.Seed, System: system(call.System)}}
	if d.Progress != nil {
		o.Progress = func(done, total int) bool { d.Progress(done, total); return true }
	}
	answer, err := d.shown().Explain(call.ID, o)
	return answer, nil, err
}
