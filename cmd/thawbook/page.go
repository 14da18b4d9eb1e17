package main

import (
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"

	"github.com/spf13/cobra"
)

func newPage(t *terminal) *cobra.Command {
	dir := ""
	cmd := &cobra.Command{
		Use:     "page -o DIR",
		Short:   "Write the page as a folder that any web host can serve",
		Example: "  thawbook page -o site",
		Args:    takes(0, 0, "no file"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			if dir == "" {
				return commandWrong("page: -o is missing: name the folder to write")
			}
			ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			p, err := projectHere()
			if err != nil {
				return err
			}
			if err := p.build(ctx, t.err); err != nil {
				return err
			}
			n, err := copyTree(dir, p.page())
			if err != nil {
				return failure{status: statusSheetWrong, message: fmt.Sprintf("cannot write %q: %v", dir, err)}
			}
			fmt.Fprintf(t.out, "%s written to %s\n", several(n, "file"), dir)
			return nil
		},
	}
	cmd.Flags().StringVarP(&dir, "out", "o", "", "the `folder` to write; files of the same name are replaced")
	return cmd
}

// copyTree copies every file under from to the same name under to, makes the
// folders it needs, and returns how many files it wrote. What else is in the
// folder stays.
func copyTree(to, from string) (int, error) {
	n := 0
	err := filepath.WalkDir(from, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		target := filepath.Join(to, name)
		if entry.IsDir() {
			return os.MkdirAll(target, 0o755)
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		n++
		return os.WriteFile(target, text, 0o644)
	})
	return n, err
}
