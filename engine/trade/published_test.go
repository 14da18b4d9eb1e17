package trade_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// row is one row of a published table, by column name.
type row map[string]string

func (r row) number(t *testing.T, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r[column], 64)
	require.NoError(t, err, "column %s of %v", column, r)
	return x
}

// published reads a table of testdata; its README names each one's source.
func published(t *testing.T, name string) []row {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "testdata", name))
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	require.NoError(t, err)
	var rows []row
	for _, line := range lines[1:] {
		r := row{}
		for i, cell := range line {
			r[lines[0][i]] = cell
		}
		rows = append(rows, r)
	}
	return rows
}
