package door_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

func smallFiles() map[string]string {
	return map[string]string{
		"small.yaml": small,
		"more.yaml":  "thawbook: 1\ntitle: More\nfrom: small.yaml\nchange:\n  taps: 12\n",
		"less.yaml":  "thawbook: 1\ntitle: Less\nfrom: small.yaml\nchange:\n  each: {guess: {low: 4, likely: 6, high: 8}}\n",
	}
}

func TestCompareWithOtherSheets(t *testing.T) {
	d := opened(t)
	steps := 0
	d.Progress = func(done, total int) { steps++; assert.LessOrEqual(t, done, total) }
	ask := map[string]any{"with": []string{"more.yaml", "less.yaml"}, "files": smallFiles(), "seasons": 500, "system": "metric"}
	var c engine.Comparison
	call(t, d, "compare", ask, &c)
	require.Len(t, c.Scenarios, 3)
	assert.Equal(t, "Small", c.Scenarios[0].Title)
	require.Len(t, c.Lines, 1)
	assert.Equal(t, "L", c.Lines[0].Unit)
	assert.InDelta(t, 1, *c.Lines[0].Difference[0].Ahead, 0, "more taps, more sap, in every season")
	assert.InEpsilon(t, 0.2**c.Lines[0].Values[0].P50, *c.Lines[0].Difference[0].P50, 1e-12)
	assert.Positive(t, steps)

	// After an edit of the open sheet the others are as they were.
	var v engine.View
	call(t, d, "edit", map[string]any{"edits": []any{map[string]any{"about": "taps", "set": map[string]any{"is": 12}}}}, &v)
	call(t, d, "compare", ask, &c)
	assert.InDelta(t, 1, *c.Lines[0].Difference[0].Even, 0)

	// A file that says something else is read again.
	files := smallFiles()
	files["more.yaml"] = strings.Replace(files["more.yaml"], "12", "24", 1)
	ask["files"] = files
	call(t, d, "compare", ask, &c)
	assert.InEpsilon(t, *c.Lines[0].Values[0].P50, *c.Lines[0].Difference[0].P50, 1e-12)
}

func TestFlipBesideAnotherSheet(t *testing.T) {
	d := opened(t)
	var told struct {
		Flips []engine.Flip `json:"flips"`
	}
	call(t, d, "flip", map[string]any{"with": []string{"more.yaml"}, "files": smallFiles(), "about": "each", "outcome": "sap", "low": 0, "high": 20}, &told)
	require.Len(t, told.Flips, 1)
	assert.Empty(t, told.Flips[0].Flips)
	assert.Len(t, told.Flips[0].Curve, 21)
	assert.Contains(t, told.Flips[0].Sentence, "does not flip")
}

func TestCompareFailuresAreAnswers(t *testing.T) {
	type failure struct {
		Error door.Failure `json:"error"`
	}
	for name, c := range map[string]struct {
		method  string
		payload map[string]any
		code    string
	}{
		"no other":      {"compare", map[string]any{"files": smallFiles()}, "bad-payload"},
		"no such file":  {"compare", map[string]any{"with": []string{"gone.yaml"}, "files": smallFiles()}, "from-missing"},
		"no such line":  {"compare", map[string]any{"with": []string{"more.yaml"}, "files": smallFiles(), "on": []string{"syrup"}}, "unknown-name"},
		"unknown key":   {"compare", map[string]any{"with": []string{"more.yaml"}, "upon": 1}, "bad-payload"},
		"no such about": {"flip", map[string]any{"with": []string{"more.yaml"}, "files": smallFiles(), "about": "x", "outcome": "sap"}, "unknown-name"},
		"formula":       {"flip", map[string]any{"with": []string{"more.yaml"}, "files": smallFiles(), "about": "sap", "outcome": "sap"}, "not-comparable"},
	} {
		var f failure
		call(t, opened(t), c.method, c.payload, &f)
		assert.Equal(t, c.code, string(f.Error.Code), name)
		assert.NotEmpty(t, f.Error.Message, name)
		call(t, &door.Door{}, c.method, c.payload, &f)
	}
	var f failure
	call(t, &door.Door{}, "compare", map[string]any{"with": []string{"a"}}, &f)
	assert.Equal(t, "nothing-open", string(f.Error.Code))
}
