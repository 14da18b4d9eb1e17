package main

import (
	"io/fs"
	"net/http"
	"path"
	"strings"
)

// contentPolicy admits what the page is made of and nothing from elsewhere:
// its own files, and WebAssembly compiled from them.
const contentPolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self'; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; " +
	"frame-ancestors 'none'"

// newSite serves the files of the built page. Folders are not listed.
func newSite(files fs.FS) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only for reading", http.StatusMethodNotAllowed)
			return
		}
		name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
		if name == "" {
			name = "index.html"
		}
		info, err := fs.Stat(files, name)
		if err != nil || info.IsDir() {
			http.Error(w, "nothing of that name here", http.StatusNotFound)
			return
		}
		header := w.Header()
		header.Set("Content-Security-Policy", contentPolicy)
		header.Set("Content-Type", contentType(name))
		header.Set("Cache-Control", caching(r))
		header.Set("X-Content-Type-Options", "nosniff")
		header.Set("Referrer-Policy", "no-referrer")
		header.Set("Cross-Origin-Opener-Policy", "same-origin")
		serveFile(w, r, files, name)
	})
}

// serveFile answers with the file itself, never with the redirect that net/http
// gives for a name that ends in index.html.
func serveFile(w http.ResponseWriter, r *http.Request, files fs.FS, name string) {
	request := r.Clone(r.Context())
	request.URL.Path = "/" + strings.TrimSuffix(name, "index.html")
	http.FileServerFS(files).ServeHTTP(w, request)
}

// caching lets the browser keep what can never change under its name: a file
// that is asked for with its hash. All else is asked for again each time, so
// that a rebuilt page is seen at once.
func caching(r *http.Request) string {
	if r.URL.Query().Has("v") || strings.HasPrefix(path.Clean(r.URL.Path), "/assets/") {
		return "public, max-age=31536000, immutable"
	}
	return "no-cache"
}

// contentType goes by the name alone: what the system's own table says differs
// between machines, and a browser refuses a program with the wrong type.
func contentType(name string) string {
	switch path.Ext(name) {
	case ".html":
		return "text/html; charset=utf-8"
	case ".js", ".mjs":
		return "text/javascript; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".json", ".map":
		return "application/json"
	case ".wasm":
		return "application/wasm"
	case ".svg":
		return "image/svg+xml"
	case ".png":
		return "image/png"
	case ".ico":
		return "image/x-icon"
	case ".woff2":
		return "font/woff2"
	case ".webmanifest":
		return "application/manifest+json"
	case ".yaml", ".txt":
		return "text/plain; charset=utf-8"
	}
	return "application/octet-stream"
}
