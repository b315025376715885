package xlsx_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSheetsAndPrinting(t *testing.T) {
	f := read(t, sample())
	require.Equal(t, []string{"Start here", "Budget", "Running cost", "Build", "Tanks", "Fish", "Checks", "Values"}, f.GetSheetList())
	names := map[string]string{}
	for _, n := range f.GetDefinedName() {
		names[n.Scope+" "+n.Name] = n.RefersTo
	}
	frozen := map[string]int{"Start here": 1, "Budget": 9, "Running cost": 7, "Build": 5, "Tanks": 5, "Fish": 4, "Checks": 7, "Values": 4}
	filters := map[string]string{
		"Budget": "$A$9:$I$14", "Running cost": "$A$7:$N$12", "Build": "$A$5:$H$7", "Tanks": "$A$5:$N$7", "Fish": "$A$4:$K$5", "Checks": "$A$7:$H$10", "Values": "$A$4:$F$15",
	}
	for sheet, rows := range frozen {
		panes, err := f.GetPanes(sheet)
		require.NoError(t, err)
		require.True(t, panes.Freeze)
		require.Equal(t, rows, panes.YSplit, sheet)
		layout, err := f.GetPageLayout(sheet)
		require.NoError(t, err)
		require.Equal(t, "landscape", *layout.Orientation)
		require.Equal(t, 1, *layout.FitToWidth)
		require.Equal(t, 0, *layout.FitToHeight)
		require.Equal(t, 9, *layout.Size)
		props, err := f.GetSheetProps(sheet)
		require.NoError(t, err)
		require.True(t, *props.FitToPage)
		head, err := f.GetHeaderFooter(sheet)
		require.NoError(t, err)
		require.Equal(t, "&LTwo tanks in the attic&R"+sheet, head.OddHeader)
		require.Contains(t, head.OddFooter, "Page &P of &N")
		if filter, ok := filters[sheet]; ok {
			require.Equal(t, "'"+sheet+"'!"+filter, names[sheet+" _xlnm._FilterDatabase"])
			require.NotEmpty(t, names[sheet+" _xlnm.Print_Titles"])
		}
		size, err := f.GetSheetDimension(sheet)
		require.NoError(t, err)
		require.NotEqual(t, "A1", size)
	}
}

// American paper where money is American; an ampersand in a title is no command.
func TestPrintTitle(t *testing.T) {
	r := sample()
	r.Plan.Items = nil
	r.Plan.Tariffs[0].Price = q("0.14 USD/kWh")
	r.Document.Title = "Tanks & racks\nbelow"
	f := read(t, r)
	layout, err := f.GetPageLayout("Budget")
	require.NoError(t, err)
	require.Equal(t, 1, *layout.Size)
	head, err := f.GetHeaderFooter("Budget")
	require.NoError(t, err)
	require.Equal(t, "&LTanks && racks below&RBudget", head.OddHeader)
}

// Columns are as wide as what stands in them, within bounds.
func TestWidths(t *testing.T) {
	r := sample()
	r.Plan.Items[0].Price = q("98765432.10 EUR")
	f := read(t, r)
	for column, least := range map[string]float64{"F": 18, "G": 18, "I": 18, "B": 30} {
		wide, err := f.GetColWidth("Budget", column)
		require.NoError(t, err)
		require.GreaterOrEqual(t, wide, least, column)
		require.LessOrEqual(t, wide, 50.0, column)
	}
}
