package formula

import (
	"fmt"
	"strings"

	"github.com/expr-lang/expr/ast"

	"thawbook/engine/diag"
	"thawbook/engine/units"
)

// names is everything a formula of one sheet may name.
type names struct {
	slots    []*Slot
	byID     map[string]int
	tables   map[string]*table
	currency string
}

// table is a table as formulas see it: cells are slots, by row and column.
type table struct {
	id      string
	rows    []string
	columns []column
	cells   [][]int
}

type column struct{ id string }

func (t *table) column(id string) int {
	for i, c := range t.columns {
		if c.id == id {
			return i
		}
	}
	return -1
}

func (t *table) row(id string) int {
	for i, r := range t.rows {
		if r == id {
			return i
		}
	}
	return -1
}

// rowScope is set while a cell's formula is checked: its row's own columns come
// before the sheet's lines.
type rowScope struct {
	table *table
	row   int
}

func (n *names) money() string { return n.currency }

func (n *names) taken(id string) bool {
	_, line := n.byID[id]
	return line || n.tables[id] != nil
}

func (c *checker) identifier(n *ast.IdentifierNode) *Node {
	for i := len(c.vars) - 1; i >= 0; i-- {
		if v := c.vars[i]; v.name == n.Value {
			return &Node{Op: Var, Kind: v.node.Kind, Slot: v.at, Name: v.name, Unit: v.node.Unit}
		}
	}
	if c.row != nil {
		if col := c.row.table.column(n.Value); col >= 0 {
			return c.ref(c.row.table.cells[c.row.row][col], n.Value)
		}
	}
	if slot, ok := c.names.byID[n.Value]; ok {
		return c.ref(slot, n.Value)
	}
	if c.names.tables[n.Value] != nil {
		return c.fail(n, diag.NotANumber, "name a column of it: sum("+n.Value+".…)", "the table %q is not a number", n.Value)
	}
	if c.functions[n.Value] != nil {
		return c.fail(n, diag.NotANumber, "give it its arguments: "+c.functions[n.Value].Example, "the function %q is not a number", n.Value)
	}
	return c.fail(n, diag.UnknownName, c.nearestName(n.Value), "nothing is called %q", n.Value)
}

func (c *checker) ref(slot int, name string) *Node {
	s := c.names.slots[slot]
	return &Node{Op: Ref, Kind: s.Kind, Slot: slot, Name: name, Names: s.Names, Unit: s.Unit}
}

func (c *checker) nearestName(id string) string {
	var all []string
	if c.row != nil {
		for _, col := range c.row.table.columns {
			all = append(all, col.id)
		}
	}
	for _, s := range c.names.slots {
		if !strings.Contains(s.ID(), ".") {
			all = append(all, s.ID())
		}
	}
	for id := range c.names.tables {
		all = append(all, id)
	}
	return diag.Nearest(id, all)
}

// member reads table.column, table.row.column, table["row"].column and
// table[choice].column.
func (c *checker) member(n *ast.MemberNode) *Node {
	if t := c.tableOf(n.Node); t != nil {
		return c.column(n, t)
	}
	inner, ok := n.Node.(*ast.MemberNode)
	if !ok {
		if id, named := n.Node.(*ast.IdentifierNode); named && !c.names.taken(id.Value) {
			return c.fail(id, diag.UnknownTable, c.nearestName(id.Value), "no table is called %q", id.Value)
		}
		return c.fail(n, diag.Refused, "only tables have parts: fuels.propane.price", "%q has no parts", c.text(n.Node))
	}
	t := c.tableOf(inner.Node)
	if t == nil {
		return c.member(inner) // says what is wrong with it
	}
	name, ok := n.Property.(*ast.StringNode)
	if !ok {
		return c.fail(n, diag.Refused, "a column is named after a dot", "a column cannot be looked up")
	}
	col := t.column(name.Value)
	if col < 0 {
		return c.unknownColumn(n.Property, t, name.Value)
	}
	if row, isText := inner.Property.(*ast.StringNode); isText {
		return c.cell(inner, t, row.Value, col)
	}
	return c.pick(n, inner.Property, t, col)
}

