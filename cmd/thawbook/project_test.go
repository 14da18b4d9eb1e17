package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// write makes a file that was last changed so many minutes after a fixed time.
func write(t *testing.T, path string, minutes int) {
	t.Helper()
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(t, os.WriteFile(path, []byte("x"), 0o644))
	setTime(t, path, minutes)
}

func setTime(t *testing.T, path string, minutes int) {
	t.Helper()
	at := time.Date(2024, 3, 1, 12, minutes, 0, 0, time.UTC)
	require.NoError(t, os.Chtimes(path, at, at))
}

func TestOlder(t *testing.T) {
	dir := t.TempDir()
	target, source := filepath.Join(dir, "made"), filepath.Join(dir, "src")
	is := func(want bool, why string, sources ...string) {
		t.Helper()
		got, err := older(target, sources...)
		require.NoError(t, err)
		assert.Equal(t, want, got, why)
	}
	write(t, filepath.Join(source, "deep", "a.go"), 1)
	setTime(t, filepath.Join(source, "deep"), 1)
	setTime(t, source, 1)
	is(true, "missing", source)
	write(t, target, 5)
	is(false, "newer than every source", source)
	is(false, "a source that is not there does not count", source, filepath.Join(dir, "none"))
	setTime(t, filepath.Join(source, "deep", "a.go"), 6)
	is(true, "a file deep inside changed", source)
	setTime(t, filepath.Join(source, "deep", "a.go"), 1)
	setTime(t, filepath.Join(source, "deep"), 6)
	is(true, "a file was removed, which changes only its folder", source)
	setTime(t, filepath.Join(source, "deep"), 1)
	write(t, filepath.Join(source, "node_modules", "b.js"), 9)
	setTime(t, filepath.Join(source, "node_modules"), 9)
	setTime(t, source, 1)
	is(false, "installed packages are no source", source)
}

func TestFindProject(t *testing.T) {
	root := t.TempDir()
	inside := filepath.Join(root, "a", "b")
	require.NoError(t, os.MkdirAll(inside, 0o755))
	_, err := findProject(inside)
	var f failure
	require.ErrorAs(t, err, &f)
	assert.Equal(t, statusSheetWrong, f.status)
	assert.Contains(t, f.hint, "thawbook reckon FILE")

	require.NoError(t, os.WriteFile(filepath.Join(root, "a", "go.mod"), []byte("module other\n"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(root, "go.mod"), []byte("module thawbook\n\ngo 1.26\n"), 0o644))
	p, err := findProject(inside)
	require.NoError(t, err)
	assert.Equal(t, root, p.root, "another module's folder is passed by")
}

func TestNodeMajor(t *testing.T) {
	for version, want := range map[string]int{"v20.20.2": 20, "v8.1.0": 8, "20": 0, "": 0, "v99999999999999999999.1": 0} {
		assert.Equal(t, want, nodeMajor(version), version)
	}
}

func TestCopyTree(t *testing.T) {
	from, to := t.TempDir(), filepath.Join(t.TempDir(), "new", "site")
	write(t, filepath.Join(from, "index.html"), 1)
	write(t, filepath.Join(from, "assets", "a.js"), 1)
	write(t, filepath.Join(to, "kept.txt"), 1)
	n, err := copyTree(to, from)
	require.NoError(t, err)
	assert.Equal(t, 2, n)
	for _, name := range []string{"index.html", "assets/a.js", "kept.txt"} {
		assert.FileExists(t, filepath.Join(to, name))
	}
}
