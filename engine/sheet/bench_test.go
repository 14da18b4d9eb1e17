package sheet

import (
	"os"
	"testing"
)

func BenchmarkParseAndResolve(b *testing.B) {
	source, err := os.ReadFile("../../scenarios/heron-ridge-pallets.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		d, _ := Parse("x.yaml", source)
		Resolve(d, os.ReadFile)
	}
}

func BenchmarkEdit(b *testing.B) {
	source, err := os.ReadFile("../../scenarios/heron-ridge-pallets.yaml")
	if err != nil {
		b.Fatal(err)
	}
	d, _ := Parse("x.yaml", source)
	x := 1.0
	for b.Loop() {
		x++
		d.Edit(Edit{About: "taps", Set: Set{Is: &x}}, nil)
	}
}
