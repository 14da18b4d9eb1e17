package door_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

func TestExplainIsATree(t *testing.T) {
	d := opened(t)
	var e engine.Explanation
	call(t, d, "explain", map[string]any{"id": "sap", "season": "bad", "seasons": 500}, &e)
	require.NotNil(t, e.Season)
	assert.Equal(t, 500, e.Seasons)
	assert.Equal(t, "taps * each", e.Tree.Formula)
	require.Len(t, e.Tree.Uses, 2)
	assert.InEpsilon(t, *e.Tree.Uses[0].Value**e.Tree.Uses[1].Value, *e.Tree.Value, 1e-12)
	call(t, d, "explain", map[string]any{"id": "sap", "system": "metric"}, &e)
	assert.Equal(t, "L", e.Tree.Unit)
}

func TestExplainFailuresAreAnswers(t *testing.T) {
	var f struct {
		Error door.Failure `json:"error"`
	}
	call(t, &door.Door{}, "explain", map[string]any{"id": "sap"}, &f)
	assert.Equal(t, "nothing-open", string(f.Error.Code))
	call(t, opened(t), "explain", map[string]any{"id": "sop"}, &f)
	assert.Equal(t, "unknown-name", string(f.Error.Code))
	assert.NotEmpty(t, f.Error.Hint)
}
