// Package xlsx writes the workbook of a run, for people who never see the
// notebook: a few sheets with plain words on top, real numbers, and formulas
// for totals, phases, tax, contingency and running costs. Every formula refers
// to cells, never to hidden numbers; the numbers that a reader may change stand
// once, on the first sheet, as marked input cells with names. Every formula
// carries its value, so that a viewer that does not recalculate shows it too.
//
// A sheet is gathered in memory first, because widths and the sheet's dimension
// are written before its rows, and then streamed. Nothing in the file depends
// on the clock or on the order of a map: the same result gives the same bytes.
package xlsx
