package main

import (
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"thawbook": main})
}

// TestScripts runs the sessions in testdata. Beside the usual script commands
// they have:
//
//	exits STATUS thawbook ARG...   the command ends with that status
//	fits stdout                    no line is wider than 80 columns
//	keys stdout KEY...             the JSON object has these keys, in order
//	each stdout LIST KEY...        every object of its list has these
func TestScripts(t *testing.T) {
	shipped, err := filepath.Abs("../../scenarios")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("SCENARIOS", shipped)
			env.Setenv("TESTED", filepath.Dir(strings.SplitN(env.Getenv("PATH"), string(os.PathListSeparator), 2)[0]))
			return goEnv(env)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "fits": fits, "keys": keys, "each": each,
		},
	})
}

// goEnv lends scripts that build something the Go caches of this run.
func goEnv(env *testscript.Env) error {
	for _, name := range []string{"GOCACHE", "GOMODCACHE", "GOFLAGS", "GOPROXY"} {
		said, err := exec.Command("go", "env", name).Output()
		if err != nil {
			return err
		}
		env.Setenv(name, strings.TrimSpace(string(said)))
	}
	return nil
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits status command...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var ended *exec.ExitError
	switch err := ts.Exec(args[1], args[2:]...); {
	case errors.As(err, &ended):
		got = ended.ExitCode()
	case err != nil:
		ts.Fatalf("%v", err)
	}
	if got != want {
		ts.Fatalf("ended with status %d, want %d\n%s%s", got, want, ts.ReadFile("stdout"), ts.ReadFile("stderr"))
	}
}

func fits(ts *testscript.TestScript, neg bool, args []string) {
	for _, name := range args {
		if n, line := widest(ts.ReadFile(name)); (n > width) != neg {
			ts.Fatalf("%s: %d columns: %s", name, n, line)
		}
	}
}

func keys(ts *testscript.TestScript, neg bool, args []string) {
	checkKeys(ts, ts.ReadFile(args[0]), args[1:])
}

func each(ts *testscript.TestScript, neg bool, args []string) {
	var whole map[string]json.RawMessage
	ts.Check(json.Unmarshal([]byte(ts.ReadFile(args[0])), &whole))
	var list []json.RawMessage
	ts.Check(json.Unmarshal(whole[args[1]], &list))
	if len(list) == 0 {
		ts.Fatalf("%s is empty", args[1])
	}
	for _, item := range list {
		checkKeys(ts, string(item), args[2:])
	}
}

// checkKeys wants each key present; others may be there too.
func checkKeys(ts *testscript.TestScript, text string, want []string) {
	got := map[string]json.RawMessage{}
	ts.Check(json.Unmarshal([]byte(text), &got))
	missing := slices.DeleteFunc(slices.Clone(want), func(key string) bool { _, ok := got[key]; return ok })
	if len(missing) > 0 {
		ts.Fatalf("missing %q in %s", missing, text)
	}
}
