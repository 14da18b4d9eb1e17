package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"thawbook/engine"
)

func newFunctions(t *terminal) *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:     "functions [NAME]",
		Short:   "List the functions that formulas can use, or explain one",
		Example: "  thawbook functions syrup_from",
		Args:    takes(0, 1, "at most one name"),
		RunE: func(_ *cobra.Command, names []string) error {
			list := engine.Functions()
			if len(names) == 1 {
				list = slices.DeleteFunc(list, func(f engine.FunctionEntry) bool { return f.Name != names[0] })
				if len(list) == 0 {
					return failure{
						status:  statusCommandWrong,
						message: fmt.Sprintf("there is no function %q", clean(names[0])),
						hint:    "thawbook functions lists them all",
					}
				}
			}
			switch {
			case asJSON:
				return writeJSON(t.out, list)
			case len(names) == 1:
				explainFunction(t.out, t.outInk, list[0])
			default:
				listFunctions(t.out, t.outInk, list)
			}
			return nil
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print a JSON array")
	return cmd
}

// signature is a function as a formula calls it.
func signature(f engine.FunctionEntry) string {
	var names []string
	for _, arg := range f.Args {
		names = append(names, arg.Name)
	}
	return f.Name + "(" + strings.Join(names, ", ") + ")"
}

func listFunctions(w io.Writer, on ink, list []engine.FunctionEntry) {
	family := ""
	for _, f := range list {
		if f.Family != family {
			if family != "" {
				fmt.Fprintln(w)
			}
			family = f.Family
			fmt.Fprintln(w, on.bold(family))
		}
		fmt.Fprintln(w, "  "+signature(f))
		fmt.Fprintln(w, wrap(f.Summary, width, "      "))
	}
}

func explainFunction(w io.Writer, on ink, f engine.FunctionEntry) {
	fmt.Fprintln(w, on.bold(signature(f)))
	fmt.Fprintln(w, wrap(f.Summary, width, "  "))
	fmt.Fprintln(w)
	names, units := len("gives"), columns(f.Result)
	for _, arg := range f.Args {
		names, units = max(names, columns(arg.Name)), max(units, columns(arg.Unit))
	}
	for _, arg := range f.Args {
		fmt.Fprintln(w, trimRight("  "+left(arg.Name, names)+"  "+left(arg.Unit, units)+"  "+arg.Summary+covered(arg)))
	}
	fmt.Fprintln(w, "  "+left("gives", names)+"  "+f.Result)
	fmt.Fprintf(w, "\n  for example  %s\n", f.Example)
	if f.Source != "" {
		fmt.Fprintln(w, wrap("source: "+f.Source, width, "  "))
	}
}

// covered says where the function's source holds, "" when it holds everywhere.
func covered(arg engine.ArgEntry) string {
	if arg.Min == nil || arg.Max == nil {
		return ""
	}
	return fmt.Sprintf(", %g to %g", *arg.Min, *arg.Max)
}
