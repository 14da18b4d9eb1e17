package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// room is a package, or several under one path, and the floor it stands on. A
// room may lean only on rooms of lower floors.
type room struct {
	path  string
	floor int
	never []string // rooms below that it must not lean on all the same
	why   string
}

func rooms() []room {
	return []room{
		{path: "engine/diag", floor: 0, why: "every stage complains with it, so it can lean on none of them"},
		{path: "engine/units", floor: 0, why: "dimensions are the ground that sheets and formulas stand on"},
		{path: "engine/sheet", floor: 1, why: "the document says what is written, not what it comes to"},
		{path: "engine/trade", floor: 1, why: "an equation can be read and tested by someone who knows only syrup"},
		{path: "engine/draw", floor: 1, why: "a stream of chances knows nothing of what is drawn from it"},
		{path: "engine/formula", floor: 2, why: "formulas name lines of a sheet and call trade functions"},
		{path: "engine/season", floor: 2, why: "the walk joins trade facts and draws, and runs without a sheet"},
		{path: "engine/columns", floor: 3, why: "the run sees only checked formulas"},
		{path: "engine/outcome", floor: 4, why: "answers are made from finished columns"},
		{path: "engine/workbook", floor: 4, never: []string{"engine/columns", "engine/draw"}, why: "a workbook holds what a sheet says; reading a stranger's file must not reach the run"},
		{path: "engine", floor: 5, why: "the front door joins the rooms for those outside"},
		{path: "engine/partner", floor: 6, never: []string{"engine/columns", "engine/draw", "engine/trade"}, why: "joins the front door and the workbook, which the front door must not carry into the page's first module"},
		{path: "wasm", floor: 7, why: "a door for the page: it passes on and works nothing out"},
		{path: "cmd/thawbook", floor: 7, never: []string{"engine/trade", "engine/columns", "engine/draw", "engine/formula"}, why: "a command shows what the front door answers and works nothing out"},
		{path: "cmd/check", floor: 7, never: []string{"engine"}, why: "what judges the tree must build when the tree does not"},
	}
}

// banned is a package that must stay out of a program, or a part of one.
type banned struct {
	path string // with everything under it
	why  string
}

// engineNever is what no room of the engine imports itself, on any machine.
func engineNever() []banned {
	return []banned{
		{"net", "what a person enters goes nowhere"},
		{"os", "files are handed in as bytes, so that the page and the command line are one"},
		{"io/ioutil", "another way to the file system"},
		{"syscall", "another way to the file system and the network"},
		{"time", "the same sheet and seed give the same seasons whenever they are run"},
		{"math/rand", "every draw comes from a stream that is keyed by the sheet's seed"},
		{"crypto/rand", "every draw comes from a stream that is keyed by the sheet's seed"},
		{"unsafe", "a formula from a stranger must not be able to reach past the language"},
		{"plugin", "nothing is loaded that was not built in"},
	}
}

// browserNever is what the page's program must not hold, however deep: each
// makes everyone who opens the page wait, or cannot work there.
func browserNever() []banned {
	return []banned{
		{"net/http", "a megabyte, and the page fetches with the browser's own means"},
		{"crypto/tls", "comes with net/http"},
		{"os/exec", "there are no programs to start in a browser"},
		{"github.com/spf13/cobra", "the command line's"},
		{"github.com/stretchr/testify", "the tests'"},
		{"gonum.org/v1/gonum", "the tests' referee: a program that needs it is judged by itself"},
		{"thawbook/engine/workbook", "fetched only when someone hands over or takes back"},
		{"thawbook/cmd", "the command line's"},
	}
}

type listed struct {
	ImportPath string
	Imports    []string
	Deps       []string
}

// list asks the Go command about packages, for this machine or for another.
func list(t *testing.T, env []string, patterns ...string) []listed {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-json=ImportPath,Imports,Deps"}, patterns...)...)
	cmd.Dir = "../.."
	cmd.Env = append(os.Environ(), env...)
	var said, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &complaint
	require.NoError(t, cmd.Run(), complaint.String())
	var packages []listed
	for d := json.NewDecoder(&said); ; {
		var p listed
		err := d.Decode(&p)
		if err == io.EOF {
			return packages
		}
		require.NoError(t, err)
		packages = append(packages, p)
	}
}

// under reports whether path is root or stands under it.
func under(path, root string) bool {
	return path == root || strings.HasPrefix(path, root+"/")
}

