// Package plain runs a bound sheet the plain way: each formula is printed as
// expr's own language, compiled by expr, and run on expr's machine one season at
// a time. It is slow and it is the referee: what the columns way works out must
// agree with it.
package plain

import (
	"fmt"
	"strconv"

	"github.com/expr-lang/expr"
	"github.com/expr-lang/expr/vm"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// Machine holds every formula of a plan, compiled by expr.
type Machine struct {
	plan     *formula.Plan
	programs []*vm.Program // by slot; nil where there is no formula
	machine  vm.VM
	env      map[string]float64
}

// Compile prints and compiles every formula that can be reckoned. The error is
// expr's own, and means that what we print is not what expr reads.
func Compile(plan *formula.Plan) (*Machine, error) {
	m := &Machine{plan: plan, programs: make([]*vm.Program, len(plan.Slots)), env: map[string]float64{}}
	for i := range plan.Slots {
		m.env[name(i)] = 0
	}
	options := append(functions(), expr.DisableAllBuiltins(), expr.Env(m.env))
	for _, i := range plan.Order {
		slot := plan.Slots[i]
		if slot.Line.Kind != sheet.Formula {
			continue
		}
		text := formula.Print(slot.Expr, m.named)
		program, err := expr.Compile(text, options...)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", slot.ID(), err)
		}
		m.programs[i] = program
	}
	return m, nil
}

func name(slot int) string { return "s" + strconv.Itoa(slot) }

// named is how a formula reads a slot: a yes or no is held as a number.
func (m *Machine) named(slot int) string {
	if m.plan.Slots[slot].Kind == formula.Truth {
		return "(" + name(slot) + " != 0.0)"
	}
	return name(slot)
}

// functions gives expr every defined function that has a number for an answer.
func functions() []expr.Option {
	var out []expr.Option
	for _, f := range formula.Functions() {
		if shape := signature(f); shape != nil {
			out = append(out, expr.Function(f.Name, func(params ...any) (any, error) {
				args := make([]float64, len(params))
				for i, p := range params {
					args[i] = p.(float64)
				}
				return f.Apply(args), nil
			}, shape))
		}
	}
	return out
}

func signature(f *formula.Function) any {
	switch {
	case f.F1 != nil:
		return new(func(float64) float64)
	case f.F2 != nil:
		return new(func(float64, float64) float64)
	case f.F3 != nil:
		return new(func(float64, float64, float64) float64)
	case f.F4 != nil:
		return new(func(float64, float64, float64, float64) float64)
	case f.Fn != nil:
		return new(func(...float64) float64)
	}
	return nil
}

// Season works every formula of one season, in the order of work. values holds
// one number a slot; those of lines that are not formulas must be set, the
// others are written. The error is expr's own.
func (m *Machine) Season(values []float64) error {
	for _, i := range m.plan.Order {
		if program := m.programs[i]; program != nil {
			out, err := m.machine.Run(program, m.env)
			if err != nil {
				return fmt.Errorf("%s: %w", m.plan.Slots[i].ID(), err)
			}
			values[i] = number(out)
		}
		m.env[name(i)] = values[i]
	}
	return nil
}

func number(out any) float64 {
	switch x := out.(type) {
	case float64:
		return x
	case bool:
		if x {
			return 1
		}
		return 0
	}
	panic(fmt.Sprintf("plain: a formula came to %T", out))
}
