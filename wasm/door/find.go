package door

import "thawbook/engine"

// find looks for the value of a line at which an outcome reaches a target.
func (d *Door) find(payload []byte) (any, []byte, error) {
	var call struct {
		Line    string   `json:"line"`
		SoThat  string   `json:"so_that"`
		Is      *float64 `json:"is"`
		AtLeast *float64 `json:"at_least"`
		AtMost  *float64 `json:"at_most"`
		In      string   `json:"in"`
		Low     *float64 `json:"low"`
		High    *float64 `json:"high"`
		Certain bool     `json:"certain"`
		Seasons int      `json:"seasons"`
		Seed    *uint64  `json:"seed"`
		System  string   `json:"system"`
	}
	if err := read(payload, &call); err != nil {
		return nil, nil, err
	}
	if err := d.needBook(); err != nil {
		return nil, nil, err
	}
	found, err := d.book.Find(engine.FindQuestion{Options: d.options(besideCall{Seasons: call.Seasons, Seed: call.Seed, System: call.System}),
		Line: call.Line, Outcome: call.SoThat, Is: call.Is, AtLeast: call.AtLeast, AtMost: call.AtMost,
		In: call.In, Low: call.Low, High: call.High, Certain: call.Certain})
	return found, nil, err
}
