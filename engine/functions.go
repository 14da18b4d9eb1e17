package engine

import "thawbook/engine/formula"

// FunctionEntry is one defined function, as the reference list shows it.
type FunctionEntry struct {
	Name    string     `json:"name"`
	Family  string     `json:"family"`
	Summary string     `json:"summary"`
	Example string     `json:"example"`
	Result  string     `json:"result"`
	Source  string     `json:"source,omitempty"`
	Args    []ArgEntry `json:"args"`
}

// ArgEntry is one argument of a function.
type ArgEntry struct {
	Name    string `json:"name"`
	Unit    string `json:"unit"`
	Summary string `json:"summary"`
	// Min and Max bound what the function's source covers, in Unit; both are
	// left out when it covers everything.
	Min *float64 `json:"min,omitempty"`
	Max *float64 `json:"max,omitempty"`
}

// Functions is the reference list of every defined function, in order.
func Functions() []FunctionEntry {
	var out []FunctionEntry
	for _, f := range formula.Functions() {
		entry := FunctionEntry{Name: f.Name, Family: string(f.Family), Summary: f.Summary, Example: f.Example,
			Result: f.ResultText(), Source: f.Source, Args: []ArgEntry{}}
		for _, a := range f.Args {
			arg := ArgEntry{Name: a.Name, Unit: a.UnitText(f), Summary: a.Summary}
			if a.Min != 0 || a.Max != 0 {
				arg.Min, arg.Max = &a.Min, &a.Max
			}
			entry.Args = append(entry.Args, arg)
		}
		out = append(out, entry)
	}
	return out
}
