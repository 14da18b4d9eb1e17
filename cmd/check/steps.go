package main

// steps lists everything that is checked. Order matters only for who goes
// first when several could: long chains lead.
func (t tree) steps() []step {
	return []step{
		{name: "page", about: "the page builds the way a person builds it", run: t.buildPage},
		{name: "gofmt", about: "Go code is formatted", run: t.formatted},
		{name: "vet", about: "go vet, for this machine and for the browser", run: t.vet},
		{name: "go-test", about: "Go tests, watching for data races", run: t.goTest},
		{name: "wasm-test", about: "the engine's tests as WebAssembly under Node", run: t.wasmTest},
		{name: "staticcheck", about: "static analysis, for this machine and for the browser", run: t.staticcheck},
		{name: "sizes", about: "WebAssembly programs within their budget", needs: []string{"page"}, run: t.sizes},
		{name: "types", about: "the page's types", needs: []string{"page"}, run: t.npm("types")},
		{name: "page-test", about: "the page's own tests", needs: []string{"page"}, run: t.npm("test")},
		{name: "workbook", about: "workbooks read and worked by programs that are not ours", needs: []string{"page"}, run: t.npm("workbook")},
		{name: "readme", about: "the commands that README shows", needs: []string{"page"}, run: t.readme},
		{name: "browser", about: "a browser to test with", run: t.browser},
		{name: "e2e", about: "the page in a real browser, served by the real server", needs: []string{"page", "browser"}, alone: true, run: t.endToEnd},
	}
}
