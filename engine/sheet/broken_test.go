package sheet

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/diag"
)

const brokenFiles = "../../testdata/broken"

// told is everything Parse and Resolve tell of a file in testdata/broken.
func told(t *testing.T, file string) diag.List {
	t.Helper()
	source, err := os.ReadFile(filepath.Join(brokenFiles, file))
	require.NoError(t, err)
	d, list := Parse(file, source)
	if d == nil {
		return list
	}
	_, more := Resolve(d, func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(brokenFiles, name)) })
	return append(list, more...)
}

// Every file of testdata/broken says in its first line which one mistake it has
// and where; that one must be told, and no other.
func TestBrokenFiles(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(brokenFiles, "*.yaml"))
	require.NoError(t, err)
	require.Greater(t, len(paths), 70)
	for _, path := range paths {
		file := filepath.Base(path)
		t.Run(strings.TrimSuffix(file, ".yaml"), func(t *testing.T) {
			source, err := os.ReadFile(path)
			require.NoError(t, err)
			first, _, _ := strings.Cut(string(source), "\n")
			wants, is := strings.CutPrefix(first, "# wants: ")
			require.True(t, is, "the first line says what is wrong")
			list := told(t, file)
			require.Len(t, list, 1)
			d := list[0]
			assert.Equal(t, wants, fmt.Sprintf("%s %d:%d", d.Code, d.Place.Line, d.Place.Column), d.Error())
			assert.Equal(t, file, d.Place.File)
			assert.NotEmpty(t, d.Hint, d.Error())
			assert.False(t, strings.HasSuffix(d.Message, "."), d.Message)
		})
	}
}

// The files must leave out no code this package tells.
func TestBrokenFilesHaveEveryCode(t *testing.T) {
	seen := map[diag.Code]bool{}
	paths, _ := filepath.Glob(filepath.Join(brokenFiles, "*.yaml"))
	for _, path := range paths {
		for _, d := range told(t, filepath.Base(path)) {
			seen[d.Code] = true
		}
	}
	for _, code := range []diag.Code{diag.YAMLSyntax, diag.YAMLTooDeep, diag.YAMLAlias, diag.NotASheet, diag.SheetTooNew,
		diag.UnknownKey, diag.DuplicateKey, diag.MissingKey, diag.WrongKind, diag.BadID, diag.DuplicateID, diag.SeveralKinds,
		diag.NoKind, diag.MissingUnit, diag.UnknownUnit, diag.OutOfBounds, diag.MissingCell, diag.UnknownColumn, diag.UnknownTable,
		diag.UnknownChoice, diag.FromMissing, diag.FromCircle, diag.ChangeUnknown, diag.DropUnknown, diag.TooMany, diag.GuessOrder,
		diag.RecordsFew, diag.MovesUnknown, diag.MovesCircle} {
		assert.True(t, seen[code], "no broken file has %s", code)
	}
}
