package columns_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thawbook/engine/columns"
	"thawbook/engine/formula"
	"thawbook/engine/sheet"
)

// chain is a sheet in which "out" hangs on "a" by two lines and on "b" by none,
// "beside" on "b" alone.
func chain() *sheet.Sheet {
	return lines(guess("a", 1, 3, 5), guess("b", 2, 3, 7), is("k", 2),
		work("twice", "a * k"), work("more", "twice + 1"), work("beside", "b * k"), work("out", "more * b"))
}

func apart(seed uint64, ids ...string) *columns.Apart {
	a := &columns.Apart{Seed: seed, Lines: map[string]bool{}}
	for _, id := range ids {
		a.Lines[id] = true
	}
	return a
}

func TestOnlyWorksWhatALineReads(t *testing.T) {
	plan := bind(t, chain())
	p := columns.Lower(plan)
	seasons := columns.Seasons{N: 2500, Seed: 3}
	whole, err := p.Run(seasons, nil, nil)
	require.NoError(t, err)
	part, err := p.Only(plan.Find("more")).Run(seasons, nil, nil)
	require.NoError(t, err)
	assert.Equal(t, 4, part.Of, "a, k, twice and more")
	assert.Equal(t, whole.Columns[plan.Find("more")].Values, part.Columns[plan.Find("more")].Values)
	assert.Nil(t, part.Columns[plan.Find("beside")])
	assert.Len(t, plan.Order, 7, "the plan itself keeps all its lines")
}

// TestALineDrawnApart holds a run in which one guess comes from another seed to
// the two runs it is put together from, season by season.
func TestALineDrawnApart(t *testing.T) {
	plan := bind(t, chain())
	p := columns.Lower(plan)
	at := plan.Find
	first, err := p.Run(columns.Seasons{N: 2500, Seed: 3}, nil, nil)
	require.NoError(t, err)
	second, err := p.Run(columns.Seasons{N: 2500, Seed: 4}, nil, nil)
	require.NoError(t, err)

	mixed := columns.Seasons{N: 2500, Seed: 3, Apart: apart(4, "a")}
	r, err := p.Run(mixed, first, nil)
	require.NoError(t, err)
	assert.Equal(t, 4, r.Worked, "a, twice, more and out")
	assert.Same(t, first.Columns[at("b")], r.Columns[at("b")])
	assert.Equal(t, second.Columns[at("a")].Values, r.Columns[at("a")].Values)
	for k := range 2500 {
		want := (second.Columns[at("a")].At(k)*2 + 1) * first.Columns[at("b")].At(k)
		require.InEpsilon(t, want, r.Columns[at("out")].At(k), 1e-12)
	}

	one, err := p.One(at("out"), mixed, first, second)
	require.NoError(t, err)
	assert.Equal(t, r.Columns[at("out")].Values, one.Values, "the way that keeps nothing in between agrees")
	alone, err := p.One(at("out"), mixed)
	require.NoError(t, err)
	assert.Equal(t, one.Values, alone.Values, "and needs no run to start from")
}

func TestOneSharesWhatIsKnown(t *testing.T) {
	plan := bind(t, chain())
	p := columns.Lower(plan)
	seasons := columns.Seasons{N: 1500, Seed: 3}
	first, err := p.Run(seasons, nil, nil)
	require.NoError(t, err)
	out := plan.Find("out")
	same, err := p.One(out, seasons, first)
	require.NoError(t, err)
	assert.Same(t, first.Columns[out], same)
	steady, err := p.One(plan.Find("k"), seasons)
	require.NoError(t, err)
	assert.True(t, steady.Steady)
	assert.Equal(t, 2.0, steady.Value)
	beside, err := p.One(plan.Find("beside"), columns.Seasons{N: 1500, Seed: 3, Apart: apart(4, "a")}, first)
	require.NoError(t, err)
	assert.Same(t, first.Columns[plan.Find("beside")], beside, "what does not hang on the line drawn apart is not worked")
}

// TestGuessesThatMoveTogetherAreDrawnApartTogether: drawn apart as one they are
// what the other seed makes of them.
func TestGuessesThatMoveTogetherAreDrawnApartTogether(t *testing.T) {
	b := guess("b", 1, 2, 4)
	b.MovesWith = []sheet.Moves{{ID: "a", Rank: -0.8}}
	plan := bind(t, lines(guess("a", 1, 3, 5), b, work("out", "a * b")))
	p := columns.Lower(plan)
	other, err := p.Run(columns.Seasons{N: 1200, Seed: 9}, nil, nil)
	require.NoError(t, err)
	both, err := p.One(2, columns.Seasons{N: 1200, Seed: 3, Apart: apart(9, "a", "b")}, other)
	require.NoError(t, err)
	assert.Same(t, other.Columns[2], both)
}

// TestOneLetsNoNumberPass: a division by nothing is NaN or infinite in the same
// seasons either way.
func TestOneLetsNoNumberPass(t *testing.T) {
	plan, list := formula.Bind(lines(guess("a", -2, 0, 2), work("out", "ln(a) + 1")))
	require.Empty(t, list)
	p := columns.Lower(plan)
	r, err := p.Run(columns.Seasons{N: 1100, Seed: 3}, nil, nil)
	require.NoError(t, err)
	require.NotEmpty(t, r.Columns[1].Warnings)
	one, err := p.One(1, columns.Seasons{N: 1100, Seed: 3})
	require.NoError(t, err)
	require.Empty(t, one.Warnings)
	for k, want := range r.Columns[1].Values {
		require.True(t, same(want, one.Values[k]), "season %d", k)
	}
}
