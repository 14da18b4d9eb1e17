package main

import (
	"bufio"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// builtProject is a tree whose page is newer than all its sources.
func builtProject(t *testing.T) string {
	t.Helper()
	root := t.TempDir()
	for name, minutes := range map[string]int{
		"wasm/reckoner/main.go": 1, "web/package-lock.json": 1, "web/src/main.ts": 1,
		".build/wasm/reckoner.wasm": 2, ".build/wasm/wasm_exec.js": 3,
		"web/node_modules/.package-lock.json": 4, ".build/page/index.html": 5, "go.mod": 1,
	} {
		write(t, filepath.Join(root, filepath.FromSlash(name)), minutes)
	}
	require.NoError(t, os.WriteFile(filepath.Join(root, "go.mod"), []byte("module thawbook\n"), 0o644))
	setTime(t, filepath.Join(root, "go.mod"), 1)
	for _, folder := range []string{"wasm", "wasm/reckoner", "web", "web/src", ".build/wasm"} {
		setTime(t, filepath.Join(root, filepath.FromSlash(folder)), 1)
	}
	return root
}

func TestServe(t *testing.T) {
	t.Chdir(builtProject(t))
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	out, w := io.Pipe()
	var progress strings.Builder
	ended := make(chan error, 1)
	go func() {
		ended <- serve(ctx, &terminal{out: w, err: &progress}, 0)
		w.Close()
	}()
	line, err := bufio.NewReader(out).ReadString('\n')
	require.NoError(t, err)
	go io.Copy(io.Discard, out)
	address := regexp.MustCompile(`^Thawbook is at (http://127\.0\.0\.1:\d+/)\n$`).FindStringSubmatch(line)
	require.NotNil(t, address, line)
	answer, err := http.Get(address[1])
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	assert.Equal(t, "x", string(body))

	stop()
	require.NoError(t, <-ended, "stopping it is no failure")
	assert.Empty(t, progress.String(), "nothing was built, because nothing was out of date")
	_, err = http.Get(address[1])
	assert.Error(t, err)
}
