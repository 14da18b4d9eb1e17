package door_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

func TestLayInForTheOpenSheet(t *testing.T) {
	d := &door.Door{}
	var v engine.View
	text := strings.Replace(small, "unit: gal, headline", "unit: gal, lay_in: {round: 10, on_hand: 20, price: 2}, headline", 1)
	call(t, d, "open", map[string]any{"name": "small.yaml", "files": map[string]string{"small.yaml": text}}, &v)
	require.Empty(t, v.Diagnostics)
	var list engine.LayInList
	call(t, d, "layin", map[string]any{"chance": "8/10", "seasons": 1000}, &list)
	assert.Equal(t, "8 seasons of 10", list.ChanceShown)
	require.Len(t, list.Groups, 1)
	require.Len(t, list.Groups[0].Items, 1)
	item := list.Groups[0].Items[0]
	assert.LessOrEqual(t, *item.ShortThen, 0.2)
	assert.Equal(t, 2**item.Buy, *list.Total.P50)

	var answer struct{ Error door.Failure }
	call(t, d, "layin", map[string]any{"chance": "twice"}, &answer)
	assert.Equal(t, "bad-question", string(answer.Error.Code))
	call(t, opened(t), "layin", map[string]any{}, &answer)
	assert.Equal(t, "none-marked", string(answer.Error.Code))
	call(t, &door.Door{}, "layin", map[string]any{}, &answer)
	assert.Equal(t, "nothing-open", string(answer.Error.Code))
}
