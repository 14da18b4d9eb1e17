package formula

import "sort"

// Family groups functions in the reference list.
type Family string

// The families, in the order the reference lists them.
const (
	SapAndSyrup Family = "sap and syrup"
	Boiling     Family = "boiling"
	FireAndRig  Family = "fire and rig"
	Money       Family = "money"
	Selling     Family = "selling"
	General     Family = "general"
)

// Arg is one argument of a function.
type Arg struct {
	Name string
	// Unit is the unit the function works in; the argument is converted to it.
	// Empty when Like, Same or Names says what is wanted.
	Unit string
	// Like names a unit whose dimension is wanted; the argument keeps its own
	// scale, because the function works in any.
	Like string
	// Any takes a number of any dimension, at its own scale.
	Any bool
	// SameAs is 1 + the place of the argument whose dimension and scale this
	// one shares; it is converted to that one's unit. 0: none.
	SameAs int
	// Names are the names a choice may have here. The function gets its place.
	Names []string
	// Column says a table column, or numbers in square brackets, is wanted.
	Column  bool
	Summary string
	// Min and Max bound what the function's source covers, in the unit it
	// works in; both 0 when it covers everything.
	Min, Max float64
}

// Function is the one entry a defined function has. Checking, the columns form,
// the reference list and the workbook all read it.
type Function struct {
	Name    string
	Family  Family
	Summary string
	Example string
	Args    []Arg
	// Result is the unit of the answer; when empty, ResultAs is 1 + the place
	// of the argument whose unit it shares; when both are empty, rule decides.
	Result   string
	ResultAs int
	// Scales says the answer is in proportion to the first argument, so that a
	// run may work the rest of it once when nothing else varies.
	Scales bool
	// Source names where the equation is published, or "common practice".
	Source string
	// F1 to F4 are the pure function for as many arguments; exactly one is set,
	// or Fn for a list of them.
	F1 func(a float64) float64
	F2 func(a, b float64) float64
	F3 func(a, b, c float64) float64
	F4 func(a, b, c, d float64) float64
	Fn func(args []float64) float64
	// rule is set for the few functions whose units need more than a table.
	rule func(c *checker, call *callSite) *Node
	// repeat says the last argument may be given any number of times more.
	repeat bool
}

// Apply works the function for one season. It panics when args has another
// length than the checked call gave it.
func (f *Function) Apply(args []float64) float64 {
	switch {
	case f.F1 != nil:
		return f.F1(args[0])
	case f.F2 != nil:
		return f.F2(args[0], args[1])
	case f.F3 != nil:
		return f.F3(args[0], args[1], args[2])
	case f.F4 != nil:
		return f.F4(args[0], args[1], args[2], args[3])
	}
	return f.Fn(args)
}

// ResultText is the unit of the answer as the reference list prints it.
func (f *Function) ResultText() string {
	switch {
	case f.Result != "":
		return f.Result
	case f.ResultAs > 0:
		return "as " + f.Args[f.ResultAs-1].Name
	}
	return "see summary"
}

// Functions is every defined function, by family and then as the design lists
// them. The slice is new at each call and may be changed.
func Functions() []*Function {
	var out []*Function
	for _, family := range [][]*Function{
		sapFunctions(), boilingFunctions(), fireFunctions(), moneyFunctions(), sellingFunctions(), generalFunctions(),
	} {
		out = append(out, family...)
	}
	return out
}

// functionTable is the functions by name.
func functionTable() map[string]*Function {
	table := map[string]*Function{}
	for _, f := range Functions() {
		table[f.Name] = f
	}
	return table
}

func functionNames(table map[string]*Function) []string {
	var names []string
	for name := range table {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

// UnitText is what an argument of f is to be, as the reference list prints it.
func (a Arg) UnitText(f *Function) string {
	switch {
	case a.Names != nil:
		return "one of its names"
	case a.Column:
		return "a column"
	case a.SameAs > 0:
		return "as " + f.Args[a.SameAs-1].Name
	case a.Like == "$":
		return "any money"
	case a.Like != "":
		return "any volume"
	case a.Any:
		return "any"
	case a.Unit == "":
		return "a unit in quotes"
	}
	return a.Unit
}
