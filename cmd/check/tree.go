package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// tree is the source tree that is checked.
type tree struct{ root string }

// findTree is the module that the working directory stands in.
func findTree() (tree, error) {
	said, err := exec.Command("go", "env", "GOMOD").Output()
	file := strings.TrimSpace(string(said))
	if err != nil || filepath.Base(file) != "go.mod" {
		return tree{}, errors.New("run this inside Thawbook's source folder")
	}
	return tree{filepath.Dir(file)}, nil
}

func (t tree) path(parts ...string) string {
	return filepath.Join(append([]string{t.root}, parts...)...)
}

// inCI reports whether a machine runs this: then nothing may be left out.
func inCI() bool { return os.Getenv("CI") == "true" }

// call runs one program; what it prints goes to log.
type call struct {
	dir  string
	env  []string // added to this program's own; when bare, the whole of it
	bare bool
	args []string
}

func (c call) run(ctx context.Context, log io.Writer) error {
	cmd := exec.CommandContext(ctx, c.args[0], c.args[1:]...)
	cmd.Dir = c.dir
	// What failed is quoted in plain text, so colour would only be in the way.
	cmd.Env = append(append(os.Environ(), "NO_COLOR=1"), c.env...)
	if c.bare {
		cmd.Env = c.env
	}
	cmd.Stdout, cmd.Stderr = log, log
	// A grandchild that keeps the pipe open must not keep the step from ending.
	cmd.WaitDelay = 10 * time.Second
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("%s: %w", strings.Join(c.args, " "), err)
	}
	return nil
}

// program makes a step's run of one program in the tree's root.
func (t tree) program(args ...string) func(context.Context, io.Writer) error {
	return call{dir: t.root, args: args}.run
}

// npm makes a step's run of one of the page's own scripts.
func (t tree) npm(script string) func(context.Context, io.Writer) error {
	return call{dir: t.path("web"), args: []string{"npm", "run", script}}.run
}
