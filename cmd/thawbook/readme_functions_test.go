package main

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
)

var update = flag.Bool("update", false, "write README's list of functions anew")

// TestReadmeFunctions keeps README's list of functions that of the engine. With
// -update it writes the list anew.
func TestReadmeFunctions(t *testing.T) {
	const file = "../../README.md"
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	head, rest, ok := strings.Cut(string(text), "<!-- functions:")
	require.True(t, ok)
	note, rest, ok := strings.Cut(rest, "-->\n")
	require.True(t, ok)
	_, tail, ok := strings.Cut(rest, "<!-- /functions -->")
	require.True(t, ok)
	want := head + "<!-- functions:" + note + "-->\n" + functionRows() + "<!-- /functions -->" + tail
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(want), 0o644))
		return
	}
	assert.Equal(t, want, string(text), "run go test ./cmd/thawbook -run TestReadmeFunctions -update")
}

func functionRows() string {
	var b strings.Builder
	b.WriteString("| function | comes to | what it is |\n|---|---|---|\n")
	for _, f := range engine.Functions() {
		fmt.Fprintf(&b, "| `%s` | %s | %s |\n", signature(f), f.Result, f.Summary)
	}
	return b.String()
}