// roomOf finds the room with the longest path that the package stands in. The
// front door is the package engine alone: what stands under it needs a row.
func roomOf(rooms []room, path string) (room, bool) {
	path = strings.TrimPrefix(path, "thawbook/")
	best, found := room{}, false
	for _, r := range rooms {
		in := under(path, r.path) && (r.path != "engine" || path == "engine")
		if in && len(r.path) > len(best.path) {
			best, found = r, true
		}
	}
	return best, found
}

// wrongArrows names every import between rooms that does not point down.
func wrongArrows(rooms []room, packages []listed) []string {
	var wrong []string
	for _, p := range packages {
		from, ok := roomOf(rooms, p.ImportPath)
		if !ok {
			wrong = append(wrong, p.ImportPath+" is in no room: give it a row with its floor and a reason")
			continue
		}
		for _, path := range p.Imports {
			to, ok := roomOf(rooms, path)
			if !under(path, "thawbook") || !ok || to.path == from.path {
				continue
			}
			if to.floor >= from.floor {
				wrong = append(wrong, p.ImportPath+" imports "+path+", which does not stand below it")
			} else if slices.ContainsFunc(from.never, func(never string) bool { return under(to.path, never) }) {
				wrong = append(wrong, p.ImportPath+" imports "+path+": "+from.why)
			}
		}
	}
	return wrong
}

// imported names every banned package among the imports that of picks.
func imported(bans []banned, packages []listed, of func(listed) []string) []string {
	var wrong []string
	for _, p := range packages {
		for _, path := range of(p) {
			for _, b := range bans {
				if under(path, b.path) {
					wrong = append(wrong, p.ImportPath+" imports "+path+": "+b.why)
				}
			}
		}
	}
	return wrong
}

func direct(p listed) []string { return p.Imports }
func deep(p listed) []string   { return p.Deps }

func TestArrowsPointDown(t *testing.T) {
	for name, env := range map[string][]string{"this machine": nil, "browser": forBrowser()} {
		t.Run(name, func(t *testing.T) {
			packages := list(t, env, "thawbook/engine/...", "thawbook/wasm/...")
			if env == nil {
				packages = list(t, nil, "thawbook/...")
			}
			require.NotEmpty(t, packages)
			assert.Empty(t, wrongArrows(rooms(), packages))
			assert.Empty(t, imported(engineNever(), slices.DeleteFunc(packages, outsideEngine), direct))
		})
	}
}

func outsideEngine(p listed) bool { return !under(p.ImportPath, "thawbook/engine") }

func TestThePageCarriesNothingItDoesNotNeed(t *testing.T) {
	packages := list(t, forBrowser(), "thawbook/wasm/reckoner")
	require.Len(t, packages, 1)
	require.Contains(t, packages[0].Deps, "thawbook/engine", "the reckoner holds the engine")
	assert.Empty(t, imported(browserNever(), packages, deep))
}

func TestEveryRowHasAReason(t *testing.T) {
	for _, r := range rooms() {
		assert.NotEmpty(t, r.why, r.path)
	}
	for _, b := range append(engineNever(), browserNever()...) {
		assert.NotEmpty(t, b.why, b.path)
	}
}

// The tests above would also pass if these did nothing.
func TestWrongArrowsAreSeen(t *testing.T) {
	rooms := []room{
		{path: "engine/low", floor: 0, why: "ground"}, {path: "engine/high", floor: 1, why: "roof"},
		{path: "engine/side", floor: 1, never: []string{"engine/low"}, why: "apart"}, {path: "engine", floor: 2},
	}
	for name, test := range map[string]struct {
		from, to string
		want     int
	}{
		"down":             {"thawbook/engine/high", "thawbook/engine/low", 0},
		"up":               {"thawbook/engine/low", "thawbook/engine/high", 1},
		"level":            {"thawbook/engine/high", "thawbook/engine/side", 1},
		"within":           {"thawbook/engine/high/part", "thawbook/engine/high", 0},
		"never":            {"thawbook/engine/side", "thawbook/engine/low", 1},
		"to the door":      {"thawbook/engine/high", "thawbook/engine", 1},
		"no row":           {"thawbook/engine/new", "thawbook/engine/low", 1},
		"someone else's":   {"thawbook/engine/low", "example.org/engine/high", 0},
		"standard library": {"thawbook/engine/low", "strings", 0},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Len(t, wrongArrows(rooms, []listed{{ImportPath: test.from, Imports: []string{test.to}}}), test.want)
		})
	}
	p := []listed{{ImportPath: "thawbook/engine/draw", Imports: []string{"math", "network"}, Deps: []string{"net/netip"}}}
	assert.Empty(t, imported(engineNever(), p, direct))
	assert.Len(t, imported(engineNever(), p, deep), 1)
}
