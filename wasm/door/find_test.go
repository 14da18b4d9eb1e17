package door_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

func TestFindInTheOpenSheet(t *testing.T) {
	d := opened(t)
	told := 0
	d.Progress = func(done, total int) { told++; assert.LessOrEqual(t, done, total) }
	var f engine.Found
	call(t, d, "find", map[string]any{"line": "taps", "so_that": "sap", "in": "9/10", "low": 5, "high": 40, "seasons": 500, "system": "metric"}, &f)
	require.Len(t, f.Answers, 1)
	assert.Equal(t, "L", f.Outcome.Unit)
	assert.InEpsilon(t, 80*3.785411784, f.Target, 1e-12)
	assert.Equal(t, 16.0, *f.Answers[0].From.Value, "a bad bucket gives 5 gallons, so 80 take 16")
	assert.Equal(t, 40.0, *f.Highest.Value)
	assert.Positive(t, told)

	var sure engine.Found
	call(t, d, "find", map[string]any{"line": "each", "so_that": "sap", "is": 120, "certain": true}, &sure)
	require.Len(t, sure.Answers, 1)
	assert.InDelta(t, 12, *sure.Answers[0].From.Value, 1e-5)
	assert.Nil(t, sure.Answers[0].From.Low)
}

func TestFindFailures(t *testing.T) {
	for name, c := range map[string]struct {
		ask  map[string]any
		code string
	}{
		"unknown line": {map[string]any{"line": "trees", "so_that": "sap"}, "unknown-name"},
		"no target":    {map[string]any{"line": "taps", "so_that": "each"}, "does-not-hang"},
		"unread":       {map[string]any{"line": "taps", "so_that": "sap", "in": "often"}, "bad-question"},
		"unknown key":  {map[string]any{"line": "taps", "so_thta": "sap"}, "bad-payload"},
	} {
		var answer struct{ Error door.Failure }
		call(t, opened(t), "find", c.ask, &answer)
		assert.Equal(t, c.code, string(answer.Error.Code), name)
	}
	var answer struct{ Error door.Failure }
	call(t, &door.Door{}, "find", map[string]any{"line": "taps", "so_that": "sap"}, &answer)
	assert.Equal(t, "nothing-open", string(answer.Error.Code))
}
