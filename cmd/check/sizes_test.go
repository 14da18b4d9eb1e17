package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWithin(t *testing.T) {
	budgets := []budget{{"reckoner", 100, "people wait"}}
	assert.NoError(t, within(budgets, "reckoner", 100))
	assert.EqualError(t, within(budgets, "reckoner", 101), "reckoner takes 101 bytes sent, over its budget of 100: people wait")
	assert.ErrorContains(t, within(budgets, "other", 1), "no budget")
}

func TestPackedSize(t *testing.T) {
	same, err := packedSize([]byte(strings.Repeat("sap ", 100_000)))
	require.NoError(t, err)
	assert.Less(t, same, 100)
	assert.Positive(t, same)
}

func TestSizesNotesWhatItMeasured(t *testing.T) {
	tree := tree{t.TempDir()}
	var log strings.Builder
	assert.ErrorContains(t, tree.sizes(t.Context(), &log), "no program")
	wasm := tree.path(".build", "wasm")
	require.NoError(t, os.MkdirAll(wasm, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(wasm, "reckoner.wasm"), make([]byte, 5000), 0o644))
	require.NoError(t, tree.sizes(t.Context(), &log))
	notes, err := os.ReadFile(tree.path(".build", "sizes.txt"))
	require.NoError(t, err)
	assert.Regexp(t, `^reckoner: 5000 bytes, \d+ sent\n$`, string(notes))
	assert.Equal(t, string(notes), log.String())
}
