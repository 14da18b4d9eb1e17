package door_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

const geared = `thawbook: 1
title: Geared
chapters:
  - title: All
    lines: [{id: worth, label: An hour, is: 15, unit: $/h}]
    tables:
      - id: gear
        columns: [{id: price, unit: $}, {id: life, unit: year}, {id: saves_hours, unit: h}]
        rows: [{id: coil, label: Coil, price: 300, life: 4, saves_hours: 10}]
`

func TestGearOfTheOpenSheet(t *testing.T) {
	d := &door.Door{}
	var v engine.View
	call(t, d, "open", map[string]any{"name": "geared.yaml", "files": map[string]string{"geared.yaml": geared}}, &v)
	require.Empty(t, v.Diagnostics)
	var list engine.GearList
	call(t, d, "gear", map[string]any{"seasons": 200, "rate": "0", "worth": "30"}, &list)
	require.Len(t, list.Pieces, 1)
	assert.Equal(t, 200, list.Seasons)
	assert.InDelta(t, 1, *list.Pieces[0].WithHours.Years.P50, 1e-12, "10 hours at $30 are its price")
	assert.InDelta(t, 7.5, *list.Pieces[0].HourCosts.P50, 1e-12)

	var answer struct{ Error door.Failure }
	call(t, d, "gear", map[string]any{"worth": "gear.coil.life"}, &answer)
	assert.Equal(t, "unit-mismatch", string(answer.Error.Code))
	call(t, opened(t), "gear", map[string]any{}, &answer)
	assert.Equal(t, "none-marked", string(answer.Error.Code))
	call(t, &door.Door{}, "gear", map[string]any{}, &answer)
	assert.Equal(t, "nothing-open", string(answer.Error.Code))
}
