package columns

import (
	"errors"

	"thawbook/engine/draw"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// Seasons says how many seasons to draw, and from which seed.
type Seasons struct {
	N    int
	Seed uint64
	// Apart are lines drawn from another seed than the rest; nil when there are
	// none.
	Apart *Apart
}

// Apart names lines by id and the seed that they alone are drawn from. Lines
// that move with each other belong together in it, or neither seed's ranks hold.
type Apart struct {
	Seed  uint64
	Lines map[string]bool
}

// seedOf is the seed a line is drawn from.
func (s Seasons) seedOf(id string) uint64 {
	if s.Apart != nil && s.Apart.Lines[id] {
		return s.Apart.Seed
	}
	return s.Seed
}

// MostKept is the largest number of seasons Run keeps whole columns of; beyond
// it use Stream.
const MostKept = 100_000

// ErrStopped is returned when progress asked to stop.
var ErrStopped = errors.New("stopped")

// Column is one slot's numbers. A column must not be changed: later runs share it.
type Column struct {
	// Steady says every season has Value; Values is nil then.
	Steady bool
	Value  float64
	// Values has one number a season when not Steady.
	Values []float64
	// Warnings tell where the slot's formula stopped giving numbers.
	Warnings []Warning

	stamp stamp
}

// At is the number of season i.
func (c *Column) At(i int) float64 {
	if c.Steady {
		return c.Value
	}
	return c.Values[i]
}

// Fill copies seasons from … into dst.
func (c *Column) Fill(dst []float64, from int) {
	if !c.Steady {
		copy(dst, c.Values[from:])
		return
	}
	for i := range dst {
		dst[i] = c.Value
	}
}

// Result is what a run worked out: one column a slot, nil where the slot cannot
// be reckoned.
type Result struct {
	Plan    *formula.Plan
	Seasons Seasons
	Columns []*Column
	// Worked counts the columns that were worked anew; the others were taken
	// over from the run before. Of counts the columns there are.
	Worked, Of int

	byStamp map[stamp]*Column
}

// Run works every column of the program. Columns of before (nil for a first
// run) whose stamps still hold are shared, not worked again. progress, when not
// nil, is told how much of the work is done and stops the run by answering
// false; the error is then ErrStopped.
func (p *Program) Run(s Seasons, before *Result, progress func(done, total int) bool) (*Result, error) {
	r := &Result{Plan: p.Plan, Seasons: s, Columns: make([]*Column, len(p.Plan.Slots)), byStamp: map[stamp]*Column{}}
	stamps := p.stamps(s)
	var todo []int
	for _, i := range p.Plan.Order {
		r.Of++
		var old *Column
		if before != nil {
			old = before.byStamp[stamps[i]]
		}
		if old == nil {
			old = r.byStamp[stamps[i]]
		}
		if old == nil {
			old = &Column{stamp: stamps[i]}
			todo = append(todo, i)
		}
		r.Columns[i], r.byStamp[stamps[i]] = old, old
	}
	r.Worked = len(todo)
	if err := p.worker(s).work(r, todo, func(int) bool { return true }, progress); err != nil {
		return nil, err
	}
	return r, nil
}

// work fills the columns in todo, chunk by chunk. Of those that keep does not
// ask for, only the chunk in hand is held.
func (w *worker) work(r *Result, todo []int, keep func(slot int) bool, progress func(done, total int) bool) error {
	steady := func(i int) float64 { return r.Columns[i].Value }
	var vary []int
	for _, i := range todo {
		if w.p.uniform[i] {
			r.Columns[i].Steady = true
			r.Columns[i].Value = w.single(i, steady)
			continue
		}
		room := r.Seasons.N
		if !keep(i) {
			room = min(room, Chunk)
		}
		r.Columns[i].Values = make([]float64, room)
		vary = append(vary, i)
	}
	if err := w.prepare(vary, steady); err != nil {
		return err
	}
	for from := 0; from < r.Seasons.N; from += Chunk {
		to := min(from+Chunk, r.Seasons.N)
		for i, c := range r.Columns {
			if c != nil && !c.Steady {
				w.chunk[i] = c.stretch(from, to)
			}
		}
		w.run(vary, from, to-from)
		if progress != nil && !progress(to, r.Seasons.N) {
			return ErrStopped
		}
	}
	for _, i := range todo {
		r.Columns[i].Warnings = w.warnings[i]
	}
	return nil
}

// stretch is where the seasons from … to stand: in the whole column, or in the
// only chunk there is room for.
func (c *Column) stretch(from, to int) []float64 {
	if to > len(c.Values) {
		return c.Values[:to-from]
	}
	return c.Values[from:to]
}

// Stream works all seasons without keeping columns: after each chunk it gives
// sink the slots' numbers for the seasons from …, valid until sink returns.
// Slots with one number for all seasons have a chunk too. Warnings come back at
// the end, by slot. It needs room for one chunk a slot, and for one point a
// season for every guess that moves with another.
func (p *Program) Stream(s Seasons, sink func(from, n int, chunk [][]float64), progress func(done, total int) bool) ([][]Warning, error) {
	w := p.worker(s)
	steady := make([]float64, len(p.Plan.Slots))
	get := func(i int) float64 { return steady[i] }
	var vary []int
	for _, i := range p.Plan.Order {
		w.chunk[i] = make([]float64, Chunk)
		if !p.uniform[i] {
			vary = append(vary, i)
			continue
		}
		steady[i] = w.single(i, get)
		for k := range w.chunk[i] {
			w.chunk[i][k] = steady[i]
		}
	}
	if err := w.prepare(vary, get); err != nil {
		return nil, err
	}
	for from := 0; from < s.N; from += Chunk {
		n := min(Chunk, s.N-from)
		for i := range w.chunk {
			w.chunk[i] = w.chunk[i][:min(n, len(w.chunk[i]))]
		}
		w.run(vary, from, n)
		sink(from, n, w.chunk)
		if progress != nil && !progress(from+n, s.N) {
			return nil, ErrStopped
		}
	}
	return w.warnings, nil
}

// worker holds what one run writes to.
type worker struct {
	p        *Program
	seasons  Seasons
	chunk    [][]float64 // by slot: the seasons being worked
	scrap    [][]float64
	room     []float64
	args     []vec
	vars     []float64
	once     [][]float64 // by slot: workings with one number for all seasons
	streams  map[int]draw.Stream
	points   map[int][]float64 // whole columns of points, for guesses that move together
	suspect  []bool
	steady   func(slot int) float64 // slots with one number for all seasons
	warnings [][]Warning
	quiet    bool // nobody asks for warnings
}

func (p *Program) worker(s Seasons) *worker {
	n := len(p.Plan.Slots)
	return &worker{p: p, seasons: s, chunk: make([][]float64, n), once: make([][]float64, n), warnings: make([][]Warning, n),
		streams: map[int]draw.Stream{}, points: map[int][]float64{}, suspect: make([]bool, Chunk)}
}

// single works a slot that has one number for all seasons.
func (w *worker) single(i int, get func(int) float64) float64 {
	slot := w.p.Plan.Slots[i]
	switch slot.Line.Kind {
	case sheet.Is:
		return slot.Line.Is
	case sheet.Choose:
		return float64(slot.Place())
	}
	find := &finder{get: get, vars: w.lets(slot.Vars)}
	x := find.eval(slot.Expr)
	if find.node != nil {
		w.warn(i, find, w.seasons.N)
	}
	return x
}

func (w *worker) lets(n int) []float64 {
	if len(w.vars) < n {
		w.vars = make([]float64, n)
	}
	return w.vars
}

// prepare works whatever the routines in todo need before the first chunk.
func (w *worker) prepare(todo []int, steady func(int) float64) error {
	w.steady = steady
	scraps, widest := 0, 0
	for _, i := range todo {
		slot := w.p.Plan.Slots[i]
		if slot.Drawn() {
			if err := w.prepareDraw(i); err != nil {
				return err
			}
			continue
		}
		r := w.p.routines[i]
		scraps, widest = max(scraps, r.scraps), max(widest, r.widest)
		for _, n := range r.once {
			w.once[i] = append(w.once[i], formula.Eval(n, steady, w.lets(slot.Vars), nil))
		}
	}
	for range scraps {
		w.scrap = append(w.scrap, make([]float64, Chunk))
	}
	w.room, w.args = make([]float64, widest), make([]vec, widest)
	return nil
}

// prepareDraw readies a guess: alone it needs only its stream; one that moves
// with others needs their whole columns of points, and its own.
func (w *worker) prepareDraw(i int) error {
	slot := w.p.Plan.Slots[i]
	if len(slot.Uses) == 0 {
		w.streams[i] = draw.NewStream(w.seasons.seedOf(slot.ID()), slot.ID(), w.seasons.N)
		return nil
	}
	_, err := w.wholePoints(i)
	return err
}

func (w *worker) wholePoints(i int) ([]float64, error) {
	if points, ok := w.points[i]; ok {
		return points, nil
	}
	slot := w.p.Plan.Slots[i]
	for _, use := range slot.Uses {
		if _, err := w.wholePoints(use); err != nil {
			return nil, err
		}
	}
	points, err := slot.Points(w.seasons.seedOf(slot.ID()), w.seasons.N, func(use int) []float64 { return w.points[use] })
	w.points[i] = points
	return points, err
}
