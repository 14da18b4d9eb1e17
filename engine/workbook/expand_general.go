package workbook

import "fmt"

func generalExpansions() map[string]expansion {
	one := func(name string) expansion {
		return func(_ *speller, a []piece) piece { return call(name, a[0]) }
	}
	return map[string]expansion{
		"abs": one("ABS"), "sqrt": one("SQRT"), "exp": one("EXP"), "ln": one("LN"),
		"round": func(_ *speller, a []piece) piece { return call("ROUND", a[0], number(0)) },
		// Some programs round INT towards nothing below it, though the standard has
		// it go down; these come out right either way.
		"floor": func(s *speller, a []piece) piece {
			x := s.atom("what is rounded down in the working of "+s.label, a[0])
			return formulaText(adding, call("INT", x), "-IF(INT(", x, ")>", x, ",1,0)")
		},
		"ceil": func(s *speller, a []piece) piece {
			x := s.atom("what is rounded up in the working of "+s.label, a[0])
			return formulaText(adding, call("INT", x), "+IF(INT(", x, ")<", x, ",1,0)")
		},
		"clamp": func(_ *speller, a []piece) piece { return call("MAX", a[1], call("MIN", a[0], a[2])) },
		"between": func(s *speller, a []piece) piece {
			n := (len(a) - 1) / 2
			return between(s, a[0], a[1:1+n], a[1+n:])
		},
	}
}

// between is the straight line through points: the first stretch that x is not
// beyond. Long runs of points are cut into steps.
func between(s *speller, x piece, xs, ys []piece) piece {
	x = s.atom("where to read off, in the working of "+s.label, x)
	for i := range xs {
		xs[i] = s.atom(fmt.Sprintf("point %d, in the working of %s", i+1, s.label), xs[i])
		ys[i] = s.atom(fmt.Sprintf("height of point %d, in the working of %s", i+1, s.label), ys[i])
	}
	out := missing()
	for i := len(xs) - 2; i >= 0; i-- {
		line := formulaText(adding, ys[i], "+(", ys[i+1], "-", ys[i], ")*(", x, "-", xs[i], ")/(", xs[i+1], "-", xs[i], ")")
		if i == len(xs)-2 {
			out = line
			continue
		}
		out = call("IF", piece{text: x.text + "<=" + xs[i+1].text}, line, out)
		if out.deep > deepest || len(out.text) > longest {
			out = s.apart("the points from "+xs[i].text+" on", out)
		}
	}
	tests := []piece{{text: x.text + ">=" + xs[0].text}, {text: x.text + "<=" + xs[len(xs)-1].text}}
	for i := range len(xs) - 1 {
		switch {
		case !xs[i].fixed || !xs[i+1].fixed:
			tests = append(tests, piece{text: xs[i].text + "<" + xs[i+1].text})
		case xs[i].value >= xs[i+1].value:
			return missing()
		}
	}
	return call("IF", s.all(tests), out, missing())
}

// all is that every test holds, a few at a time: programs take 255 at most, and
// a formula has its length.
func (s *speller) all(tests []piece) piece {
	const most = 20
	for len(tests) > most {
		some := s.apart("whether the points rise, 1 for yes", call("IF", call("AND", tests[:most]...), number(1), number(0)))
		tests = append(tests[most:], piece{text: some.text + "=1"})
	}
	return call("AND", tests...)
}
