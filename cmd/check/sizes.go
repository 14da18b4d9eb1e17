package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/andybalholm/brotli"
)

// budget is the most bytes a program of the page may take when sent the way
// web hosts send it, compressed with brotli.
type budget struct {
	program string
	most    int
	why     string
}

func budgets() []budget {
	return []budget{
		{"reckoner", 1_700_000, "everyone who opens the page waits for it, on a farm's connection"},
	}
}

// sizes measures every program that was built, and notes the sizes in
// .build/sizes.txt. One without a budget fails, so that none is forgotten.
func (t tree) sizes(_ context.Context, log io.Writer) error {
	files, err := filepath.Glob(t.path(".build", "wasm", "*.wasm"))
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return errors.New("no program was built")
	}
	var notes bytes.Buffer
	var over []error
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".wasm")
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		packed, err := packedSize(text)
		if err != nil {
			return err
		}
		fmt.Fprintf(&notes, "%s: %d bytes, %d sent\n", name, len(text), packed)
		over = append(over, within(budgets(), name, packed))
	}
	if _, err := log.Write(notes.Bytes()); err != nil {
		return err
	}
	over = append(over, os.WriteFile(t.path(".build", "sizes.txt"), notes.Bytes(), 0o644))
	return errors.Join(over...)
}

func within(budgets []budget, program string, size int) error {
	for _, b := range budgets {
		if b.program != program {
			continue
		}
		if size > b.most {
			return fmt.Errorf("%s takes %d bytes sent, over its budget of %d: %s", program, size, b.most, b.why)
		}
		return nil
	}
	return fmt.Errorf("%s has no budget: give it one in budgets", program)
}

// packedSize counts the bytes of text at brotli's best quality without keeping
// them.
func packedSize(text []byte) (int, error) {
	var n counter
	w := brotli.NewWriterLevel(&n, brotli.BestCompression)
	if _, err := w.Write(text); err != nil {
		return 0, err
	}
	err := w.Close()
	return int(n), err
}

type counter int

func (c *counter) Write(p []byte) (int, error) {
	*c += counter(len(p))
	return len(p), nil
}
