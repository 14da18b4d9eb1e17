package sheet

import (
	"strings"

	"thawbook/engine/diag"
)

// checkMovesCircle tells each circle of guesses that move with each other once.
// A guess is put in order after those it moves with, so a circle has no order.
// It walks without recursion: a chain may be as long as a sheet.
func (b *builder) checkMovesCircle(s *Sheet) {
	const (
		unseen = iota
		open
		done
	)
	state := map[*Line]int{}
	for _, start := range s.All() {
		if state[start] != unseen {
			continue
		}
		path := []*Line{start}
		next := []int{0}
		state[start] = open
		for len(path) > 0 {
			at := len(path) - 1
			l := path[at]
			if !l.Varies() || next[at] == len(l.MovesWith) {
				state[l] = done
				path, next = path[:at], next[:at]
				continue
			}
			other := s.Find(l.MovesWith[next[at]].ID)
			next[at]++
			switch state[other] {
			case unseen:
				state[other] = open
				path, next = append(path, other), append(next, 0)
			case open:
				b.tellCircle(path, other)
			}
		}
	}
}

// tellCircle tells the part of path from the line it came back to.
func (b *builder) tellCircle(path []*Line, back *Line) {
	var names []string
	for _, l := range path {
		if l == back || len(names) > 0 {
			names = append(names, quote(l.ID))
		}
	}
	last := path[len(path)-1]
	b.tell(diag.MovesCircle, last.ID, last.At("moves_with"), "let each pair be written on one of its two lines", "guesses move with each other in a circle: %s", strings.Join(names, ", "))
}
