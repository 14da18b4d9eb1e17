package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func fine(context.Context, io.Writer) error { return nil }

func wordsOf(results []result) map[string]string {
	words := map[string]string{}
	for _, r := range results {
		words[r.step.name] = r.word()
	}
	return words
}

func TestRunAllFollowsNeeds(t *testing.T) {
	fails := func(_ context.Context, log io.Writer) error {
		fmt.Fprint(log, "said before it failed")
		return errors.New("wrong")
	}
	misses := func(context.Context, io.Writer) error { return fmt.Errorf("wrapped: %w", skip{"no browser"}) }
	var told []string
	results := runAll(t.Context(), []step{
		{name: "late", needs: []string{"early"}, run: fine},
		{name: "early", run: fine},
		{name: "bad", run: fails},
		{name: "after bad", needs: []string{"early", "bad"}, run: fine},
		{name: "absent", run: misses},
		{name: "after absent", needs: []string{"absent"}, run: fine},
		{name: "after after absent", needs: []string{"after absent"}, run: fine},
	}, 2, func(r result) { told = append(told, r.step.name) })
	assert.Equal(t, map[string]string{
		"late": passed, "early": passed, "bad": broken, "after bad": broken,
		"absent": skipped, "after absent": skipped, "after after absent": skipped,
	}, wordsOf(results))
	require.Len(t, told, 7)
	for _, r := range results {
		switch r.step.name {
		case "bad":
			assert.Equal(t, "said before it failed", r.said)
		case "after bad":
			assert.EqualError(t, r.err, "not run, because bad failed")
		}
	}
}

func TestRunAllRunsSideBySideUpToTheLimit(t *testing.T) {
	var now, most atomic.Int32
	both := make(chan struct{})
	meet := func(ctx context.Context, _ io.Writer) error {
		most.Store(max(most.Load(), now.Add(1)))
		defer now.Add(-1)
		select {
		case both <- struct{}{}:
		case <-both:
		case <-time.After(10 * time.Second):
			return errors.New("nothing ran beside this")
		}
		return nil
	}
	results := runAll(t.Context(), []step{
		{name: "a", run: meet}, {name: "b", run: meet}, {name: "c", run: meet}, {name: "d", run: meet},
	}, 2, func(result) {})
	assert.Equal(t, map[string]string{"a": passed, "b": passed, "c": passed, "d": passed}, wordsOf(results))
	assert.LessOrEqual(t, most.Load(), int32(2))
}

func TestRunAllLeavesAStepAloneThatAsks(t *testing.T) {
	var now atomic.Int32
	brief := func(context.Context, io.Writer) error {
		now.Add(1)
		time.Sleep(5 * time.Millisecond)
		now.Add(-1)
		return nil
	}
	alone := func(context.Context, io.Writer) error {
		for range 20 {
			if n := now.Load(); n != 0 {
				return fmt.Errorf("%d ran beside it", n)
			}
			time.Sleep(time.Millisecond)
		}
		return nil
	}
	results := runAll(t.Context(), []step{
		{name: "alone", alone: true, run: alone},
		{name: "a", run: brief}, {name: "b", run: brief}, {name: "c", run: brief},
	}, 3, func(result) {})
	assert.Equal(t, passed, wordsOf(results)["alone"])
	assert.Equal(t, "alone", results[3].step.name, "it waits its turn without holding up the others")
}

func TestRunAllStopsStartingWhenTold(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	results := runAll(ctx, []step{
		{name: "first", run: func(context.Context, io.Writer) error { cancel(); return nil }},
		{name: "second", needs: []string{"first"}, run: func(context.Context, io.Writer) error {
			t.Error("started after the stop")
			return nil
		}},
	}, 2, func(result) {})
	assert.Equal(t, map[string]string{"first": passed, "second": broken}, wordsOf(results))
}

func TestChoose(t *testing.T) {
	steps := []step{{name: "page"}, {name: "vet"}, {name: "browser"}, {name: "e2e", needs: []string{"page", "browser"}}}
	chosen, err := choose(steps, []string{"e2e"})
	require.NoError(t, err)
	var names []string
	for _, s := range chosen {
		names = append(names, s.name)
	}
	assert.Equal(t, []string{"page", "browser", "e2e"}, names)
	assert.Len(t, steps, 4, "the list given stays whole")

	_, err = choose(steps, []string{"lint"})
	assert.ErrorContains(t, err, `no step "lint"`)
}

// runAll would wait for ever on a need that is not there or that needs it back.
func TestEveryNeedIsAnEarlierStep(t *testing.T) {
	before := map[string]bool{}
	for _, s := range (tree{}).steps() {
		assert.False(t, before[s.name], "two steps named %q", s.name)
		for _, need := range s.needs {
			assert.True(t, before[need], "%s needs %s, which is not before it", s.name, need)
		}
		assert.NotEmpty(t, s.about, s.name)
		assert.NotNil(t, s.run, s.name)
		before[s.name] = true
	}
}
