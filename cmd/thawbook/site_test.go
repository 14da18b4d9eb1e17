package main

import (
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func testSite(t *testing.T) *httptest.Server {
	t.Helper()
	server := httptest.NewServer(newSite(fstest.MapFS{
		"index.html":           {Data: []byte("<title>Thawbook</title>")},
		"reckoner.wasm":        {Data: []byte("\x00asm")},
		"assets/main-a1b2.js":  {Data: []byte("export {}")},
		"scenarios/index.json": {Data: []byte("[]")},
	}))
	t.Cleanup(server.Close)
	return server
}

func TestSite(t *testing.T) {
	server := testSite(t)
	for path, want := range map[string]struct {
		status           int
		contentType, age string
	}{
		"/":                     {200, "text/html; charset=utf-8", "no-cache"},
		"/index.html":           {200, "text/html; charset=utf-8", "no-cache"},
		"/reckoner.wasm":        {200, "application/wasm", "no-cache"},
		"/reckoner.wasm?v=1a2b": {200, "application/wasm", "public, max-age=31536000, immutable"},
		"/assets/main-a1b2.js":  {200, "text/javascript; charset=utf-8", "public, max-age=31536000, immutable"},
		"/scenarios/index.json": {200, "application/json", "no-cache"},
		"/scenarios/":           {404, "text/plain; charset=utf-8", ""},
		"/assets":               {404, "text/plain; charset=utf-8", ""},
		"/nothing.js":           {404, "text/plain; charset=utf-8", ""},
		"/../site_test.go":      {404, "text/plain; charset=utf-8", ""},
		"/..%2f..%2fgo.mod":     {404, "text/plain; charset=utf-8", ""},
	} {
		t.Run(path, func(t *testing.T) {
			answer, err := http.Get(server.URL + path)
			require.NoError(t, err)
			defer answer.Body.Close()
			assert.Equal(t, want.status, answer.StatusCode)
			assert.Equal(t, want.contentType, answer.Header.Get("Content-Type"))
			assert.Equal(t, want.age, answer.Header.Get("Cache-Control"))
			if want.status == 200 {
				assert.Equal(t, contentPolicy, answer.Header.Get("Content-Security-Policy"))
				assert.Equal(t, "nosniff", answer.Header.Get("X-Content-Type-Options"))
			}
		})
	}
}

func TestContentPolicyAdmitsNothingFromElsewhere(t *testing.T) {
	assert.Contains(t, contentPolicy, "default-src 'none'")
	for _, word := range []string{"unsafe-inline", "'unsafe-eval'", "*", "http:", "https:", "data:", "blob:"} {
		assert.NotContains(t, contentPolicy, word)
	}
}

func TestSiteIsOnlyForReading(t *testing.T) {
	server := testSite(t)
	answer, err := http.Post(server.URL+"/", "text/plain", strings.NewReader("x"))
	require.NoError(t, err)
	defer answer.Body.Close()
	assert.Equal(t, http.StatusMethodNotAllowed, answer.StatusCode)
	answer, err = http.Head(server.URL + "/reckoner.wasm")
	require.NoError(t, err)
	defer answer.Body.Close()
	assert.Equal(t, int64(4), answer.ContentLength)
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	assert.Empty(t, body)
}

func TestListenTakesTheNextFreePort(t *testing.T) {
	first, err := listen(0)
	require.NoError(t, err)
	defer first.Close()
	host, port, err := net.SplitHostPort(first.Addr().String())
	require.NoError(t, err)
	assert.Equal(t, "127.0.0.1", host, "this machine only")
	busy, err := strconv.Atoi(port)
	require.NoError(t, err)
	second, err := listen(busy)
	require.NoError(t, err)
	defer second.Close()
	assert.Greater(t, second.Addr().(*net.TCPAddr).Port, busy)
}
