package columns

import "thawbook/engine/formula"

// run works n seasons, from on, of every slot in todo.
func (w *worker) run(todo []int, from, n int) {
	for _, i := range todo {
		if w.p.Plan.Slots[i].Drawn() {
			w.draw(i, from, n)
			continue
		}
		w.follow(i, n)
	}
}

func (w *worker) draw(i, from, n int) {
	dst := w.chunk[i]
	if points, ok := w.points[i]; ok {
		copy(dst, points[from:from+n])
	} else {
		w.streams[i].Fill(dst, from)
	}
	shape := w.p.Plan.Slots[i].Shape
	for k, u := range dst {
		dst[k] = shape.Quantile(u)
	}
}

// follow runs one routine over the chunk. The last step writes straight into
// the slot's column.
func (w *worker) follow(i, n int) {
	r, dst := w.p.routines[i], w.chunk[i]
	doubt, looked := false, false
	for k := range r.steps {
		s := &r.steps[k]
		out := w.scrap[s.dst][:n]
		if k == len(r.steps)-1 && r.result.place == scrap && r.result.at == s.dst {
			out = dst
		}
		w.step(i, s, out)
		looked = s.guard // the last step's own look is the result's
		if s.guard && !w.quiet && !finite(out) {
			w.mark(out)
			doubt = true
		}
	}
	if len(r.steps) == 0 || r.result.place != scrap || r.result.at != r.steps[len(r.steps)-1].dst {
		w.copyResult(i, r.result, dst)
		looked = false
	}
	if !doubt && !looked && !w.quiet && !finite(dst) {
		w.mark(dst)
		doubt = true
	}
	if doubt {
		w.locate(i, n)
	}
}

func (w *worker) copyResult(i int, from operand, dst []float64) {
	v := w.vec(i, from, len(dst))
	for k := range dst {
		dst[k] = v.at(k)
	}
}

func (w *worker) vec(i int, o operand, n int) vec {
	switch o.place {
	case fixed:
		return vec{x: o.x}
	case once:
		return vec{x: w.once[i][o.at]}
	case column:
		return vec{s: w.chunk[o.at]}
	}
	return vec{s: w.scrap[o.at][:n]}
}

func (w *worker) step(i int, s *step, dst []float64) {
	args := w.args[:len(s.args)]
	for k, o := range s.args {
		args[k] = w.vec(i, o, len(dst))
	}
	switch s.op {
	case formula.Neg:
		sub(dst, vec{x: 0}, args[0])
	case formula.Not:
		sub(dst, vec{x: 1}, args[0])
	case formula.If:
		choose(dst, args[0], args[1], args[2])
	case formula.Pick:
		pick(dst, args[0], args[1:])
	case formula.Call:
		apply(s.fn, dst, args, w.room)
	case formula.Sum, formula.Mean:
		total(dst, args, s.op == formula.Mean)
	default:
		binary(s.op, dst, args[0], args[1])
	}
}

// pick takes each season's number from the row its choice names.
func pick(dst []float64, choice vec, rows []vec) {
	for k := range dst {
		dst[k] = rows[int(choice.at(k))].at(k)
	}
}

func (w *worker) mark(out []float64) {
	for k, x := range out {
		if x*0 != 0 {
			w.suspect[k] = true
		}
	}
}
