package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestShownCommands(t *testing.T) {
	page := strings.ReplaceAll(`
# Heading

Run 'go run ./cmd/thawbook check a.yaml', which is prose.

'''sh
go run ./cmd/thawbook            # serves the page
go run ./cmd/check
git status
go run ./cmd/thawbook check a.yaml b.yaml
'''

'''yaml
go run ./cmd/thawbook not a command
'''

  '''console
  $ go run ./cmd/thawbook reckon a.yaml \
      --seasons 200
  go run ./cmd/thawbookish no
  Heron Ridge
  $ go run ./cmd/thawbook functions
  '''
`, "'''", "```")
	got, err := shownCommands(strings.NewReader(page))
	require.NoError(t, err)
	assert.Equal(t, []string{
		"go run ./cmd/thawbook check a.yaml b.yaml",
		"go run ./cmd/thawbook reckon a.yaml --seasons 200",
		"go run ./cmd/thawbook functions",
	}, got)
}

func TestReadmeFailsForACommandThatDoes(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "cmd", "thawbook"), 0o755))
	put := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
	}
	put("go.mod", "module thawbook\n")
	put("cmd/thawbook/main.go", "package main\n\nimport \"os\"\n\nfunc main() { println(os.Args[1]); os.Exit(len(os.Args) - 2) }\n")
	tree := tree{dir}
	var log strings.Builder
	assert.Error(t, tree.readme(t.Context(), &log), "no README at all")
	put("README.md", "Nothing to run.\n")
	assert.ErrorContains(t, tree.readme(t.Context(), &log), "shows no command")
	put("README.md", "```sh\ngo run ./cmd/thawbook one two\ngo run ./cmd/thawbook three\n```\n")
	err := tree.readme(t.Context(), &log)
	assert.ErrorContains(t, err, "one two")
	assert.NotContains(t, err.Error(), "three")
	assert.Contains(t, log.String(), "$ go run ./cmd/thawbook three\nthree\n", "the rest are run all the same")
}
