package door_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

const choice = `thawbook: 1
title: Ridge, wood
seasons: 1000
chapters:
  - title: All
    lines:
      - {id: work, label: Work, guess: {low: 4, likely: 9.9, high: 15.8}, shape: even, unit: h, floor: 0, note: Time ten pallets.}
      - {id: fuel, label: Fuel, choose: wood, among: [wood, gas]}
      - {id: cost, label: Cost, formula: 'fuel == "wood" ? work * of(10, "$/h") : of(100, "$")', unit: $, headline: {better: less}}
`

func openedChoice(t *testing.T) (*door.Door, map[string]string) {
	files := map[string]string{"wood.yaml": choice, "gas.yaml": "thawbook: 1\ntitle: Ridge, gas\nfrom: wood.yaml\nchange: {fuel: gas}\n"}
	d := &door.Door{}
	var v engine.View
	call(t, d, "open", map[string]any{"name": "wood.yaml", "files": files}, &v)
	require.Empty(t, v.Diagnostics)
	return d, files
}

func TestMoversOfTheOpenSheet(t *testing.T) {
	d, _ := openedChoice(t)
	var told int
	d.Progress = func(done, total int) {
		assert.LessOrEqual(t, done, total)
		told++
	}
	var m engine.Movers
	call(t, d, "movers", map[string]any{"for": "cost", "seasons": 500, "seed": 7, "system": "metric"}, &m)
	assert.Equal(t, 500, m.Seasons)
	assert.Equal(t, uint64(7), m.Seed)
	require.Len(t, m.Movers, 1)
	assert.Equal(t, "work", m.Movers[0].Guesses[0].ID)
	assert.Equal(t, "up", m.Movers[0].Guesses[0].Direction)
	assert.InDelta(t, 1, *m.Movers[0].Total.Value, 3**m.Movers[0].Total.Error, "it is the only one")
	assert.Positive(t, told)
}

func TestWorthBesideAnotherSheet(t *testing.T) {
	d, files := openedChoice(t)
	var w engine.Worth
	call(t, d, "worth", map[string]any{"with": []string{"gas.yaml"}, "files": files, "on": "cost"}, &w)
	require.Len(t, w.Scenarios, 2)
	assert.Equal(t, "gas", w.Scenarios[1].Short)
	require.Len(t, w.Guesses, 1)
	assert.Equal(t, "Time ten pallets.", w.Guesses[0].Note)
	assert.InDelta(t, 15, w.Guesses[0].Worth.Value, 2)
	assert.Positive(t, w.All.Value)
	call(t, d, "worth", map[string]any{"with": []string{"gas.yaml"}, "files": files, "on": "cost", "better": "more"}, &w)
	assert.Equal(t, "more", w.Better)
}

func TestMoversAndWorthFailuresAreAnswers(t *testing.T) {
	d, files := openedChoice(t)
	for name, c := range map[string]struct {
		method  string
		payload map[string]any
		code    string
	}{
		"no such line":        {"movers", map[string]any{"for": "coast"}, "unknown-name"},
		"a choice":            {"movers", map[string]any{"for": "fuel"}, "not-a-number"},
		"unknown key":         {"movers", map[string]any{"of": "cost"}, "bad-payload"},
		"too many seasons":    {"movers", map[string]any{"for": "cost", "seasons": 10_000_000}, "too-many"},
		"no other":            {"worth", map[string]any{"files": files, "on": "cost"}, "bad-payload"},
		"not money":           {"worth", map[string]any{"files": files, "with": []string{"gas.yaml"}, "on": "work"}, "wrong-unit"},
		"no such way to be":   {"worth", map[string]any{"files": files, "with": []string{"gas.yaml"}, "on": "cost", "better": "cheap"}, "bad-question"},
		"unknown key beside":  {"worth", map[string]any{"upon": 1}, "bad-payload"},
		"no such other sheet": {"worth", map[string]any{"files": files, "with": []string{"gone.yaml"}, "on": "cost"}, "from-missing"},
	} {
		var f struct {
			Error door.Failure `json:"error"`
		}
		call(t, d, c.method, c.payload, &f)
		assert.Equal(t, c.code, string(f.Error.Code), name)
		assert.NotEmpty(t, f.Error.Message, name)
	}
	for _, method := range []string{"movers", "worth"} {
		var f struct {
			Error door.Failure `json:"error"`
		}
		call(t, &door.Door{}, method, map[string]any{}, &f)
		assert.Equal(t, "nothing-open", string(f.Error.Code), method)
	}
}
