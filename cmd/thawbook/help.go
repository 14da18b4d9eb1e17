package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// setHelp gives every command one plain help page of at most width columns,
// and says a wrong flag or a wrong number of files with a hint where to look.
func setHelp(root *cobra.Command) {
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { help(cmd.OutOrStdout(), cmd) })
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return failure{status: statusCommandWrong, message: err.Error(), hint: seeHelp(cmd)}
	})
}

func seeHelp(cmd *cobra.Command) string { return "see: " + cmd.CommandPath() + " --help" }

func help(w io.Writer, cmd *cobra.Command) {
	fmt.Fprintln(w, cmd.Short)
	fmt.Fprintf(w, "\n  %s\n", cmd.UseLine())
	if cmd.Long != "" {
		fmt.Fprintf(w, "\n%s\n", cmd.Long)
	}
	var rows [][2]string
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() {
			rows = append(rows, [2]string{c.Use, c.Short})
		}
	}
	helpRows(w, "Commands", rows)
	rows = nil
	cmd.LocalFlags().VisitAll(func(f *pflag.Flag) { rows = append(rows, flagRow(f)) })
	helpRows(w, "Flags", rows)
	if cmd.Example != "" {
		fmt.Fprintf(w, "\nFor example\n%s\n", cmd.Example)
	}
}

// flagRow shows a flag with the kind of value it takes; a default that is
// nothing or zero is not worth saying.
func flagRow(f *pflag.Flag) [2]string {
	kind, usage := pflag.UnquoteUsage(f)
	name := "--" + f.Name
	if f.Shorthand != "" {
		name = "-" + f.Shorthand + ", " + name
	}
	if kind != "" {
		name += " " + strings.NewReplacer("uint", "N", "int", "N").Replace(kind)
	}
	if f.DefValue != "" && f.DefValue != "0" && f.DefValue != "false" && f.DefValue != "[]" {
		usage += " (usually " + f.DefValue + ")"
	}
	return [2]string{name, usage}
}

func helpRows(w io.Writer, title string, rows [][2]string) {
	const first = 22
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(w, "\n%s\n", title)
	for _, row := range rows {
		lines := strings.Split(wrap(row[1], width-first-2, ""), "\n")
		for i, line := range lines {
			name := ""
			if i == 0 {
				name = row[0]
			}
			if len([]rune(name)) >= first {
				fmt.Fprintln(w, "  "+name) // too long to stand beside its text
				name = ""
			}
			fmt.Fprintln(w, "  "+left(name, first)+line)
		}
	}
}

// takes checks how many files or names follow a command and says what it takes
// in its own words.
func takes(least, most int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) < least || most >= 0 && len(args) > most {
			return failure{
				status:  statusCommandWrong,
				message: fmt.Sprintf("%s takes %s, not %d", cmd.Name(), what, len(args)),
				hint:    seeHelp(cmd),
			}
		}
		return nil
	}
}

// noSuchCommand is the answer to a word after thawbook that is no command.
func noSuchCommand(root *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	f := failure{
		status:  statusCommandWrong,
		message: fmt.Sprintf("there is no command %q", clean(args[0])),
		hint:    seeHelp(root),
	}
	if near := root.SuggestionsFor(args[0]); len(near) > 0 {
		f.hint = fmt.Sprintf("did you mean %q?", near[0])
	}
	return f
}
