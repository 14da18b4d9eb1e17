package door_test

import (
	"encoding/binary"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

const small = `thawbook: 1
title: Small
chapters:
  - title: All
    lines:
      - {id: taps, label: Taps, is: 10, unit: tap}
      - {id: each, label: Sap a tap, guess: {low: 5, likely: 9, high: 14}, unit: gal/tap, floor: 0}
      - {id: sap, label: Sap, formula: taps * each, unit: gal, headline: {better: more, goal: {at_least: 80}}}
`

func call(t *testing.T, d *door.Door, method string, payload any, into any) []byte {
	text, err := json.Marshal(payload)
	require.NoError(t, err)
	a := d.Call(method, text)
	require.NoError(t, json.Unmarshal(a.JSON, into), string(a.JSON))
	return a.Bytes
}

func opened(t *testing.T) *door.Door {
	d := &door.Door{}
	var v engine.View
	call(t, d, "open", map[string]any{"name": "small.yaml", "files": map[string]string{"small.yaml": small}}, &v)
	require.Empty(t, v.Diagnostics)
	require.Len(t, v.Chapters, 1)
	return d
}

func TestOpenEditReckonColumn(t *testing.T) {
	d := opened(t)
	var r engine.Reckoning
	call(t, d, "reckon", map[string]any{"seasons": 1000}, &r)
	require.Len(t, r.Lines, 3)
	before := *r.Lines[2].P50
	assert.Equal(t, 3, r.Worked)

	var v engine.View
	call(t, d, "edit", map[string]any{"edits": []any{map[string]any{"about": "taps", "set": map[string]any{"is": 20}}}}, &v)
	assert.InDelta(t, 20, *v.Chapters[0].Lines[0].Is, 0)
	assert.Contains(t, v.Source, "is: 20")
	call(t, d, "reckon", map[string]any{"seasons": 1000}, &r)
	assert.InEpsilon(t, 2*before, *r.Lines[2].P50, 1e-12)
	assert.Equal(t, 2, r.Worked, "the sap of a tap is not drawn again")

	var told map[string]any
	bytes := call(t, d, "column", map[string]any{"id": "sap"}, &told)
	require.Len(t, bytes, 8000)
	sum := 0.0
	for i := range 1000 {
		sum += math.Float64frombits(binary.LittleEndian.Uint64(bytes[8*i:]))
	}
	assert.InEpsilon(t, *r.Lines[2].Mean, sum/1000, 1e-12)
}

func TestMetricIsForShowOnly(t *testing.T) {
	d := opened(t)
	var r engine.Reckoning
	call(t, d, "reckon", map[string]any{"system": "metric"}, &r)
	assert.Equal(t, "L", r.Lines[2].Unit)
	assert.InEpsilon(t, 10*9*3.785411784, *r.Lines[2].AtLikely, 1e-12)
	var source map[string]string
	call(t, d, "source", map[string]any{}, &source)
	assert.Equal(t, small, source["text"])
}

func TestWhatCannotBeTakenLeavesTheSheetOpen(t *testing.T) {
	d := opened(t)
	var v struct {
		engine.View
		Kept bool `json:"kept"`
	}
	call(t, d, "open", map[string]any{"name": "bad.yaml", "files": map[string]string{"bad.yaml": "thawbook: ["}}, &v)
	assert.True(t, v.Kept)
	require.NotEmpty(t, v.Diagnostics)
	assert.Equal(t, "Small", v.Title, "the sheet before is still there")
	call(t, d, "edit", map[string]any{"edits": []any{
		map[string]any{"about": "taps", "set": map[string]any{"is": 20}},
		map[string]any{"about": "nobody", "set": map[string]any{"is": 20}}}}, &v)
	assert.True(t, v.Kept)
	assert.InDelta(t, 10, *v.Chapters[0].Lines[0].Is, 0, "all edits of a call are made, or none")
}

func TestFailuresAreAnswers(t *testing.T) {
	type failure struct {
		Error door.Failure `json:"error"`
	}
	var f failure
	call(t, &door.Door{}, "reckon", map[string]any{}, &f)
	assert.Equal(t, "nothing-open", string(f.Error.Code))
	d := opened(t)
	call(t, d, "dance", map[string]any{}, &f)
	assert.Equal(t, "unknown-method", string(f.Error.Code))
	call(t, d, "reckon", map[string]any{"seasonz": 3}, &f)
	assert.Equal(t, "bad-payload", string(f.Error.Code))
	call(t, d, "reckon", map[string]any{"seasons": 2_000_000}, &f)
	assert.Equal(t, "too-many", string(f.Error.Code))
	call(t, d, "column", map[string]any{"id": "nobody"}, &f)
	assert.Equal(t, "unknown-name", string(f.Error.Code))
	call(t, d, "column", map[string]any{"id": "sap"}, &f)
	assert.NotEmpty(t, f.Error.Hint, "nothing was reckoned yet")
}

func TestFunctionsAreListed(t *testing.T) {
	var list []engine.FunctionEntry
	call(t, &door.Door{}, "functions", nil, &list)
	require.Greater(t, len(list), 30)
	assert.Equal(t, "density", list[0].Name)
	assert.NotEmpty(t, list[0].Args)
}
