package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"regexp"
	"time"
)

// buildPage builds the page with the command a person would use, so that the
// product's own build is what is checked.
func (t tree) buildPage(ctx context.Context, log io.Writer) error {
	return t.program("go", "run", "./cmd/thawbook", "page", "-o", t.path(".build", "check", "page"))(ctx, log)
}

// endToEnd starts the real server and runs the browser tests against it.
func (t tree) endToEnd(ctx context.Context, log io.Writer) (err error) {
	binary := t.path(".build", "bin", "thawbook")
	if err := t.program("go", "build", "-o", binary, "./cmd/thawbook")(ctx, log); err != nil {
		return err
	}
	address, stop, err := t.serve(ctx, binary, log)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, stop()) }()
	env := []string{"THAWBOOK_URL=" + address, "CHROMIUM=" + findBrowser()}
	tests := call{dir: t.path("web"), env: env, args: []string{"npm", "run", "e2e"}}
	return tests.run(ctx, log)
}

// serve starts the server on any free port and waits for the address it
// prints. stop ends it the way a person does and returns what it said if it
// ended in error.
func (t tree) serve(ctx context.Context, binary string, log io.Writer) (address string, stop func() error, err error) {
	cmd := exec.CommandContext(ctx, binary, "--port", "0")
	cmd.Dir = t.root
	cmd.Stderr = log
	out, err := cmd.StdoutPipe()
	if err != nil {
		return "", nil, err
	}
	if err := cmd.Start(); err != nil {
		return "", nil, err
	}
	stop = func() error {
		if err := cmd.Process.Signal(os.Interrupt); err != nil {
			return err
		}
		return cmd.Wait()
	}
	found := make(chan string, 1)
	go func() {
		defer close(found)
		if address, ok := addressIn(out); ok {
			found <- address
		}
	}()
	select {
	case address, ok := <-found:
		if !ok {
			return "", nil, errors.Join(errors.New("the server ended without an address"), cmd.Wait())
		}
		return address, stop, nil
	case <-time.After(2 * time.Minute):
		return "", nil, errors.Join(errors.New("the server printed no address in two minutes"), cmd.Process.Kill())
	}
}

// addressIn reads lines until one holds the server's address.
func addressIn(r io.Reader) (string, bool) {
	address := regexp.MustCompile(`http://127\.0\.0\.1:\d+/`)
	lines := bufio.NewScanner(r)
	for lines.Scan() {
		if found := address.FindString(lines.Text()); found != "" {
			return found, true
		}
	}
	return "", false
}

// browser finds Chromium, or installs Debian's where that can be done. Without
// one the browser tests are skipped, but never where a machine runs this.
func (t tree) browser(ctx context.Context, log io.Writer) error {
	if name := findBrowser(); name != "" {
		fmt.Fprintln(log, name)
		return nil
	}
	err := errors.New("no Chromium here, and Debian's cannot be installed: install Chromium and run this again")
	if canInstall() {
		err = installBrowser(ctx, log)
	}
	if err != nil && !inCI() {
		return skip{err.Error()}
	}
	return err
}

func findBrowser() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// canInstall: packages can be installed where apt-get is, by the administrator.
func canInstall() bool {
	_, err := exec.LookPath("apt-get")
	return err == nil && os.Geteuid() == 0
}

func installBrowser(ctx context.Context, log io.Writer) error {
	env := []string{"DEBIAN_FRONTEND=noninteractive"}
	for _, args := range [][]string{
		{"apt-get", "update"},
		{"apt-get", "install", "-y", "--no-install-recommends", "chromium", "fonts-dejavu-core"},
	} {
		if err := (call{dir: os.TempDir(), env: env, args: args}).run(ctx, log); err != nil {
			return err
		}
	}
	if findBrowser() == "" {
		return errors.New("no Chromium in Debian's package")
	}
	return nil
}
