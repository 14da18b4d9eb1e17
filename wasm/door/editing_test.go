package door_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

func tryTaps(x float64) map[string]any {
	return map[string]any{"edits": []any{map[string]any{"about": "taps", "set": map[string]any{"is": x}}}}
}

func reckon(t *testing.T, d *door.Door, changed bool) engine.Reckoning {
	t.Helper()
	var r engine.Reckoning
	call(t, d, "reckon", map[string]any{"seasons": 1000, "changed": changed}, &r)
	return r
}

func TestATryIsShownAndNotWritten(t *testing.T) {
	d := opened(t)
	all := reckon(t, d, true)
	require.Len(t, all.Lines, 3, "nothing was told yet")

	var told map[string]any
	call(t, d, "try", tryTaps(20), &told)
	assert.NotContains(t, told, "kept")
	some := reckon(t, d, true)
	require.Len(t, some.Lines, 2)
	assert.True(t, some.Changed)
	assert.InEpsilon(t, 2**all.Lines[2].P50, *some.Lines[1].P50, 1e-12)
	assert.Len(t, call(t, d, "column", map[string]any{"id": "sap"}, &told), 8000, "the column is the tried one's")

	var source map[string]string
	call(t, d, "source", map[string]any{}, &source)
	assert.Equal(t, small, source["text"])

	call(t, d, "try", tryTaps(30), &told)
	assert.InEpsilon(t, 3**all.Lines[2].P50, *reckon(t, d, true).Lines[1].P50, 1e-12, "a try begins from the text")

	call(t, d, "try", map[string]any{"edits": []any{}}, &told)
	back := reckon(t, d, true)
	require.Len(t, back.Lines, 2)
	assert.Equal(t, all.Lines[2], back.Lines[1])
	assert.Empty(t, reckon(t, d, true).Lines)
	assert.Len(t, reckon(t, d, false).Lines, 3)
}

func TestATryThatCannotBeLeavesWhatIsShown(t *testing.T) {
	d := opened(t)
	var told struct {
		Kept        bool
		Diagnostics []map[string]any
	}
	call(t, d, "try", tryTaps(20), &told)
	was := reckon(t, d, false)
	call(t, d, "try", map[string]any{"edits": []any{map[string]any{"about": "each", "set": map[string]any{"is": -1}}}}, &told)
	assert.True(t, told.Kept)
	require.Len(t, told.Diagnostics, 1)
	assert.Equal(t, "out-of-bounds", told.Diagnostics[0]["code"])
	assert.Equal(t, was.Lines, reckon(t, d, false).Lines)
}

func TestAnEditEndsATry(t *testing.T) {
	d := opened(t)
	var told map[string]any
	call(t, d, "try", tryTaps(20), &told)
	var v engine.View
	call(t, d, "edit", map[string]any{"edits": []any{map[string]any{"about": "each", "set": map[string]any{"is": 5}}}}, &v)
	r := reckon(t, d, false)
	assert.InDelta(t, 50, *r.Lines[2].P50, 1e-9, "10 taps, as written")
}

func TestWritePutsAnEarlierTextBack(t *testing.T) {
	d := opened(t)
	var v engine.View
	call(t, d, "edit", map[string]any{"edits": []any{map[string]any{"about": "taps", "remove": true}}}, &v)
	assert.Len(t, v.Diagnostics, 1, "the sap waits for its taps")
	v = engine.View{}
	call(t, d, "write", map[string]any{"text": small}, &v)
	assert.Empty(t, v.Diagnostics)
	assert.Equal(t, small, v.Source)
	var told struct {
		Kept   bool
		Source string
	}
	call(t, d, "write", map[string]any{"text": "nothing"}, &told)
	assert.True(t, told.Kept)
	assert.Equal(t, small, told.Source)
}

func TestEditsOfWholeLines(t *testing.T) {
	d := opened(t)
	var v engine.View
	call(t, d, "edit", map[string]any{"edits": []any{
		map[string]any{"about": "taps", "rename": "spouts"},
		map[string]any{"about": "spouts", "duplicate": "more", "set": map[string]any{"label": "More"}},
		map[string]any{"about": "more", "move": map[string]any{"by": 2}},
	}}, &v)
	require.Empty(t, v.Diagnostics)
	var ids []string
	for _, l := range v.Chapters[0].Lines {
		ids = append(ids, l.ID)
	}
	assert.Equal(t, []string{"spouts", "each", "sap", "more"}, ids)
	assert.Equal(t, "spouts * each", v.Chapters[0].Lines[2].Formula)
}

func TestShapeAndFormulaInTheMaking(t *testing.T) {
	d := opened(t)
	var s engine.GuessShape
	call(t, d, "shape", map[string]any{"about": "each", "low": 5, "likely": 9, "high": 14, "inside": 6}, &s)
	require.NotNil(t, s.Guess)
	assert.Less(t, s.Guess.Low, 5.0)
	assert.NotEmpty(t, s.Curve)
	var f engine.FormulaReading
	call(t, d, "formula", map[string]any{"about": "sap", "text": "taps * each * 2"}, &f)
	assert.Equal(t, "gal", f.ComesTo)
	assert.Equal(t, "180 gal", f.Likely)
	call(t, d, "formula", map[string]any{"about": "sap", "text": "tap * each"}, &f)
	require.Len(t, f.Diagnostics, 1)
	assert.Equal(t, 0, f.Diagnostics[0].Place.Formula.From)
	for _, method := range []string{"try", "shape", "formula"} {
		var failure map[string]door.Failure
		call(t, &door.Door{}, method, map[string]any{}, &failure)
		assert.Equal(t, "nothing-open", string(failure["error"].Code), method)
	}
}
