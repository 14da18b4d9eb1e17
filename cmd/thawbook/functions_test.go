package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
)

func TestEveryFunctionIsExplainedWithinTheWidth(t *testing.T) {
	list := engine.Functions()
	require.NotEmpty(t, list)
	for _, f := range list {
		var out strings.Builder
		explainFunction(&out, false, f)
		n, line := widest(out.String())
		assert.LessOrEqual(t, n, width, line)
		for _, arg := range f.Args {
			assert.Contains(t, out.String(), "\n  "+arg.Name+" ", f.Name)
		}
		assert.Contains(t, out.String(), f.Example)
	}
	var out strings.Builder
	listFunctions(&out, false, list)
	n, line := widest(out.String())
	assert.LessOrEqual(t, n, width, line)
}
