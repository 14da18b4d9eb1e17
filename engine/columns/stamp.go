package columns

import (
	"hash/fnv"
	"math"

	"thawbook/engine/sheet"
)

// stamp is a number that tells two columns apart: equal when a slot holds the
// same thing, or is worked the same way from slots of the same stamps. It is how
// a run knows what an edit left alone. 64 bits make a chance meeting of two of a
// sheet's stamps less likely than one in 10¹³.
type stamp uint64

type mixer struct{ h uint64 }

func (m *mixer) number(x float64) { m.bits(math.Float64bits(x)) }

// bits folds x in with the finaliser of splitmix64 (Steele, Lea and Flood 2014).
func (m *mixer) bits(x uint64) {
	z := m.h*0x9e3779b97f4a7c15 + x + 0x632be59bd9b4e019
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	m.h = z ^ z>>31
}

func (m *mixer) text(s string) {
	h := fnv.New64a()
	h.Write([]byte(s))
	m.bits(h.Sum64())
}

func (m *mixer) bound(x *float64) {
	if x == nil {
		m.bits(1)
		return
	}
	m.number(*x)
}

// stamps works every slot's stamp, in the order of work.
func (p *Program) stamps(s Seasons) []stamp {
	out := make([]stamp, len(p.Plan.Slots))
	for _, i := range p.Plan.Order {
		out[i] = p.stampOf(i, s, out)
	}
	return out
}

func (p *Program) stampOf(i int, s Seasons, before []stamp) stamp {
	slot := p.Plan.Slots[i]
	line := slot.Line
	m := mixer{}
	m.text(string(line.Kind))
	switch line.Kind {
	case sheet.Is:
		m.number(line.Is)
	case sheet.Choose:
		for at, name := range slot.Names {
			if name == line.Choose {
				m.bits(uint64(at))
			}
		}
	case sheet.Formula:
		m.bits(slot.Text)
		for _, use := range slot.Uses {
			m.bits(uint64(before[use]))
		}
	default:
		p.drawnStamp(&m, i, s, before)
	}
	return stamp(m.h)
}

// drawnStamp covers all that a guess's or a record's draws hang on.
func (p *Program) drawnStamp(m *mixer, i int, s Seasons, before []stamp) {
	line := p.Plan.Slots[i].Line
	m.text(line.ID)
	m.bits(s.seedOf(line.ID))
	m.bits(uint64(s.N))
	m.text(line.Shape)
	for _, x := range append([]float64{line.Low, line.Likely, line.High}, line.Records...) {
		m.number(x)
	}
	m.bound(line.Floor)
	m.bound(line.Ceiling)
	for _, with := range line.MovesWith {
		m.number(with.Rank)
		if at := p.Plan.Find(with.ID); at >= 0 {
			m.bits(uint64(before[at]))
		}
	}
}
