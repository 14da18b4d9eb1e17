package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEveryCodeIsToldAndTested holds the list of diagnostic codes to the tree:
// each is told somewhere, and some test has the input that gets it.
func TestEveryCodeIsToldAndTested(t *testing.T) {
	root := filepath.Join("..", "..")
	list, err := os.ReadFile(filepath.Join(root, "engine", "diag", "codes.go"))
	require.NoError(t, err)
	told, tested := texts(t, root)
	codes := regexp.MustCompile(`(?m)^\t(\w+) +Code = "([^"]+)"`).FindAllStringSubmatch(string(list), -1)
	require.Greater(t, len(codes), 30)
	for _, c := range codes {
		name, code := "diag."+c[1], c[2]
		assert.True(t, regexp.MustCompile(regexp.QuoteMeta(name)+`\b`).MatchString(told), "%s is told nowhere", code)
		assert.True(t, strings.Contains(tested, name) || strings.Contains(tested, code), "%s has no test", code)
	}
}

// texts joins the engine's sources, and its tests with their data.
func texts(t *testing.T, root string) (told, tested string) {
	var plain, tests strings.Builder
	for _, dir := range []string{"engine", "wasm", "cmd/thawbook", "testdata"} {
		require.NoError(t, filepath.WalkDir(filepath.Join(root, dir), func(path string, entry os.DirEntry, err error) error {
			if err != nil || entry.IsDir() || strings.HasSuffix(path, ".csv") {
				return err
			}
			text, err := os.ReadFile(path)
			switch {
			case strings.HasSuffix(path, "_test.go") || !strings.HasSuffix(path, ".go"):
				tests.Write(text)
			case filepath.Base(path) != "codes.go":
				plain.Write(text)
			}
			return err
		}))
	}
	return plain.String(), tests.String()
}
