package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"sync"
	"time"
)

// sideBySide is how many steps run at once: the smallest machine this is run
// on has two cores.
const sideBySide = 2

// step is one thing that is checked.
type step struct {
	name, about string
	needs       []string // steps that must have passed first
	alone       bool     // nothing runs beside it: it measures time, or a browser waits on it
	run         func(ctx context.Context, log io.Writer) error
}

// skip is the error of a step that cannot run here through no fault of the
// tree.
type skip struct{ reason string }

func (s skip) Error() string { return s.reason }

// What became of a step.
const (
	passed  = "passed"
	broken  = "failed"
	skipped = "skipped"
)

type result struct {
	step step
	err  error
	said string
	took time.Duration
}

func (r result) word() string {
	switch {
	case r.err == nil:
		return passed
	case errors.As(r.err, new(skip)):
		return skipped
	}
	return broken
}

func (r result) failed() bool { return r.word() == broken }

// choose picks the named steps and all that they need, in the order of steps.
func choose(steps []step, names []string) ([]step, error) {
	wanted := map[string]bool{}
	var want func(name string) error
	want = func(name string) error {
		i := slices.IndexFunc(steps, func(s step) bool { return s.name == name })
		if i < 0 {
			return fmt.Errorf("there is no step %q; -list names them", name)
		}
		wanted[name] = true
		for _, need := range steps[i].needs {
			if err := want(need); err != nil {
				return err
			}
		}
		return nil
	}
	for _, name := range names {
		if err := want(name); err != nil {
			return nil, err
		}
	}
	return slices.DeleteFunc(slices.Clone(steps), func(s step) bool { return !wanted[s.name] }), nil
}

// runAll runs the steps, at most limit at once, each when what it needs has
// passed, and calls done for each as it ends. A step whose need did not pass is
// skipped when that one was skipped, and fails otherwise without being run.
func runAll(ctx context.Context, steps []step, limit int, done func(result)) []result {
	ended := map[string]result{}
	finished := make(chan result)
	waiting := slices.Clone(steps)
	var results []result
	running, alone := 0, false
	end := func(r result) {
		ended[r.step.name] = r
		results = append(results, r)
		done(r)
	}
	for len(waiting)+running > 0 {
		i, unmet := next(waiting, ended)
		switch {
		case i >= 0 && unmet != nil:
			end(result{step: waiting[i], err: unmet})
			waiting = slices.Delete(waiting, i, i+1)
		case i >= 0 && running < limit && !alone && (!waiting[i].alone || running == 0):
			s := waiting[i]
			waiting = slices.Delete(waiting, i, i+1)
			running, alone = running+1, s.alone
			go func() { finished <- runOne(ctx, s) }()
		default:
			end(<-finished)
			running, alone = running-1, false
		}
	}
	return results
}

// next finds the first waiting step whose needs have all ended, and why it
// cannot run, if it cannot. A step that runs alone waits its turn without
// holding up the others.
func next(waiting []step, ended map[string]result) (int, error) {
	first := -1
	for i, s := range waiting {
		ready := true
		for _, need := range s.needs {
			r, ok := ended[need]
			if !ok {
				ready = false
			} else if r.err != nil {
				return i, unmet(r)
			}
		}
		if ready && (first < 0 || waiting[first].alone && !s.alone) {
			first = i
		}
	}
	return first, nil
}

func unmet(r result) error {
	if r.failed() {
		return fmt.Errorf("not run, because %s failed", r.step.name)
	}
	return skip{fmt.Sprintf("not run, because %s was skipped", r.step.name)}
}

// sharedLog holds what a step prints; programs that run side by side in one step
// write to it at once.
type sharedLog struct {
	mu   sync.Mutex
	text bytes.Buffer
}

// Write takes p whole, so that no two programs' words mix.
func (l *sharedLog) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(p)
}

func (l *sharedLog) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.String()
}

func runOne(ctx context.Context, s step) (r result) {
	var log sharedLog
	start := time.Now()
	err := ctx.Err()
	if err == nil {
		err = s.run(ctx, &log)
	}
	return result{step: s, err: err, said: log.String(), took: time.Since(start)}
}
