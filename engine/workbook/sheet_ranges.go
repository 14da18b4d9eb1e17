package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"thawbook/engine/formula"
	"thawbook/engine/sheet"
	"thawbook/engine/units"
)

// The columns of the ranges; from pictureLabel on stand a picture's numbers.
const (
	rangeLabel = 1 + iota
	rangeUnit
	rangeNow
	rangeSent
	rangeLow
	rangeMiddle
	rangeHigh
	rangeMean
	rangeGoal
	rangeMet
	rangeID
	_
	pictureLabel
	pictureLow
	pictureMiddle
	pictureHigh
)

// from says what the ranges were reckoned from.
func (pb *planBuilder) from() string {
	return fmt.Sprintf("Reckoned from %s drawn seasons, seed %d.", units.Number(float64(pb.p.Seasons), units.One()), pb.p.Seed)
}

// layRanges lays out what the seasons said: numbers that stand.
func (pb *planBuilder) layRanges() *grid {
	g := &grid{name: pb.suffix("Ranges"), widths: []float64{36, 10, 13, 13, 13, 13, 13, 13, 20, 20, 20, 3, 24, 10, 10, 10},
		freezeRows: 3, freezeColumns: 1, repeat: 3, landscape: true}
	g.add(say(title, "What the seasons say"))
	g.add(say(flat, pb.from()+" 8 seasons in 10 fall between low and high. These numbers stand still; only the column \"Now\" follows your changes."))
	g.add()
	for k, text := range []string{"Line", "Unit", "Now", "As sent", "Low", "Middle", "High", "Mean", "Goal", "Met", "Called"} {
		g.set(k+1, say(heading, text))
	}
	for k, text := range []string{"As shares of the middle", "To low", "Low to middle", "Middle to high"} {
		g.set(pictureLabel+k, say(heading, text))
	}
	for _, head := range []bool{true, false} {
		for i, slot := range pb.p.Bound.Slots {
			if r := pb.p.Ranges[i]; r != nil && varies(slot) && head == (slot.Line.Headline != nil) {
				pb.rangeRow(g, i, r)
			}
		}
	}
	pb.pictureNumbers(g)
	return g
}

// varies says whether a range tells more than the number itself.
func varies(slot *formula.Slot) bool {
	return !slot.Broken && slot.Kind != formula.Choice && slot.Line.Kind != sheet.Is
}

// now is a cell that follows a slot.
func (pb *planBuilder) now(i int, l look) cell {
	return cell{value: finite(pb.p.Likely[i]), formula: pb.names.value[i], style: style{look: l, format: pb.shown(i)}}
}

func (pb *planBuilder) rangeRow(g *grid, i int, r *Range) {
	slot := pb.p.Bound.Slots[i]
	shown := style{look: standing, format: pb.shown(i)}
	fixed := func(x float64) cell { return cell{value: finite(x), style: shown} }
	g.add(say(label, slot.Line.Label), say(small, units.UnitLabel(slot.Unit)), pb.now(i, worked), fixed(pb.p.Likely[i]),
		fixed(r.Low), fixed(r.Middle), fixed(r.High), fixed(r.Mean), say(small, r.Goal), say(small, r.Met), say(small, slot.ID()))
}

// pictureNumbers writes the outcomes' ranges as shares of their middle beside
// the first rows, which is what the cover's picture draws. Shares are the one
// scale that gallons, hours and dollars have in common.
func (pb *planBuilder) pictureNumbers(g *grid) {
	row := 4
	for _, i := range pb.pictured() {
		r := pb.p.Ranges[i]
		for column, c := range map[int]cell{
			pictureLabel:  say(small, pb.p.Bound.Slots[i].Line.Label),
			pictureLow:    {value: r.Low / r.Middle, style: style{look: standing, format: "0%"}},
			pictureMiddle: {value: (r.Middle - r.Low) / r.Middle, style: style{look: standing, format: "0%"}},
			pictureHigh:   {value: (r.High - r.Middle) / r.Middle, style: style{look: standing, format: "0%"}},
		} {
			g.put(place{column, row}, c)
		}
		row++
	}
}

// pictured are the outcomes that a picture in shares can show: above nothing
// from end to end, and not so wide that the rest would be flat.
func (pb *planBuilder) pictured() []int {
	var out []int
	for i, slot := range pb.p.Bound.Slots {
		if r := pb.p.Ranges[i]; r != nil && varies(slot) && slot.Line.Headline != nil && r.Low > 0 && r.High < 5*r.Middle {
			out = append(out, i)
		}
	}
	return out
}

// picture is a chart on a grid.
type picture struct {
	at            place
	title         string
	upright       bool // bars stand up
	fromNothing   bool // the scale starts at 0, or bars would lie about how far they differ
	stacked       bool
	width, height uint
	categories    string
	series        []series
}

// series is one run of bars. name, values and a picture's categories are ranges.
type series struct {
	name, values string
	color        string // "" draws nothing: it holds the others off the axis
}

// rangePicture draws the outcomes' ranges; nil when there is too little to see.
func (pb *planBuilder) rangePicture(ranges string, at place) *picture {
	n := len(pb.pictured())
	if n < 2 {
		return nil
	}
	span := func(column int) string { return address(ranges, place{column, 4}, place{column, 3 + n}) }
	return &picture{at: at, title: "8 seasons in 10, as shares of the middle season", stacked: true, width: 640, height: uint(90 + 32*n),
		categories: span(pictureLabel), series: []series{
			{name: address(ranges, place{pictureLow, 3}, place{pictureLow, 3}), values: span(pictureLow)},
			{name: address(ranges, place{pictureMiddle, 3}, place{pictureMiddle, 3}), values: span(pictureMiddle), color: "D9B26F"},
			{name: address(ranges, place{pictureHigh, 3}, place{pictureHigh, 3}), values: span(pictureHigh), color: "8A5A1F"}}}
}

// rangeText is a range in a few words: "18.2 to 27.1 gal, middle 22.4 gal".
func rangeText(r *Range, u units.Unit) string {
	low, high := units.Show(r.Low, u), units.Show(r.High, u)
	if low == high {
		return low
	}
	if number, ok := strings.CutSuffix(high, strings.TrimPrefix(low, units.Number(r.Low, u))); ok && number == units.Number(r.High, u) {
		low = units.Number(r.Low, u)
	}
	return low + " to " + high + ", middle " + units.Show(r.Middle, u)
}

// counted is a number of things in words.
func counted(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + one + "s"
}
