package draw

import "math/bits"

// MostSeasons is the largest number of seasons a Stream can be asked for.
const MostSeasons = 1 << 30

// golden is 2^64 divided by the golden ratio, the step of the SplitMix64
// counter (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number
// generators", OOPSLA).
const golden = 0x9e3779b97f4a7c15

// rounds is how often a season's number is stirred. After four rounds
// neighbouring seasons of a thousand still show a pattern.
const rounds = 6

// Stream is the sequence of points that one guess lives through: point i of n
// lies in the cell [p(i)/n, (p(i)+1)/n), where p is a permutation of 0..n-1 and
// the place inside the cell is random. Both are worked out from the season's
// number, so any stretch of seasons can be drawn without those before it.
//
// A Stream is a value without state: it may be copied and used from several
// goroutines at once. The zero Stream has one season.
type Stream struct {
	seasons uint64
	mask    uint64
	fold    uint
	mul     [rounds]uint64
	add     [rounds]uint64
	jitter  uint64
	fine    uint
	whole   float64
}

// NewStream makes the stream of the guess called id for n seasons. Streams of
// different seeds or ids have nothing to do with each other. n below 1 is taken
// as 1, above MostSeasons as MostSeasons.
func NewStream(seed uint64, id string, n int) Stream {
	n = min(max(n, 1), MostSeasons)
	wide := max(10, uint(bits.Len64(uint64(n-1))))
	s := Stream{
		seasons: uint64(n),
		mask:    1<<wide - 1,
		fold:    (wide + 1) / 2,
		// Cell and place inside it must fit the 53 bits of a float64 together, so
		// that the sum is exact and no point is rounded into the next cell.
		fine: min(32, 52-wide),
	}
	s.whole = float64(int64(n) << (s.fine + 1))
	key := scramble(scramble(seed+golden) ^ hash(id))
	for r := range s.mul {
		key += golden
		s.mul[r] = scramble(key) | 1
		key += golden
		s.add[r] = scramble(key)
	}
	s.jitter = scramble(key + golden)
	return s
}

// Seasons is the number of seasons the stream was made for.
func (s Stream) Seasons() int { return int(max(s.seasons, 1)) }

// At is the point of season i, counted from 0 to Seasons()-1. It is never 0 and
// never 1. Seasons beyond that range are taken round again from the start.
func (s Stream) At(i int) float64 {
	var one [1]float64
	s.Fill(one[:], i)
	return one[0]
}

// Fill sets dst to the points of seasons from, from+1, … as At gives them.
func (s Stream) Fill(dst []float64, from int) {
	if s.seasons <= 1 {
		s.seasons, s.fine, s.whole = 1, 32, 1<<33
	}
	i := uint64(from) % s.seasons
	if from < 0 {
		i = (s.seasons - uint64(-from)%s.seasons) % s.seasons
	}
	for k := range dst {
		inside := scramble(s.jitter+i*golden) >> (64 - s.fine)
		at := s.cell(i)<<(s.fine+1) | inside<<1 | 1
		dst[k] = float64(int64(at)) / s.whole
		if i++; i == s.seasons {
			i = 0
		}
	}
}

// cell is a keyed permutation of 0..seasons-1. Each round multiplies by an odd
// number and adds modulo a power of two at or above seasons, then folds the upper bits onto
// the lower; both can be undone, so the rounds permute 0..mask. Going on until
// the number falls below seasons ("cycle walking", Black and Rogaway 2002,
// "Ciphers with arbitrary finite domains", CT-RSA) permutes the seasons alone.
func (s *Stream) cell(x uint64) uint64 {
	for {
		for r := range s.mul {
			x = (x*s.mul[r] + s.add[r]) & s.mask
			x ^= x >> s.fold
		}
		if x < s.seasons {
			return x
		}
	}
}

// scramble is the SplitMix64 finaliser (Stafford's variant 13): every bit of x
// reaches every bit of the answer.
func scramble(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// hash is FNV-1a of 64 bits.
func hash(text string) uint64 {
	h := uint64(0xcbf29ce484222325)
	for i := range len(text) {
		h = (h ^ uint64(text[i])) * 0x100000001b3
	}
	return h
}
