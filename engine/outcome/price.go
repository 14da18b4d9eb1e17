package outcome

import "math"

// Jar is one size that is sold, season by season. All columns are of one length.
type Jar struct {
	// Size is the volume in one, Price the money asked for one, Filled how many.
	Size, Price, Filled []float64
	// Parts is the money that jar, cap and label of one come to.
	Parts []float64
}

// Season is what a season's jars have to carry between them. A column is nil
// when it is not known, and is then left out of every account.
type Season struct {
	// Takings is the money that came in for all jars; without it every jar brings
	// its price.
	Takings []float64
	// Selling is the money paid to sell them: fees, stall and way.
	Selling []float64
	// Making is the money the syrup itself came to, jars and selling apart.
	Making []float64
	// Syrup is the volume made, whether sold or not.
	Syrup []float64
	// Hours worked, and the Worth of one.
	Hours, Worth []float64
}

// Account says where the money of one jar goes, season by season. A season has NaN
// where its number hangs on a division by nothing, as when no jar was filled.
// Columns that hang on what is not known are nil.
type Account struct {
	// Brings is its share of the takings, by the price asked: less than the price
	// when some are sold for less or not at all.
	Brings []float64
	// Selling is its share of the selling, by what it brings; Parts is jar, cap and
	// label; Syrup is what the syrup in it cost to make.
	Selling, Parts, Syrup []float64
	// Left is what remains of Brings, for the hours.
	Left []float64
	// Hours are those in it, by its volume; Worked is what they are worth, and After
	// what remains of Left behind them.
	Hours, Worked, After []float64
	// ByVolume is Left for each volume in it, ByHour for each hour in it.
	ByVolume, ByHour []float64
}

// Accounts shares a season out over its jars. Making and hours go by volume over
// all syrup made, so that what was kept or given away carries its own; selling
// goes by what a jar brings. Therefore the sum of After over all jars filled, less
// what making and hours come to for the syrup in no jar, is takings less all costs.
func Accounts(jars []Jar, s Season) []Account {
	asked := make([]float64, length(jars))
	for _, j := range jars {
		for i := range asked {
			asked[i] += j.Filled[i] * j.Price[i]
		}
	}
	out := make([]Account, len(jars))
	for k, j := range jars {
		out[k] = account(j, s, asked)
	}
	return out
}

func length(jars []Jar) int {
	if len(jars) == 0 {
		return 0
	}
	return len(jars[0].Price)
}

func account(j Jar, s Season, asked []float64) Account {
	a := Account{Brings: j.Price, Parts: j.Parts}
	n := len(j.Price)
	if s.Takings != nil {
		a.Brings = each(n, func(i int) float64 { return j.Price[i] * s.Takings[i] / asked[i] })
		if s.Selling != nil {
			// Not Brings × selling / takings, which loses the stall paid for when
			// nothing is sold.
			a.Selling = each(n, func(i int) float64 { return j.Price[i] * s.Selling[i] / asked[i] })
		}
	}
	if s.Making != nil && s.Syrup != nil {
		a.Syrup = each(n, func(i int) float64 { return j.Size[i] * s.Making[i] / s.Syrup[i] })
	}
	a.Left = each(n, func(i int) float64 { return a.Brings[i] - or0(a.Selling, i) - or0(a.Parts, i) - or0(a.Syrup, i) })
	a.ByVolume = each(n, func(i int) float64 { return a.Left[i] / j.Size[i] })
	if s.Hours == nil || s.Syrup == nil {
		return a
	}
	a.Hours = each(n, func(i int) float64 { return j.Size[i] * s.Hours[i] / s.Syrup[i] })
	a.ByHour = each(n, func(i int) float64 { return a.Left[i] / a.Hours[i] })
	if s.Worth != nil {
		a.Worked = each(n, func(i int) float64 { return a.Hours[i] * s.Worth[i] })
		a.After = each(n, func(i int) float64 { return a.Left[i] - a.Worked[i] })
	}
	return a
}

// each makes a column, with NaN for an infinity, which a division by nothing gives.
func each(n int, of func(i int) float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		x := of(i)
		if !finite(x) {
			x = math.NaN()
		}
		out[i] = x
	}
	return out
}

func or0(col []float64, i int) float64 {
	if col == nil {
		return 0
	}
	return col[i]
}

// PerVolume is the price of one volume of each jar, season by season.
func PerVolume(j Jar) []float64 {
	return each(len(j.Price), func(i int) float64 { return j.Price[i] / j.Size[i] })
}

// ShareBelow is the share of the seasons in which a is below b, of those in which
// both came to a finite number; NaN when there is none.
func ShareBelow(a, b []float64) float64 {
	n, below := 0, 0
	for i := range a {
		if !finite(a[i]) || !finite(b[i]) {
			continue
		}
		n++
		if a[i] < b[i] {
			below++
		}
	}
	return float64(below) / float64(n)
}
