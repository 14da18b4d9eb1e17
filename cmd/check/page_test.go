package main

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAddressIn(t *testing.T) {
	address, ok := addressIn(strings.NewReader("Building\nThawbook is at http://127.0.0.1:7141/\n"))
	assert.True(t, ok)
	assert.Equal(t, "http://127.0.0.1:7141/", address)
	_, ok = addressIn(strings.NewReader("the page cannot be built\n"))
	assert.False(t, ok)
}

func TestAMissingBrowserIsSkippedOnlyByAPerson(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	var log strings.Builder
	t.Setenv("CI", "")
	err := (tree{}).browser(t.Context(), &log)
	assert.True(t, errors.As(err, new(skip)))
	assert.ErrorContains(t, err, "install Chromium")
	t.Setenv("CI", "true")
	err = (tree{}).browser(t.Context(), &log)
	assert.Error(t, err)
	assert.False(t, errors.As(err, new(skip)))
}
