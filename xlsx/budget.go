package xlsx

import (
	"fmt"
	"strconv"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// Columns of the Budget, from 1.
const (
	budgetPhase = iota + 1
	budgetItem
	budgetTank
	budgetSupplier
	budgetCount
	budgetPrice
	budgetTotal
	budgetHave
	budgetToSpend
	budgetLead
	budgetRemark
)

const noPhase = "no phase"

func (b *book) budgetColumns() []column {
	money := b.unitHead
	paid := "tax included"
	price := "Price each"
	if !b.inputs.taxIncluded {
		price = "Price each without tax"
	}
	return []column{
		{head: "Phase", min: 12, max: 22, kind: long}, {head: "Item", min: 30, max: 46, kind: long}, {head: "Tank", min: 15, max: 20, kind: long},
		{head: "Supplier", min: 12, max: 20, kind: long}, {head: "Count", min: 8, max: 12, kind: numeric}, {head: money(price), min: 16, max: 20, kind: numeric},
		{head: money("Line total, " + paid), min: 15, max: 20, kind: numeric}, {head: "Have", min: 8, max: 12, kind: numeric}, {head: money("Still to spend, " + paid), min: 15, max: 20, kind: numeric},
		{head: "Lead time (d)", min: 8, max: 12, kind: numeric}, {head: "Remark", min: 22, max: 40, kind: long},
	}
}

// unitHead writes a header with the notebook's money.
func (b *book) unitHead(words string) string {
	if b.currency == "" {
		return words
	}
	return words + " (" + b.currency + ")"
}

// budgetFirst is the row of the first line: name, sentences, pointer, three
// rows of sums, an empty one, and the headers stand above it.
const budgetFirst = 9

// budget makes the sheet of things to buy.
func (b *book) budget() *sheet {
	s := b.newSheet(budgetSheet, b.budgetColumns())
	items := b.plan.Items
	last := max(budgetFirst+len(items)-1, budgetFirst)
	s.top("Budget", "Everything the notebook wants to buy: what it costs, how much of it is there already, and what is still to be paid. "+
		"The sums are formulas: they follow the counts and prices in the list and the tax and contingency on the sheet “"+startSheet+"”.")
	b.budgetPointer(s, last)
	lines := b.budgetLines()
	b.budgetSums(s, b.sumLines(lines), last)
	s.skip(1)
	s.listHead()
	s.reserve(len(items))
	for i, item := range items {
		b.budgetLine(s, item, lines[i])
	}
	if len(items) == 0 {
		s.skip(1)
	}
	s.list(last)
	b.budgetGroups(s, lines, last)
	return s
}

// budgetLines works out every line, in the notebook's money; lines in other
// money stay zero, since they cannot be added up with them.
func (b *book) budgetLines() []plan.Cost {
	lines := make([]plan.Cost, len(b.plan.Items))
	for i, item := range b.plan.Items {
		if b.isOwn(item.Price) {
			lines[i] = item.Cost(b.taxFactor())
		} else {
			b.figures.foreign++
		}
	}
	return lines
}

// sumLines adds up lines as the plan does: sums of rounded lines, rounded.
func (b *book) sumLines(lines []plan.Cost) plan.Budget {
	var sum plan.Budget
	for _, line := range lines {
		sum.Total += line.Total
		sum.ToBuy += line.ToSpend
	}
	sum.Lines, sum.Total, sum.ToBuy = len(lines), quantity.Round(sum.Total, b.digits), quantity.Round(sum.ToBuy, b.digits)
	sum.Had = quantity.Round(sum.Total-sum.ToBuy, b.digits)
	sum.Contingency = quantity.Round(sum.ToBuy*b.inputs.contingency, b.digits)
	sum.ToSpend = quantity.Round(sum.ToBuy+sum.Contingency, b.digits)
	return sum
}

func (b *book) isOwn(q quantity.Quantity) bool {
	return q.Dimension().IsMoney() && q.Dimension().Currency() == b.currency
}

// budgetPointer says where the sums by phase are, and what is not in the sums.
func (b *book) budgetPointer(s *sheet, last int) {
	switch {
	case len(b.plan.Items) == 0:
		s.across(prose, "The notebook has no budget lines.")
	default:
		s.one(s.look.words(link, "Sums by phase, tank and supplier stand below the list"))
		s.links = append(s.links, jump{cell: cellName(1, s.next()-1), to: fmt.Sprintf("'%s'!A%d", budgetSheet, last+2)})
	}
}

// budgetSums adds the three rows of sums in two columns.
func (b *book) budgetSums(s *sheet, sum plan.Budget, last int) {
	top, d := s.next(), b.digits
	total, toBuy, contingency := fixed(budgetTank, top), fixed(budgetTank, top+2), fixed(budgetTotal, top)
	contained := quantity.Round(sum.Total*b.inputs.tax/(1+b.inputs.tax), d)
	b.sumRow(s, "All lines, tax included", fmt.Sprintf("ROUND(SUM(%s),%d)", area(budgetTotal, budgetFirst, last), d), sum.Total,
		"Contingency on what is still to buy", fmt.Sprintf("ROUND(%s*%s,%d)", toBuy, contingencyName, d), sum.Contingency)
	b.sumRow(s, "of that, there already", fmt.Sprintf("ROUND(%s-%s,%d)", total, toBuy, d), sum.Had,
		"Still to spend, contingency included", fmt.Sprintf("ROUND(%s+%s,%d)", toBuy, contingency, d), sum.ToSpend)
	b.sumRow(s, "of that, still to buy", fmt.Sprintf("ROUND(SUM(%s),%d)", area(budgetToSpend, budgetFirst, last), d), sum.ToBuy,
		"Tax contained in all lines", fmt.Sprintf("ROUND(%s*%s/(1+%s),%d)", total, taxName, taxName, d), contained)
	b.figures.total = at(budgetSheet, budgetTank, top, sum.Total)
	b.figures.had = at(budgetSheet, budgetTank, top+1, sum.Had)
	b.figures.toSpend = at(budgetSheet, budgetTotal, top+1, sum.ToSpend)
}

// taxFactor is what the formulas multiply prices by.
func (b *book) taxFactor() float64 {
	if b.inputs.taxIncluded {
		return 1
	}
	return 1 + b.inputs.tax
}

// sumRow adds a row with two sums, in the columns of the tank and of the line
// total, each with its words before it.
func (b *book) sumRow(s *sheet, left, leftFormula string, leftValue float64, right, rightFormula string, rightValue float64) {
	l := s.look
	cells := make([]excelize.Cell, budgetTotal)
	cells[budgetItem-1] = l.words(label, left)
	cells[budgetTank-1] = l.formula(strong, leftFormula, leftValue, l.money)
	cells[budgetSupplier-1] = l.words(caption, right)
	cells[budgetTotal-1] = l.formula(strong, rightFormula, rightValue, l.money)
	row := s.one(cells...)
	s.merges = append(s.merges, [2]string{cellName(budgetSupplier, row), cellName(budgetPrice, row)})
	s.measure(budgetTank-1, &cells[budgetTank-1])
	s.measure(budgetTotal-1, &cells[budgetTotal-1])
}

func phaseOf(phase string) string {
	if phase == "" {
		return noPhase
	}
	return clean(phase)
}

// budgetLine adds one item.
func (b *book) budgetLine(s *sheet, item *plan.Item, line plan.Cost) {
	l, row := s.look, s.next()
	n := strconv.Itoa(row)
	price, total, toSpend := b.priceCell(s, item.Price), excelize.Cell{}, excelize.Cell{}
	if b.isOwn(item.Price) {
		tail := "*F" + n + b.taxTerm() + "," + strconv.Itoa(b.digits) + ")"
		total = l.formula(body, "ROUND(E"+n+tail, line.Total, l.money)
		toSpend = l.formula(body, "ROUND(MAX(E"+n+"-H"+n+",0)"+tail, line.ToSpend, l.money)
	} else {
		total, toSpend = l.words(body, "not added up"), l.words(body, "not added up")
	}
	lead := l.words(body, "")
	if item.Lead.Has {
		lead = l.reading(item.Lead.Q, "d")
	}
	s.fit(s.words(budgetPhase-1, phaseOf(item.Phase)), s.words(budgetItem-1, item.Name), s.words(budgetTank-1, item.Tank),
		s.words(budgetSupplier-1, item.Supplier), l.count(item.Count), price, total, l.count(item.Have), toSpend, lead, s.words(budgetRemark-1, item.Note))
}

func (b *book) taxTerm() string {
	if b.inputs.taxIncluded {
		return ""
	}
	return "*(1+" + taxName + ")"
}

// priceCell is an amount for one; it follows an assumption when it is one.
func (b *book) priceCell(s *sheet, q quantity.Quantity) excelize.Cell {
	if !b.isOwn(q) {
		return s.look.words(body, q.Short())
	}
	format := s.look.money
	if quantity.Round(q.Value(), b.digits) != q.Value() {
		format = s.look.finerMoney
	}
	if formula, ok := b.follow(q, b.currency, s.name, s.name); ok {
		return s.look.formula(body, formula, q.Value(), format)
	}
	return s.look.number(body, q.Value(), format)
}

// budgetGroups adds the sums by phase, tank and supplier below the list.
func (b *book) budgetGroups(s *sheet, lines []plan.Cost, last int) {
	if len(lines) == 0 {
		return
	}
	phases, tanks, suppliers := newGroups(), newGroups(), newGroups()
	for i, item := range b.plan.Items {
		line := lines[i]
		phases.add(phaseOf(item.Phase), line.Total, line.ToSpend)
		tanks.add(clean(item.Tank), line.Total, line.ToSpend)
		suppliers.add(clean(item.Supplier), line.Total, line.ToSpend)
	}
	sums := []groupSum{
		{budgetTotal, b.unitHead("All lines, tax included"), s.look.money, b.digits},
		{budgetToSpend, b.unitHead("Still to spend, without contingency"), s.look.money, b.digits},
	}
	t := groupTable{title: "Sums by phase", by: budgetPhase, first: budgetFirst, last: last, sums: sums}
	s.table(t, phases)
	if tanks.named() > 0 {
		t.title, t.unnamed, t.by = "Sums by tank", "for no single tank", budgetTank
		s.table(t, tanks)
	}
	if suppliers.named() > 0 {
		t.title, t.unnamed, t.by = "Sums by supplier", "no supplier named", budgetSupplier
		s.table(t, suppliers)
	}
}
