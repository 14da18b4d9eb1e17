package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWrap(t *testing.T) {
	for name, test := range map[string]struct {
		text   string
		limit  int
		indent string
		want   string
	}{
		"short":          {"sap in March", 20, "  ", "  sap in March"},
		"exactly fits":   {"sap in March", 14, "  ", "  sap in March"},
		"one too many":   {"sap in March", 13, "  ", "  sap in\n  March"},
		"long word":      {"a boilhouse", 6, "", "a\nboilho\nuse"},
		"counts runes":   {"°°° °°°", 7, "", "°°° °°°"},
		"nothing":        {"", 10, "  ", "  "},
		"one line of it": {"two\nlines\tof text", 40, "", "two lines of text"},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, test.want, wrap(test.text, test.limit, test.indent))
		})
	}
}

func TestTextOfASheetCannotReachTheTerminal(t *testing.T) {
	assert.Equal(t, "red [31m alarm  bell", clean("red\x1b[31m alarm \x07bell"))
	assert.Equal(t, "12 °Bx ½ été", clean("12 °Bx ½ été"), "printable text stays as it is")
	for _, r := range wrap("\x1b]0;title\x07 \u009b2J", 40, "") {
		assert.False(t, r < ' ' || r == '\u009b', "%q", r)
	}
}

func TestPaddingCountsRunes(t *testing.T) {
	assert.Equal(t, "219 °F  ", left("219 °F", 8))
	assert.Equal(t, "  219 °F", right("219 °F", 8))
	assert.Equal(t, "219 °F", left("219 °F", 3), "longer text stays whole")
}

func TestInk(t *testing.T) {
	assert.Equal(t, "error", ink(false).red("error"))
	assert.Equal(t, "\x1b[31merror\x1b[0m", ink(true).red("error"))
	assert.Empty(t, ink(true).bold(""))
}

func TestColourIsWantedUnlessRefused(t *testing.T) {
	t.Setenv("TERM", "xterm")
	t.Setenv("NO_COLOR", "")
	assert.True(t, wantsColour())
	t.Setenv("NO_COLOR", "1")
	assert.False(t, wantsColour())
	t.Setenv("NO_COLOR", "")
	t.Setenv("TERM", "dumb")
	assert.False(t, wantsColour())
}

// widest is how many columns the widest line of text takes.
func widest(text string) (n int, line string) {
	for l := range strings.SplitSeq(text, "\n") {
		if columns(l) > n {
			n, line = columns(l), l
		}
	}
	return n, line
}
