package draw

import (
	"testing"
)

const benchSeasons = 10000

func BenchmarkFill(b *testing.B) {
	s, dst := NewStream(41, "sap_per_tap", benchSeasons), make([]float64, benchSeasons)
	for b.Loop() {
		s.Fill(dst, 0)
	}
}

func BenchmarkApply(b *testing.B) {
	for _, c := range []struct {
		name, shape    string
		likely         float64
		floor, ceiling *float64
	}{
		{"metalog", "metalog", 10, nil, nil},
		{"metalog with floor", "metalog", 10, at(0), nil},
		{"metalog with both", "metalog", 10, at(0), at(30)},
		{"triangle", "triangle", 10, nil, nil},
		{"pert", "pert", 10, nil, nil},
		{"normal", "normal", none, nil, nil},
		{"lognormal", "lognormal", none, nil, nil},
		{"even", "even", none, nil, nil},
	} {
		shape, err := New(c.shape, 7, c.likely, 16, c.floor, c.ceiling)
		if err != nil {
			b.Fatal(err)
		}
		points, dst := column(41, "g", benchSeasons), make([]float64, benchSeasons)
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				copy(dst, points)
				Apply(shape, dst)
			}
		})
	}
}

func BenchmarkPert(b *testing.B) {
	for b.Loop() {
		if _, err := Pert(6, 10, 18); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTogether(b *testing.B) {
	own, others := column(41, "own", benchSeasons), columns(benchSeasons, "a", "b")
	for b.Loop() {
		if _, err := Together(own, others, []float64{0.5, -0.3}, nil); err != nil {
			b.Fatal(err)
		}
	}
}
