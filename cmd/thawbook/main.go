// Command thawbook answers what-if questions about a maple season on the
// command line, and serves the same engine as a page on this machine.
//
// It reads files, shows answers and builds the page; every number it shows
// comes from package engine.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"
)

// Exit statuses.
const (
	statusFine         = 0
	statusSheetWrong   = 1 // also: the page cannot be built or served here
	statusCommandWrong = 2
)

func main() {
	os.Exit(run(os.Args[1:], newTerminal(os.Stdout, os.Stderr)))
}

// run carries out one command line and returns its exit status.
func run(args []string, t *terminal) int {
	root := newRoot(t)
	root.SetArgs(args)
	root.SetOut(t.out)
	root.SetErr(t.err)
	return report(t.err, root.Execute())
}

// report says what went wrong, unless that was said already, and returns the
// exit status. An error that names no status comes from reading the command
// line itself.
func report(w io.Writer, err error) int {
	if err == nil {
		return statusFine
	}
	var f failure
	if !errors.As(err, &f) {
		f = failure{status: statusCommandWrong, message: err.Error()}
	}
	if f.message != "" {
		fmt.Fprintln(w, "thawbook: "+f.message)
	}
	if f.hint != "" {
		for hint := range strings.SplitSeq(f.hint, "\n") {
			fmt.Fprintln(w, wrap(hint, width, "  "))
		}
	}
	return f.status
}

// failure ends a command with a status. An empty message means that the
// diagnostics have been shown already. Each line of the hint is wrapped alone.
type failure struct {
	status        int
	message, hint string
}

func (f failure) Error() string { return f.message }

// commandWrong is the failure of a command that was asked for something that
// cannot be.
func commandWrong(format string, args ...any) error {
	return failure{status: statusCommandWrong, message: fmt.Sprintf(format, args...)}
}

// newRoot puts the commands together. Without a command the page is served.
func newRoot(t *terminal) *cobra.Command {
	root := newServe(t)
	root.SilenceErrors = true
	root.SilenceUsage = true
	root.CompletionOptions.HiddenDefaultCmd = true
	root.SuggestionsMinimumDistance = 2
	setHelp(root)
	root.AddCommand(newCheck(t), newReckon(t), newCompare(t), newMovers(t), newWorth(t), newExplain(t), newPrice(t), newFind(t), newLayin(t), newGear(t), newFunctions(t), newHandover(t), newTakeback(t), newPage(t))
	return root
}
