package main

import (
	"fmt"
	"time"

	"thawbook/engine/units"
)

// patience is how long a reckoning may take before it says how far it is, and
// breath how long it then says nothing new.
const (
	patience = time.Second
	breath   = 100 * time.Millisecond
)

// progress tells someone who waits how far a reckoning is, on a line that it
// takes away again at the end. Where nobody watches it is nil.
func (t *terminal) progress() func(done, total int) bool {
	if !t.watched {
		return nil
	}
	next := time.Now().Add(patience)
	said := 0
	return func(done, total int) bool {
		ended := done >= total && said > 0
		if time.Now().Before(next) && !ended {
			return true
		}
		next = time.Now().Add(breath)
		line := fmt.Sprintf("%s of %s seasons", units.Number(float64(done), units.One()), units.Number(float64(total), units.One()))
		if ended {
			line = ""
		}
		fmt.Fprintf(t.err, "\r%s\r%s", left("", said), line)
		said = columns(line)
		return true
	}
}
