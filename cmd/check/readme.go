package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

// The two commands that set everything up. The first serves until it is
// stopped and the second is this program: both are known, and neither is run.
const (
	serveCommand = "go run ./cmd/thawbook"
	checkCommand = "go run ./cmd/check"
)

// readme runs every command that README shows, in order, in the tree's root.
// One that does not end well makes README wrong.
func (t tree) readme(ctx context.Context, log io.Writer) error {
	file, err := os.Open(t.path("README.md"))
	if err != nil {
		return err
	}
	defer file.Close()
	commands, err := shownCommands(file)
	if err != nil {
		return err
	}
	if len(commands) == 0 {
		return errors.New("README shows no command")
	}
	var wrong []error
	for _, command := range commands {
		fmt.Fprintf(log, "$ %s\n", command)
		if err := (call{dir: t.root, args: []string{"sh", "-c", command}}).run(ctx, log); err != nil {
			wrong = append(wrong, err)
		}
	}
	return errors.Join(wrong...)
}

// shownCommands reads the commands to run out of a page's fenced blocks that
// are marked sh or console: the lines that call thawbook, with or without the
// prompt "$ ", and the lines they are continued on.
func shownCommands(r io.Reader) ([]string, error) {
	var commands []string
	inside, open := false, false
	lines := bufio.NewScanner(r)
	for lines.Scan() {
		line := strings.TrimSpace(lines.Text())
		if mark, fenced := strings.CutPrefix(line, "```"); fenced {
			inside = !inside && (mark == "sh" || mark == "console")
			open = false
			continue
		}
		if !inside {
			continue
		}
		line = strings.TrimPrefix(line, "$ ")
		text, more := strings.CutSuffix(line, `\`)
		switch {
		case open:
			commands[len(commands)-1] += text
			open = more
		case isRun(line):
			commands = append(commands, text)
			open = more
		}
	}
	return commands, lines.Err()
}

// isRun reports whether a line of a block is a command to run here.
func isRun(line string) bool {
	command, _, _ := strings.Cut(line, " #")
	command = strings.TrimSpace(command)
	if command == serveCommand || command == checkCommand {
		return false
	}
	return strings.HasPrefix(command, serveCommand+" ")
}
