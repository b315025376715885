package xlsx

import (
	"strings"

	"github.com/xuri/excelize/v2"
)

// stream writes a gathered sheet. The order of the calls is that in which the
// parts of a sheet stand in the file.
func (b *book) stream(s *sheet) error {
	if err := b.before(s); err != nil {
		return err
	}
	w, err := b.file.NewStreamWriter(s.name)
	if err != nil {
		return err
	}
	if err := b.frame(w, s); err != nil {
		return err
	}
	if err := b.writeRows(w, s); err != nil {
		return err
	}
	for _, m := range s.merges {
		if err := w.MergeCell(m[0], m[1]); err != nil {
			return err
		}
	}
	if err := b.finish(s); err != nil {
		return err
	}
	return w.Flush()
}

// before sets what stands at the head of the sheet's part.
func (b *book) before(s *sheet) error {
	fit := true
	if err := b.file.SetSheetProps(s.name, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	used := 1
	for _, row := range s.rows {
		used = max(used, row.to-row.from)
	}
	return b.file.SetSheetDimension(s.name, "A1:"+cellName(used, max(len(s.rows), 1)))
}

// frame sets panes and widths, which come before the rows.
func (b *book) frame(w *excelize.StreamWriter, s *sheet) error {
	if s.plain {
		grid := false
		if err := b.file.SetSheetView(s.name, 0, &excelize.ViewOptions{ShowGridLines: &grid}); err != nil {
			return err
		}
	}
	if s.frozen > 0 {
		panes := &excelize.Panes{Freeze: true, YSplit: s.frozen, TopLeftCell: cellName(1, s.frozen+1), ActivePane: "bottomLeft"}
		if err := w.SetPanes(panes); err != nil {
			return err
		}
	}
	for i, n := range s.wide {
		if err := w.SetColWidth(i+1, i+1, float64(n)+1); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) writeRows(w *excelize.StreamWriter, s *sheet) error {
	row := make([]any, len(s.columns))
	for i, r := range s.rows {
		if r.from == r.to {
			continue
		}
		for j := r.from; j < r.to; j++ {
			row[j-r.from] = &s.cells[j]
			if s.cells[j] == (excelize.Cell{}) {
				row[j-r.from] = nil
			}
		}
		if err := writeRow(w, i+1, row[:r.to-r.from], s.height(r)); err != nil {
			return err
		}
	}
	return nil
}

func writeRow(w *excelize.StreamWriter, number int, cells []any, height float64) error {
	if height == 0 {
		return w.SetRow(cellName(1, number), cells)
	}
	return w.SetRow(cellName(1, number), cells, excelize.RowOpts{Height: height})
}

// finish sets what stands after the rows: filter, links, print set-up.
func (b *book) finish(s *sheet) error {
	if s.filter != "" {
		if err := b.file.AutoFilter(s.name, s.filter, nil); err != nil {
			return err
		}
	}
	for _, j := range s.links {
		if err := b.file.SetCellHyperLink(s.name, j.cell, j.to, "Location"); err != nil {
			return err
		}
	}
	if s.after != nil {
		if err := s.after(b); err != nil {
			return err
		}
	}
	return b.printing(s)
}

// Paper sizes by the number that the format has for them.
const (
	paperLetter = 1
	paperA4     = 9
)

// printing sets up the print: landscape, one page wide, title and page number,
// the list's header on every page. Where money is in US or Canadian dollars the
// paper is Letter.
func (b *book) printing(s *sheet) error {
	size, wide, tall, orientation := paperA4, 1, 0, "landscape"
	if b.currency == "USD" || b.currency == "CAD" {
		size = paperLetter
	}
	err := b.file.SetPageLayout(s.name, &excelize.PageLayoutOptions{Size: &size, Orientation: &orientation, FitToWidth: &wide, FitToHeight: &tall})
	if err != nil {
		return err
	}
	side, edge, head := 0.4, 0.7, 0.3
	margins := &excelize.PageLayoutMarginsOptions{Left: &side, Right: &side, Top: &edge, Bottom: &edge, Header: &head, Footer: &head}
	if err := b.file.SetPageMargins(s.name, margins); err != nil {
		return err
	}
	err = b.file.SetHeaderFooter(s.name, &excelize.HeaderFooterOptions{
		OddHeader: "&L" + headerText(b.title) + "&R" + headerText(s.name), OddFooter: "&LPlanning figures: local code and licensed practice decide&RPage &P of &N",
	})
	if err != nil || s.repeat == 0 {
		return err
	}
	row := strings.TrimPrefix(cellName(1, s.repeat), "A")
	return b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", Scope: s.name, RefersTo: "'" + s.name + "'!$" + row + ":$" + row})
}

// headerText makes a text fit for a page header, where & begins a command and
// 255 characters are the limit for all of it.
func headerText(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	return strings.ReplaceAll(cut(s, 80), "&", "&&")
}
