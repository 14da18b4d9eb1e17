package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"thawbook/engine"
	"thawbook/engine/diag"
)

// mostRead is how many bytes of a file are read: far more than a sheet may
// have, so that the engine itself says how large a file is, and not without
// end, so that one that never ends is refused too.
const mostRead = 64 << 20

// opened is a sheet with the text of every file it was read from, which
// diagnostics quote.
type opened struct {
	path  string
	book  *engine.Book // nil when the file is no sheet at all
	found diag.List
	texts map[string][]byte
}

// open reads the sheet at path and whatever sheets it is taken from. The error is for a path that cannot be read; what is
// wrong inside the file is in found.
func open(path string) (*opened, error) {
	text, err := readFile(path)
	if err != nil {
		return nil, commandWrong("cannot read %q: %v", path, reason(err))
	}
	// The engine finds what a sheet is taken from by names with slashes.
	name := filepath.ToSlash(path)
	o := &opened{path: path, texts: map[string][]byte{name: text}}
	o.book, o.found = engine.Open(name, o.load)
	return o, nil
}

// load gives the engine a file by its path, once read or not.
func (o *opened) load(name string) ([]byte, error) {
	if text, ok := o.texts[name]; ok {
		return text, nil
	}
	text, err := readFile(name)
	if err != nil {
		return nil, reason(err)
	}
	o.texts[name] = text
	return text, nil
}

func readFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, mostRead))
}

// reason is a file error without the operation and the path, which the message
// around it names already.
func reason(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
