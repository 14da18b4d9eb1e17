package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// undocumented names what a file exports without a comment: functions, methods
// of exported types, types, and constants and variables, which may share one
// comment for their group.
func undocumented(file *ast.File) []string {
	var bare []string
	for _, decl := range file.Decls {
		switch d := decl.(type) {
		case *ast.FuncDecl:
			if d.Name.IsExported() && d.Doc == nil && exportedReceiver(d) {
				bare = append(bare, d.Name.Name)
			}
		case *ast.GenDecl:
			for _, spec := range d.Specs {
				bare = append(bare, undocumentedSpec(d, spec)...)
			}
		}
	}
	return bare
}

func undocumentedSpec(d *ast.GenDecl, spec ast.Spec) []string {
	var bare []string
	switch s := spec.(type) {
	case *ast.TypeSpec:
		if s.Name.IsExported() && s.Doc == nil && (d.Doc == nil || d.Lparen.IsValid()) {
			bare = append(bare, s.Name.Name)
		}
	case *ast.ValueSpec:
		for _, name := range s.Names {
			if name.IsExported() && d.Doc == nil && s.Doc == nil && s.Comment == nil {
				bare = append(bare, name.Name)
			}
		}
	}
	return bare
}

func exportedReceiver(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	kind := d.Recv.List[0].Type
	if star, ok := kind.(*ast.StarExpr); ok {
		kind = star.X
	}
	if generic, ok := kind.(*ast.IndexExpr); ok {
		kind = generic.X
	}
	name, ok := kind.(*ast.Ident)
	return !ok || name.IsExported()
}

func TestEveryExportedNameIsDocumented(t *testing.T) {
	packages := map[string]bool{} // folder: has a package comment
	err := tree{"../.."}.eachGoFile(func(path string) error {
		if strings.HasSuffix(path, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		assert.Empty(t, undocumented(file), "%s exports this without a comment", path)
		dir := filepath.Dir(path)
		packages[dir] = packages[dir] || file.Doc != nil
		return nil
	})
	require.NoError(t, err)
	require.Contains(t, packages, filepath.Join("..", "..", "engine", "diag"))
	for dir, documented := range packages {
		assert.True(t, documented, "the package in %s has no comment", dir)
	}
}

// The test above would also pass if undocumented saw nothing.
func TestUndocumentedIsSeen(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "a.go", `package a

func Bare() {}

// Told is told.
func Told() {}

type Kind int

// Shared constants.
const (
	One = 1
	Two = 2
)

const (
	Three = 3
	Four  = 4 // four
	five  = 5
)

func (Kind) Method() {}
func (*Kind) Other() {}
func (hidden) Method2() {}

type (
	Inner struct{}
)

var Loose int
`, parser.ParseComments)
	require.NoError(t, err)
	assert.Equal(t, []string{"Bare", "Kind", "Three", "Method", "Other", "Inner", "Loose"}, undocumented(file))
}
