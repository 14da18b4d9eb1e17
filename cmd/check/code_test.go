package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFormatted(t *testing.T) {
	tree := tree{t.TempDir()}
	put := func(name, text string) {
		path := tree.path(filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	}
	put("a.go", "package a\n")
	put(".build/b.go", "package  b\n")
	put("web/node_modules/c/c.go", "package  c\n")
	var log strings.Builder
	require.NoError(t, tree.formatted(t.Context(), &log))
	put("deep/d.go", "package  d\n")
	put("e.go", "package e {\n")
	assert.ErrorContains(t, tree.formatted(t.Context(), &log), "2 not formatted")
	assert.ElementsMatch(t, []string{filepath.Join("deep", "d.go"), "e.go"}, strings.Fields(log.String()))
}
