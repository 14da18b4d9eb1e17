package main

import (
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
)

func TestProgress(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var out strings.Builder
		tell := (&terminal{err: &out, watched: true}).progress()
		assert.True(t, tell(1000, 5000))
		assert.Empty(t, out.String(), "a short wait needs no word")
		time.Sleep(2 * patience)
		assert.True(t, tell(2000, 5000))
		assert.Equal(t, "\r\r2,000 of 5,000 seasons", out.String())
		out.Reset()
		assert.True(t, tell(2100, 5000))
		assert.Empty(t, out.String(), "and no new word at once")
		assert.True(t, tell(5000, 5000))
		assert.Equal(t, "\r                      \r", out.String(), "the line is taken away")
	})
}

func TestProgressIsQuietWhereNobodyWatches(t *testing.T) {
	assert.Nil(t, (&terminal{}).progress())
}
