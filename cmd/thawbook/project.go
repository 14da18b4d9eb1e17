package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// project is the source tree that the page is built from.
type project struct{ root string }

// findProject looks for the tree in dir and the folders above it.
func findProject(dir string) (project, error) {
	for dir = filepath.Clean(dir); ; {
		text, err := os.ReadFile(filepath.Join(dir, "go.mod"))
		if err == nil && strings.HasPrefix(string(text), "module thawbook\n") {
			return project{dir}, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return project{}, failure{
				status:  statusSheetWrong,
				message: "the page is built from Thawbook's source, which is not in this folder or above it",
				hint:    "go to the folder that holds Thawbook's go.mod and run this again\n" + worksWithout,
			}
		}
		dir = up
	}
}

func (p project) path(parts ...string) string {
	return filepath.Join(append([]string{p.root}, parts...)...)
}

// page is the folder that the built page stands in.
func (p project) page() string { return p.path(".build", "page") }

// modules are the names of the WebAssembly programs of the page: each folder
// of wasm with a main.go.
func (p project) modules() ([]string, error) {
	mains, err := filepath.Glob(p.path("wasm", "*", "main.go"))
	if err != nil {
		return nil, err
	}
	var names []string
	for _, file := range mains {
		names = append(names, filepath.Base(filepath.Dir(file)))
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("no program in %s", p.path("wasm"))
	}
	return names, nil
}

// older reports whether target is missing or older than any of the sources.
// Sources are files, or folders with everything in them; one that is not there
// does not count. Folders count too, because removing a file changes only them.
func older(target string, sources ...string) (bool, error) {
	made, err := os.Stat(target)
	if errors.Is(err, fs.ErrNotExist) {
		return true, nil
	}
	if err != nil {
		return false, err
	}
	for _, source := range sources {
		changed, err := lastChange(source)
		if err != nil {
			return false, err
		}
		if changed.After(made.ModTime()) {
			return true, nil
		}
	}
	return false, nil
}

func lastChange(root string) (time.Time, error) {
	var last time.Time
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		if err != nil {
			return err
		}
		if entry.IsDir() && entry.Name() == "node_modules" {
			return filepath.SkipDir
		}
		info, err := entry.Info()
		if err == nil && info.ModTime().After(last) {
			last = info.ModTime()
		}
		return err
	})
	return last, err
}
