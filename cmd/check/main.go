// Command check runs every test there is: format, analysis, Go and WebAssembly
// tests, sizes, the page's own tests, a real browser, and the commands that
// README shows. It needs no argument:
//
//	go run ./cmd/check
//
// Each step names itself and the time it took; what a failed step printed
// follows it. The last line counts them.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run carries out one command line: 0 when nothing failed, 1 when a step did,
// 2 when the command is wrong.
func run(args []string, out, errOut io.Writer) int {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	flags.SetOutput(errOut)
	only := flags.String("only", "", "run these `steps` alone, with what they need; names with commas between")
	list := flags.Bool("list", false, "list the steps and stop")
	verbose := flags.Bool("v", false, "show what every step printed, not only a failed one")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(errOut, "check takes no argument, not %q\n", flags.Args())
		return 2
	}
	tree, err := findTree()
	if err != nil {
		fmt.Fprintln(errOut, err)
		return 2
	}
	steps := tree.steps()
	if *list {
		for _, s := range steps {
			fmt.Fprintf(out, "%-12s %s\n", s.name, s.about)
		}
		return 0
	}
	if *only != "" {
		if steps, err = choose(steps, strings.Split(*only, ",")); err != nil {
			fmt.Fprintln(errOut, err)
			return 2
		}
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	results := runAll(ctx, steps, sideBySide, func(r result) { show(out, r, *verbose) })
	return summarise(out, results)
}

func show(w io.Writer, r result, verbose bool) {
	fmt.Fprintf(w, "%-8s %-12s %7.1f s  %s\n", r.word(), r.step.name, r.took.Seconds(), r.step.about)
	if r.err != nil {
		fmt.Fprintf(w, "         %s\n", strings.ReplaceAll(r.err.Error(), "\n", "\n         "))
	}
	if text := strings.TrimSpace(r.said); text != "" && (verbose || r.failed()) {
		fmt.Fprintf(w, "    | %s\n", strings.ReplaceAll(text, "\n", "\n    | "))
	}
}

// summarise names what failed again, because its own output may be far up, and
// ends with the count alone on a line.
func summarise(w io.Writer, results []result) int {
	count := map[string]int{}
	var failed []string
	for _, r := range results {
		count[r.word()]++
		if r.failed() {
			failed = append(failed, r.step.name)
		}
	}
	fmt.Fprintln(w)
	if len(failed) > 0 {
		fmt.Fprintf(w, "failed: %s\nrun one again with: go run ./cmd/check -only %s\n", strings.Join(failed, ", "), failed[0])
	}
	line := fmt.Sprintf("%d passed, %d failed", count[passed], count[broken])
	if count[skipped] > 0 {
		line += fmt.Sprintf(", %d skipped", count[skipped])
	}
	fmt.Fprintln(w, line)
	if len(failed) > 0 {
		return 1
	}
	return 0
}
