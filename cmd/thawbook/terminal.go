package main

import (
	"io"
	"os"
)

// terminal is where a command speaks: answers go to out, everything said
// beside them to err.
type terminal struct {
	out, err       io.Writer
	outInk, errInk ink
	watched        bool // err is a terminal, where a line may be written over
}

// newTerminal uses colour on a stream that is a terminal, unless the person
// asked for none with NO_COLOR or has a terminal that knows none.
func newTerminal(out, err *os.File) *terminal {
	return &terminal{
		out: out, err: err, watched: isTerminal(err),
		outInk: ink(isTerminal(out) && wantsColour()),
		errInk: ink(isTerminal(err) && wantsColour()),
	}
}

func wantsColour() bool {
	return os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
}

func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// ink colours text when it is true. Colour is never the only sign of anything:
// the words say the same without it.
type ink bool

func (on ink) bold(s string) string   { return on.with("1", s) }
func (on ink) red(s string) string    { return on.with("31", s) }
func (on ink) yellow(s string) string { return on.with("33", s) }
func (on ink) faint(s string) string  { return on.with("2", s) }

func (on ink) with(code, s string) string {
	if !on || s == "" {
		return s
	}
	return "\x1b[" + code + "m" + s + "\x1b[0m"
}
