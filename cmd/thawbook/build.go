package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// worksWithout says what can be done on a machine that cannot build the page.
const worksWithout = "the command line still works: thawbook check FILE, thawbook reckon FILE"

// oldestNode is the first major version of Node.js that the page's build runs on.
const oldestNode = 20

// step is one part of building the page, done only when what it makes is
// missing or older than its sources.
type step struct {
	doing string // shown while it runs
	stale func() (bool, error)
	run   func(context.Context) error
}

// build makes whatever of the page is missing or older than its sources, and
// shows each step with the time it took.
func (p project) build(ctx context.Context, w io.Writer) error {
	steps, err := p.steps()
	if err != nil {
		return cannotBuild(err)
	}
	checked := false
	for _, s := range steps {
		stale, err := s.stale()
		if err != nil {
			return cannotBuild(err)
		}
		if !stale {
			continue
		}
		if !checked {
			// Before the first step, so that nobody waits for a build that cannot end.
			if err := haveTools(ctx); err != nil {
				return err
			}
			checked = true
		}
		start := time.Now()
		fmt.Fprintf(w, "%s ", left(s.doing+" …", 44))
		if err := s.run(ctx); err != nil {
			fmt.Fprintln(w, "failed")
			return cannotBuild(err)
		}
		fmt.Fprintf(w, "%6.1f s\n", time.Since(start).Seconds())
	}
	return nil
}

func cannotBuild(err error) error {
	return failure{status: statusSheetWrong, message: "the page cannot be built: " + err.Error(), hint: worksWithout}
}

// steps lists the parts in order; a later one may need what an earlier made.
func (p project) steps() ([]step, error) {
	modules, err := p.modules()
	if err != nil {
		return nil, err
	}
	wasm := p.path(".build", "wasm")
	goSources := []string{p.path("go.mod"), p.path("go.sum"), p.path("engine"), p.path("wasm")}
	first := filepath.Join(wasm, modules[0]+".wasm")
	steps := []step{{
		doing: "Fetching the Go modules",
		stale: func() (bool, error) { return older(first, p.path("go.mod"), p.path("go.sum")) },
		run:   p.command(p.root, nil, "go", "mod", "download"),
	}}
	for _, name := range modules {
		target := filepath.Join(wasm, name+".wasm")
		compile := p.command(p.root, []string{"GOOS=js", "GOARCH=wasm"},
			"go", slices.Concat([]string{"build"}, moduleFlags(), []string{"-o", target, "./wasm/" + name})...)
		steps = append(steps, step{
			doing: "Building the " + name,
			stale: func() (bool, error) { return older(target, goSources...) },
			// Linking leaves a file alone whose contents would be the same; it is
			// then still newer than its sources.
			run: func(ctx context.Context) error { return errors.Join(compile(ctx), touch(target)) },
		})
	}
	return append(steps, p.loaderStep(), p.installStep(), p.pageStep()), nil
}

// moduleFlags build a module for sending: without symbols, and with calls put in
// line only in the rooms where the time goes. Copies of small functions all over
// the rest cost a seventh of what is sent and bring no speed that can be measured.
func moduleFlags() []string {
	flags := []string{"-trimpath", "-ldflags=-s -w", "-gcflags=all=-l"}
	for _, hot := range []string{"math/...", "thawbook/engine/columns", "thawbook/engine/draw", "thawbook/engine/outcome", "thawbook/engine/trade"} {
		flags = append(flags, "-gcflags="+hot+"=")
	}
	return flags
}

// loaderStep copies the loader that belongs to the Go toolchain in use, so
// that it always fits the programs built with it.
func (p project) loaderStep() step {
	target := p.path(".build", "wasm", "wasm_exec.js")
	return step{
		doing: "Copying the Go loader",
		stale: func() (bool, error) { return older(target, p.path(".build", "wasm", "reckoner.wasm")) },
		run: func(ctx context.Context) error {
			root, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
			if err != nil {
				return err
			}
			text, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
			if err != nil {
				return err
			}
			// Touched, because the system's own stamp on a write may lag the clock
			// by some milliseconds and so stand before the module's.
			return errors.Join(os.WriteFile(target, text, 0o644), touch(target))
		},
	}
}

func (p project) installStep() step {
	installed := p.path("web", "node_modules", ".package-lock.json")
	return step{
		doing: "Installing the page's packages",
		stale: func() (bool, error) { return older(installed, p.path("web", "package-lock.json")) },
		// No package's own script runs: none is needed, and none is trusted.
		run: p.command(p.path("web"), nil, "npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund"),
	}
}

func (p project) pageStep() step {
	index := filepath.Join(p.page(), "index.html")
	build := p.command(p.path("web"), nil, "npm", "run", "build")
	return step{
		doing: "Building the page",
		stale: func() (bool, error) {
			return older(index, p.path("web"), p.path("scenarios"), p.path(".build", "wasm"))
		},
		run: func(ctx context.Context) error { return errors.Join(build(ctx), touch(index)) },
	}
}

// command makes a step's run of one program; what it printed is in the error.
func (p project) command(dir string, env []string, name string, args ...string) func(context.Context) error {
	return func(ctx context.Context) error {
		cmd := exec.CommandContext(ctx, name, args...)
		cmd.Dir = dir
		cmd.Env = append(os.Environ(), env...)
		said, err := cmd.CombinedOutput()
		if err != nil {
			return fmt.Errorf("%s %s: %w\n%s", name, strings.Join(args, " "), err, strings.TrimSpace(string(said)))
		}
		return nil
	}
}

func touch(path string) error {
	now := time.Now()
	return os.Chtimes(path, now, now)
}

// haveTools looks for the programs that build the page and says plainly which
// is missing or too old.
func haveTools(ctx context.Context) error {
	var missing []string
	for _, tool := range []string{"go", "node", "npm"} {
		if _, err := exec.LookPath(tool); err != nil {
			missing = append(missing, `"`+tool+`"`)
		}
	}
	if len(missing) > 0 {
		return failure{
			status:  statusSheetWrong,
			message: "the page cannot be built: " + strings.Join(missing, " and ") + " not found on this machine",
			hint: fmt.Sprintf("install Go and Node.js %d or later (npm comes with it, or as a package of its own)\n%s",
				oldestNode, worksWithout),
		}
	}
	said, err := exec.CommandContext(ctx, "node", "--version").Output()
	if err != nil {
		return cannotBuild(err)
	}
	if version := strings.TrimSpace(string(said)); nodeMajor(version) < oldestNode {
		return failure{
			status:  statusSheetWrong,
			message: fmt.Sprintf("the page cannot be built: node is %s, and %d or later is needed", version, oldestNode),
			hint:    worksWithout,
		}
	}
	return nil
}

// nodeMajor reads "v20.1.2" as 20, anything else as 0.
func nodeMajor(version string) int {
	match := regexp.MustCompile(`^v(\d+)\.`).FindStringSubmatch(version)
	if match == nil {
		return 0
	}
	major, err := strconv.Atoi(match[1])
	if err != nil {
		return 0
	}
	return major
}
