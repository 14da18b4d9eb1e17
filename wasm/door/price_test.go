package door_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

func TestPriceCardOfTheOpenSheet(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/heron-ridge-pallets.yaml")
	require.NoError(t, err)
	d := &door.Door{}
	steps := 0
	d.Progress = func(done, total int) { steps++; assert.LessOrEqual(t, done, total) }
	var v engine.View
	call(t, d, "open", map[string]any{"name": "a.yaml", "files": map[string]string{"a.yaml": string(text)}}, &v)
	require.Empty(t, v.Diagnostics)
	var card engine.PriceCard
	call(t, d, "price", map[string]any{"seasons": 300, "wage": 15, "state": "Maine",
		"changes": []any{map[string]any{"about": "jars.quart.price", "set": map[string]any{"is": 22}}}}, &card)
	require.Len(t, card.Sizes, 5)
	require.NotNil(t, card.Change)
	require.NotNil(t, card.Wage)
	assert.True(t, card.Wage.Middle.All.Found)
	assert.Equal(t, "$17.40", card.Reference.Sizes[2].ShownInState, "USDA NASS 2017, a quart at retail in Maine")
	assert.Positive(t, steps)
	var source map[string]string
	call(t, d, "source", map[string]any{}, &source)
	assert.Equal(t, string(text), source["text"], "a change is only tried")
}

func TestPriceFailuresAreAnswers(t *testing.T) {
	var f struct {
		Error door.Failure `json:"error"`
	}
	call(t, &door.Door{}, "price", map[string]any{}, &f)
	assert.Equal(t, "nothing-open", string(f.Error.Code))
	call(t, opened(t), "price", map[string]any{}, &f)
	assert.Equal(t, "none-marked", string(f.Error.Code))
	assert.NotEmpty(t, f.Error.Hint)
}
