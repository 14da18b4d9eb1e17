package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"go/format"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// staticcheckVersion is pinned here and not in go.mod, so that the tool's own
// modules never become the project's.
const staticcheckVersion = "honnef.co/go/tools/cmd/staticcheck@v0.8.2"

// browserCode is what is also compiled for the browser.
func browserCode() []string { return []string{"./engine/...", "./wasm/..."} }

func forBrowser() []string { return []string{"GOOS=js", "GOARCH=wasm"} }

// formatted names every Go file that gofmt would change.
func (t tree) formatted(_ context.Context, log io.Writer) error {
	wrong := 0
	err := t.eachGoFile(func(path string) error {
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		want, err := format.Source(text)
		if err != nil || !bytes.Equal(text, want) {
			name, _ := filepath.Rel(t.root, path)
			fmt.Fprintln(log, name)
			wrong++
		}
		return nil
	})
	if err == nil && wrong > 0 {
		return fmt.Errorf("%d not formatted: run gofmt -w on them", wrong)
	}
	return err
}

func (t tree) eachGoFile(do func(path string) error) error {
	return filepath.WalkDir(t.root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		hidden := strings.HasPrefix(entry.Name(), ".") && path != t.root
		if entry.IsDir() && (hidden || entry.Name() == "node_modules") {
			return filepath.SkipDir
		}
		if entry.IsDir() || !strings.HasSuffix(path, ".go") {
			return nil
		}
		return do(path)
	})
}

func (t tree) vet(ctx context.Context, log io.Writer) error {
	here := call{dir: t.root, args: []string{"go", "vet", "./..."}}
	browser := call{dir: t.root, env: forBrowser(), args: append([]string{"go", "vet"}, browserCode()...)}
	return errors.Join(here.run(ctx, log), browser.run(ctx, log))
}

// staticcheck installs the tool inside the tree first: run in one go for the
// browser, it would itself be compiled for the browser.
func (t tree) staticcheck(ctx context.Context, log io.Writer) error {
	bin := t.path(".build", "bin")
	install := call{dir: t.root, env: []string{"GOBIN=" + bin}, args: []string{"go", "install", staticcheckVersion}}
	if err := install.run(ctx, log); err != nil {
		return err
	}
	tool := filepath.Join(bin, "staticcheck")
	here := call{dir: t.root, args: []string{tool, "./..."}}
	browser := call{dir: t.root, env: forBrowser(), args: append([]string{tool}, browserCode()...)}
	return errors.Join(here.run(ctx, log), browser.run(ctx, log))
}

// goTest watches for data races where there is a C compiler, which the race
// detector needs.
func (t tree) goTest(ctx context.Context, log io.Writer) error {
	args := []string{"go", "test", "-race", "./..."}
	if said, err := exec.CommandContext(ctx, "go", "env", "CGO_ENABLED").Output(); err != nil || strings.TrimSpace(string(said)) != "1" {
		if inCI() {
			return errors.New("no C compiler, which the race detector needs")
		}
		fmt.Fprintln(log, "no C compiler: run without watching for data races")
		args = []string{"go", "test", "./..."}
	}
	return call{dir: t.root, args: args}.run(ctx, log)
}

// wasmTest runs the tests of all that the page runs, as the page runs it. The
// environment is cut to what Go needs, because the Go runtime for JavaScript
// refuses a long one.
func (t tree) wasmTest(ctx context.Context, log io.Writer) error {
	said, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	runner := filepath.Join(strings.TrimSpace(string(said)), "lib", "wasm", "go_js_wasm_exec")
	env := forBrowser()
	for _, name := range []string{"PATH", "HOME", "TMPDIR", "GOFLAGS", "GOCACHE", "GOMODCACHE", "GOPATH", "GOPROXY", "GOSUMDB", "GONOSUMDB", "GOTOOLCHAIN"} {
		if value, ok := os.LookupEnv(name); ok {
			env = append(env, name+"="+value)
		}
	}
	args := append([]string{"go", "test", "-exec", runner}, browserCode()...)
	return call{dir: t.root, env: env, bare: true, args: args}.run(ctx, log)
}
