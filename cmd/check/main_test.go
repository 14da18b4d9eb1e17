package main

import (
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

func TestSummary(t *testing.T) {
	ok := result{step: step{name: "vet"}}
	bad := result{step: step{name: "e2e"}, err: errors.New("wrong")}
	missing := result{step: step{name: "browser"}, err: skip{"no browser"}}
	for name, test := range map[string]struct {
		results []result
		last    string
		status  int
	}{
		"all well":     {[]result{ok, ok}, "2 passed, 0 failed", 0},
		"one failed":   {[]result{ok, bad}, "1 passed, 1 failed", 1},
		"one left out": {[]result{ok, missing}, "1 passed, 0 failed, 1 skipped", 0},
	} {
		t.Run(name, func(t *testing.T) {
			var out strings.Builder
			assert.Equal(t, test.status, summarise(&out, test.results))
			lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
			assert.Equal(t, test.last, lines[len(lines)-1])
			assert.Equal(t, test.status == 1, strings.Contains(out.String(), "-only e2e"))
		})
	}
}

func TestShow(t *testing.T) {
	quiet := result{step: step{name: "vet", about: "go vet"}, said: "chatter\n", took: 1250 * time.Millisecond}
	loud := quiet
	loud.err = errors.New("exit status 1")
	var out strings.Builder
	show(&out, quiet, false)
	assert.Equal(t, "passed   vet              1.2 s  go vet\n", out.String())
	out.Reset()
	show(&out, quiet, true)
	assert.Contains(t, out.String(), "    | chatter\n")
	out.Reset()
	show(&out, loud, false)
	assert.Contains(t, out.String(), "exit status 1\n    | chatter\n", "a failed step shows what it printed")
}

func TestWrongCommands(t *testing.T) {
	for _, args := range [][]string{{"-only", "nothing"}, {"more"}, {"-nothing"}} {
		var out, errOut strings.Builder
		assert.Equal(t, 2, run(args, &out, &errOut), args)
		assert.NotEmpty(t, errOut.String(), args)
		assert.Empty(t, out.String(), args)
	}
	var out, errOut strings.Builder
	assert.Equal(t, 0, run([]string{"-list"}, &out, &errOut))
	assert.Contains(t, out.String(), "go-test ")
}
