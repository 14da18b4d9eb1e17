package engine_test

import (
	"os"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"thawbook/engine"
)

// BenchmarkMovers asks for the movers of what the household sheet leaves, and
// reports how many times as long that takes as one full reckoning of the same
// seasons, and how much memory it leaves behind in use.
func BenchmarkMovers(b *testing.B) {
	open := func() *engine.Book { return shippedBook(b, "heron-ridge-pallets") }
	reckon := shortest(func(book *engine.Book) {
		_, err := book.Reckon(engine.Options{Seasons: 10_000})
		require.NoError(b, err)
	}, open)
	var m *engine.Movers
	var took time.Duration
	for b.Loop() {
		took = shortest(func(book *engine.Book) {
			var err error
			m, err = book.Movers("left_hours", engine.Options{Seasons: 10_000})
			require.NoError(b, err)
		}, open)
	}
	b.ReportMetric(float64(took)/float64(reckon), "times-one-reckoning")
	b.ReportMetric(float64(len(m.Movers)), "guesses")
	b.ReportMetric(float64(took.Milliseconds()), "ms")
	b.ReportMetric(float64(reckon.Milliseconds()), "reckoning-ms")

	book := open()
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	_, err := book.Movers("left_hours", engine.Options{Seasons: 10_000})
	require.NoError(b, err)
	runtime.ReadMemStats(&after)
	b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/1e6/float64(len(m.Movers)), "MB-a-guess")
}

// shortest is the least time of three that work takes on a book fresh each time.
func shortest(work func(*engine.Book), open func() *engine.Book) time.Duration {
	best := time.Duration(1<<63 - 1)
	for range 3 {
		book := open()
		start := time.Now()
		work(book)
		best = min(best, time.Since(start))
	}
	return best
}

func shippedBook(tb testing.TB, name string) *engine.Book {
	book, list := engine.Open("../scenarios/"+name+".yaml", os.ReadFile)
	require.Zero(tb, list.Errors())
	return book
}
