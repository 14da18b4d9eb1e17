//go:build !js

package door_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine"
	"thawbook/wasm/door"
)

type ask struct {
	Method  string `json:"method"`
	Payload any    `json:"payload"`
}

type told struct {
	JSON json.RawMessage `json:"json"`
	Sum  *float64        `json:"sum"`
	MS   float64         `json:"ms"`
}

// module builds the reckoner once and gives a way to ask it under Node. Without
// Node the test is skipped, which cmd/check reports; CI has Node.
func module(t *testing.T) func(asks ...ask) []told {
	node, err := exec.LookPath("node")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("Node is needed in CI")
		}
		t.Skip("Node is not installed, so the wasm module cannot be run")
	}
	dir := t.TempDir()
	wasm := filepath.Join(dir, "reckoner.wasm")
	build := exec.Command("go", "build", "-trimpath", "-o", wasm, "../reckoner")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := build.CombinedOutput()
	require.NoError(t, err, string(out))
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	runtime := filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js")
	return func(asks ...ask) []told {
		calls := filepath.Join(dir, "calls.json")
		text, err := json.Marshal(asks)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(calls, text, 0o600))
		said := filepath.Join(dir, "answers.txt")
		out, err := exec.Command(node, "testdata/ask.mjs", runtime, wasm, calls, said).CombinedOutput()
		require.NoError(t, err, string(out))
		out, err = os.ReadFile(said)
		require.NoError(t, err)
		var answers []told
		lines := bufio.NewScanner(bytes.NewReader(out))
		lines.Buffer(nil, 1<<26)
		for lines.Scan() {
			var a told
			require.NoError(t, json.Unmarshal(lines.Bytes(), &a))
			answers = append(answers, a)
		}
		require.Len(t, answers, len(asks))
		return answers
	}
}

func shippedFiles(t *testing.T) map[string]string {
	names, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	files := map[string]string{}
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		files[filepath.Base(name)] = string(text)
	}
	return files
}

// TestWasmAgreesWithNative reckons every shipped sheet in the module under Node
// and natively: every number agrees to 1e-9.
func TestWasmAgreesWithNative(t *testing.T) {
	files := shippedFiles(t)
	call := module(t)
	for name := range files {
		open := ask{"open", map[string]any{"name": name, "files": files}}
		answers := call(open, ask{"reckon", map[string]any{"seasons": 2000}})
		native := &door.Door{}
		want, got := reckoning(t, nativeCall(t, native, open, ask{"reckon", map[string]any{"seasons": 2000}})), reckoning(t, answers[1].JSON)
		require.NotEmpty(t, got.Lines, name)
		require.Len(t, got.Lines, len(want.Lines))
		for i, line := range want.Lines {
			for k, pair := range [][2]*float64{{line.AtLikely, got.Lines[i].AtLikely}, {line.Mean, got.Lines[i].Mean}, {line.P05, got.Lines[i].P05},
				{line.P10, got.Lines[i].P10}, {line.P50, got.Lines[i].P50}, {line.P90, got.Lines[i].P90}, {line.P95, got.Lines[i].P95}} {
				require.Equal(t, pair[0] == nil, pair[1] == nil, "%s %s", name, line.ID)
				if pair[0] != nil {
					assert.LessOrEqual(t, math.Abs(*pair[0]-*pair[1]), 1e-9*math.Max(1e-6, math.Abs(*pair[0])), "%s %s number %d", name, line.ID, k)
				}
			}
			assert.Equal(t, line.GoalMet, got.Lines[i].GoalMet, "%s %s", name, line.ID)
		}
		assert.Equal(t, want.Warnings, got.Warnings)
	}
}

func nativeCall(t *testing.T, d *door.Door, asks ...ask) []byte {
	var last door.Answer
	for _, a := range asks {
		payload, err := json.Marshal(a.Payload)
		require.NoError(t, err)
		last = d.Call(a.Method, payload)
	}
	return last.JSON
}

func reckoning(t *testing.T, text []byte) engine.Reckoning {
	var r engine.Reckoning
	require.NoError(t, json.Unmarshal(text, &r), string(text[:min(200, len(text))]))
	return r
}

// TestHostileSheetsLeaveTheModuleAlive gives the module what is too long, too
// deep or too large, and then a sheet that it must still reckon.
func TestHostileSheetsLeaveTheModuleAlive(t *testing.T) {
	call := module(t)
	sheetWith := func(formula string) string {
		return "thawbook: 1\nchapters:\n  - title: All\n    lines:\n      - {id: a, label: A, formula: \"" + formula + "\", unit: 1}\n"
	}
	open := func(text string) ask {
		return ask{"open", map[string]any{"name": "x.yaml", "files": map[string]string{"x.yaml": text}}}
	}
	hostile := map[string]struct{ text, code string }{
		"brackets":  {sheetWith(strings.Repeat("(", 4000) + "1" + strings.Repeat(")", 4000)), "formula-too-long"},
		"deep":      {sheetWith(strings.Repeat("(", 990) + "1" + strings.Repeat(")", 990)), "formula-too-deep"},
		"signs":     {sheetWith(strings.Repeat("-", 1990) + "1"), "formula-too-deep"},
		"long":      {sheetWith(strings.Repeat("1+", 300_000) + "1"), "formula-too-long"},
		"huge":      {sheetWith(strings.Repeat("1+", 1_500_000) + "1"), "file-too-large"},
		"fifty":     {"thawbook: 1\ntitle: " + strings.Repeat("x", 50_000_000), "file-too-large"},
		"flow":      {"thawbook: 1\ntitle: " + strings.Repeat("[", 100_000), "yaml-too-deep"},
		"sequences": {"thawbook: 1\ntitle:\n  " + strings.Repeat("- ", 50_000) + "x", "yaml-too-deep"},
		"aliases":   {"thawbook: 1\na: &a [x]\nb: &b [*a,*a]\nc: [*b,*b]\n", "yaml-alias"},
	}
	for name, h := range hostile {
		answers := call(open(h.text), open(sheetWith("1 + 1")), ask{"reckon", map[string]any{"seasons": 200}})
		var v engine.View
		require.NoError(t, json.Unmarshal(answers[0].JSON, &v), name)
		require.NotEmpty(t, v.Diagnostics, name)
		assert.Equal(t, h.code, string(v.Diagnostics[0].Code), "%s: %s", name, v.Diagnostics[0].Message)
		assert.InDelta(t, 2, *reckoning(t, answers[2].JSON).Lines[0].P50, 0, name)
	}
}
