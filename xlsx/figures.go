package xlsx

// figure is a number of another sheet that the first one shows.
type figure struct {
	cell  address
	value float64
	known bool
}

// figures are those of the first sheet.
type figures struct {
	total, had, toSpend figure
	month, energy       figure
	water, filled       figure
	pass, caution, fail figure
	unpriced            bool // loads stand in the plan, but no price
	foreign             int  // lines in other money than the totals
}

// at notes a figure's cell and value.
func at(sheet string, col, row int, value float64) figure {
	return figure{cell: address{sheet, col, row}, value: value, known: true}
}
