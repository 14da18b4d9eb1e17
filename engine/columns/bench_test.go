package columns_test

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/formula"
	"thawbook/engine/formula/plain"
	"thawbook/engine/sheet"
)

const household = "../../scenarios/heron-ridge-pallets.yaml"

func householdSheet(tb testing.TB) *sheet.Sheet { return shipped(tb, household) }

func shipped(tb testing.TB, file string) *sheet.Sheet {
	source, err := os.ReadFile(file)
	require.NoError(tb, err)
	doc, list := sheet.Parse(filepath.Base(file), source)
	require.Empty(tb, list)
	s, list := sheet.Resolve(doc, func(name string) ([]byte, error) {
		return os.ReadFile(filepath.Join(filepath.Dir(file), name))
	})
	require.Empty(tb, list)
	return s
}

// BenchmarkColumnsAgainstPlain times every formula of the household sheet over
// 10,000 seasons both ways in one run, and reports how many times as long the
// plain way takes. The guesses are drawn beforehand for both.
func BenchmarkColumnsAgainstPlain(b *testing.B) {
	plan := bind(b, householdSheet(b))
	program := columns.Lower(plan)
	seasons := columns.Seasons{N: 10_000, Seed: 1}
	all, err := program.Run(seasons, nil, nil)
	require.NoError(b, err)
	drawn := all.InputsOnly()
	machine, err := plain.Compile(plan)
	require.NoError(b, err)

	slow := clock(func() {
		values := make([]float64, len(plan.Slots))
		for k := range seasons.N {
			for i, c := range all.Columns {
				if c != nil && plan.Slots[i].Line.Kind != sheet.Formula {
					values[i] = c.At(k)
				}
			}
			require.NoError(b, machine.Season(values))
		}
	})
	var fast time.Duration
	for b.Loop() {
		fast = clock(func() { _, err = program.Run(seasons, drawn, nil) })
	}
	require.NoError(b, err)
	whole := clock(func() { _, err = program.Run(seasons, nil, nil) })
	b.ReportMetric(float64(slow)/float64(fast), "times-as-long-plain")
	b.ReportMetric(float64(whole)/float64(fast), "times-as-long-with-draws")
	b.ReportMetric(float64(len(plan.Order)), "lines")
	b.ReportMetric(slow.Seconds()*1000, "plain-ms")
	b.ReportMetric(fast.Seconds()*1000, "columns-ms")
}

// BenchmarkAfterAnEdit compares a run after one price changed with a first run.
func BenchmarkAfterAnEdit(b *testing.B) {
	s := householdSheet(b)
	seasons := columns.Seasons{N: 10_000, Seed: 1}
	before, err := columns.Lower(bind(b, s)).Run(seasons, nil, nil)
	require.NoError(b, err)
	id := "jars.quart.price"
	price := s.Find(id)
	require.NotNil(b, price)
	more := price.Likely*1.01 + price.Is*1.01
	edited, list := sheet.Try(s, []sheet.Edit{{About: id, Set: sheet.Set{Is: &more}}})
	require.Empty(b, list)
	program := columns.Lower(bind(b, edited))
	full := clock(func() { _, err = program.Run(seasons, nil, nil) })
	var part time.Duration
	var after *columns.Result
	for b.Loop() {
		part = clock(func() { after, err = program.Run(seasons, before, nil) })
	}
	require.NoError(b, err)
	b.ReportMetric(float64(full)/float64(part), "times-as-long-in-full")
	b.ReportMetric(float64(after.Worked), "worked")
	b.ReportMetric(float64(after.Of), "lines")
}

// BenchmarkMemory reports what columns are kept of 10,000 seasons, and what a
// stream of a million holds at once.
func BenchmarkMemory(b *testing.B) {
	program := columns.Lower(bind(b, householdSheet(b)))
	var kept, streamed float64
	for b.Loop() {
		var r *columns.Result
		kept = held(func() {
			var err error
			r, err = program.Run(columns.Seasons{N: 10_000, Seed: 1}, nil, nil)
			require.NoError(b, err)
		})
		runtime.KeepAlive(r)
		r = nil
		streamed = held(func() {
			_, err := program.Stream(columns.Seasons{N: 1_000_000, Seed: 1}, func(from, _ int, _ [][]float64) {
				if from == 512*columns.Chunk {
					runtime.GC()
				}
			}, nil)
			require.NoError(b, err)
		})
	}
	b.ReportMetric(kept, "MB-kept-10000")
	b.ReportMetric(streamed, "MB-left-after-1000000")
}

func held(work func()) float64 {
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	work()
	runtime.GC()
	runtime.ReadMemStats(&after)
	return (float64(after.HeapAlloc) - float64(before.HeapAlloc)) / 1e6
}

func clock(work func()) time.Duration {
	start := time.Now()
	work()
	return time.Since(start)
}

// TestShippedSheetsAgreeBothWays holds the columns way to the plain way on every
// line of every shipped sheet.
func TestShippedSheetsAgreeBothWays(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 6)
	for _, file := range files {
		plan, list := formula.Bind(shipped(t, file))
		require.Empty(t, list, file)
		r, err := columns.Lower(plan).Run(columns.Seasons{N: 300, Seed: 7}, nil, nil)
		require.NoError(t, err)
		machine, err := plain.Compile(plan)
		require.NoError(t, err)
		for k := range 300 {
			got, want := season(r, k), season(r, k)
			require.NoError(t, machine.Season(want))
			for _, i := range plan.Order {
				if !same(want[i], got[i]) {
					t.Fatalf("%s, season %d, %s: plainly %v, by columns %v", file, k, plan.Slots[i].ID(), want[i], got[i])
				}
			}
		}
	}
}
