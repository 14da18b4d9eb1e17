package main

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"thawbook/engine"
	"thawbook/engine/diag"
)

func newCheck(t *terminal) *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:     "check FILE...",
		Short:   "Say what is wrong in a sheet, and where",
		Example: "  thawbook check scenarios/*.yaml",
		Args:    takes(1, -1, "one or more files"),
		RunE: func(_ *cobra.Command, files []string) error {
			return check(t, files, asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the diagnostics as a JSON array")
	return cmd
}

// check opens each file; every file is looked at, however many are wrong.
func check(t *terminal, files []string, asJSON bool) error {
	all := diag.List{}
	for _, file := range files {
		o, err := open(file)
		if err != nil {
			return err
		}
		all = append(all, o.found...)
		if !asJSON {
			o.show(t.err, t.errInk, o.found)
			fmt.Fprintln(t.out, verdict(o))
		}
	}
	if asJSON {
		if err := writeJSON(t.out, all); err != nil {
			return err
		}
	}
	if all.Errors() > 0 {
		return failure{status: statusSheetWrong}
	}
	return nil
}

// verdict is one line about one file.
func verdict(o *opened) string {
	errors, warnings := o.found.Errors(), len(o.found)-o.found.Errors()
	switch {
	case errors > 0 && warnings > 0:
		return fmt.Sprintf("%s: %s, %s", o.path, several(errors, "error"), several(warnings, "warning"))
	case errors > 0:
		return fmt.Sprintf("%s: %s", o.path, several(errors, "error"))
	}
	lines := 0
	eachLine(o.book.View(), func(engine.LineView) { lines++ })
	if warnings > 0 {
		return fmt.Sprintf("%s: fine, %s, %s", o.path, several(lines, "line"), several(warnings, "warning"))
	}
	return fmt.Sprintf("%s: fine, %s", o.path, several(lines, "line"))
}

func several(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

func writeJSON(w io.Writer, value any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(value)
}