func (c *checker) tableOf(n ast.Node) *table {
	id, ok := n.(*ast.IdentifierNode)
	if !ok {
		return nil
	}
	return c.names.tables[id.Value]
}

func (c *checker) text(n ast.Node) string {
	if id, ok := n.(*ast.IdentifierNode); ok {
		return id.Value
	}
	return "this"
}

func (c *checker) unknownColumn(n ast.Node, t *table, name string) *Node {
	var all []string
	for _, col := range t.columns {
		all = append(all, col.id)
	}
	return c.fail(n, diag.UnknownColumn, diag.Nearest(name, all), "the table %q has no column %q", t.id, name)
}

// column is a whole column, as a list.
func (c *checker) column(n *ast.MemberNode, t *table) *Node {
	name, ok := n.Property.(*ast.StringNode)
	if !ok {
		return c.fail(n, diag.NotANumber, fmt.Sprintf("name a column: %s[…].%s", t.id, t.columns[0].id), "a row of %q is not a number", t.id)
	}
	col := t.column(name.Value)
	if col < 0 {
		if t.row(name.Value) >= 0 {
			return c.fail(n, diag.NotANumber, fmt.Sprintf("name a column: %s.%s.%s", t.id, name.Value, t.columns[0].id), "the row %q is not a number", name.Value)
		}
		return c.unknownColumn(n.Property, t, name.Value)
	}
	list := &Node{Op: Gather, Kind: List, Name: t.id + "." + name.Value, Unit: units.One()}
	for row := range t.rows {
		list.Args = append(list.Args, c.ref(t.cells[row][col], t.id+"."+t.rows[row]+"."+name.Value))
	}
	return c.evened(n, list)
}

// evened checks that a list's numbers share a dimension and brings them to the
// unit of the first.
func (c *checker) evened(n ast.Node, list *Node) *Node {
	if len(list.Args) == 0 {
		return c.fail(n, diag.NotANumber, "add a row to it", "the column %q has no rows", list.Name)
	}
	for i, a := range list.Args {
		if a.Kind != Number {
			return c.fail(n, diag.NotANumber, "only columns of numbers are added up", "the column %q does not hold numbers", list.Name)
		}
		_, b, ok := alike(list.Args[0], a)
		if !ok {
			return c.fail(n, diag.UnitMismatch, "one column holds one dimension", "the column %q holds %s and %s", list.Name, describe(list.Args[0]), describe(a))
		}
		list.Args[i] = b
	}
	list.Unit = list.Args[0].Unit
	return list
}

func (c *checker) cell(n *ast.MemberNode, t *table, row string, col int) *Node {
	at := t.row(row)
	if at < 0 {
		return c.fail(n.Property, diag.UnknownName, diag.Nearest(row, t.rows), "the table %q has no row %q", t.id, row)
	}
	return c.ref(t.cells[at][col], t.id+"."+row+"."+t.columns[col].id)
}

// pick looks a column up by a choice: fuels[fuel].heat.
func (c *checker) pick(n *ast.MemberNode, index ast.Node, t *table, col int) *Node {
	choice := c.check(index)
	if choice == nil {
		return nil
	}
	if choice.Kind != Choice {
		return c.fail(index, diag.WrongUnit, "a row is looked up with a choice among the table's rows", "%s is not a choice", describe(choice))
	}
	out := &Node{Op: Pick, Kind: Number, Name: t.id + "[" + choice.Name + "]." + t.columns[col].id}
	list := &Node{Name: t.id + "." + t.columns[col].id}
	for _, name := range choice.Names {
		row := t.row(name)
		if row < 0 {
			return c.fail(index, diag.UnknownChoice, fmt.Sprintf("let it choose among: %s", t.id), "%q may be %q, which %q has no row for", choice.Name, name, t.id)
		}
		list.Args = append(list.Args, c.ref(t.cells[row][col], t.id+"."+name+"."+t.columns[col].id))
	}
	if c.evened(n, list) == nil {
		return nil
	}
	out.Args = append([]*Node{choice}, list.Args...)
	out.Unit = list.Unit
	return out
}
