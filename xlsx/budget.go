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
	var phase, tank, supplier, lead, remark bool
	for _, item := range b.plan.Items {
		phase, tank, supplier = phase || item.Phase != "", tank || item.Tank != "", supplier || item.Supplier != ""
		lead, remark = lead || item.Lead.Has, remark || item.Note != ""
	}
	return []column{
		{head: "Phase", min: 12, max: 22, kind: long, off: !phase}, {head: "Item", min: 30, max: 46, kind: long}, {head: "Tank", min: 12, max: 20, kind: long, off: !tank},
		{head: "Supplier", min: 12, max: 20, kind: long, off: !supplier}, {head: "Count", min: 8, max: 12, kind: numeric}, {head: money(price), min: 16, max: 20, kind: numeric},
		{head: money("Line total, " + paid), min: 15, max: 20, kind: numeric}, {head: "Have", min: 8, max: 12, kind: numeric}, {head: money("Still to spend, " + paid), min: 15, max: 20, kind: numeric},
		{head: "Lead time (d)", min: 8, max: 12, kind: numeric, off: !lead}, {head: "Remark", min: 22, max: 40, kind: long, off: !remark},
	}
}

// unitHead writes a header with the notebook's money.
func (b *book) unitHead(words string) string {
	if b.currency == "" {
		return words
	}
	return words + " (" + b.currency + ")"
}

// budgetAbove counts the rows above the list: name, sentences, pointer, five
// rows of sums and the headers.
const budgetAbove = 9

// budgetList is the sheet of things to buy with the place of its list.
type budgetList struct {
	*sheet
	first, last int
}

// budget makes the sheet of things to buy.
func (b *book) budget() *sheet {
	s := budgetList{sheet: b.newSheet(budgetSheet, b.budgetColumns()), first: budgetAbove + b.bannerRows() + 1}
	items := b.plan.Items
	s.last = max(s.first+len(items)-1, s.first)
	s.top("Budget", "Everything the notebook wants to buy: what it costs, how much of it is there already, and what is still to be paid. "+
		"The sums are formulas: they follow the counts and prices in the list and the tax and contingency on the sheet “"+startSheet+"”.")
	b.budgetPointer(s)
	lines := b.budgetLines()
	b.budgetSums(s, b.sumLines(lines))
	s.listHead()
	s.reserve(len(items))
	for i, item := range items {
		b.budgetLine(s.sheet, item, lines[i])
	}
	if len(items) == 0 {
		s.skip(1)
	}
	s.list(s.last)
	b.budgetGroups(s, lines)
	return s.sheet
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
func (b *book) budgetPointer(s budgetList) {
	lacks := b.lacking(plan.KindItem)
	if lacks || len(b.plan.Items) == 0 || !s.has(budgetPhase) && !s.has(budgetTank) && !s.has(budgetSupplier) {
		s.note("budget lines", lacks, len(b.plan.Items), "")
		return
	}
	s.one(s.look.words(link, "Sums by phase, tank and supplier stand below the list"))
	s.links = append(s.links, jump{cell: cellName(1, s.next()-1), to: fmt.Sprintf("'%s'!A%d", budgetSheet, s.last+2)})
}

// budgetSums adds the sums, each right above the column whose money it is.
func (b *book) budgetSums(s budgetList, sum plan.Budget) {
	d, top := b.digits, s.next()
	total, toBuy, contingency := s.fixed(budgetTotal, top), s.fixed(budgetToSpend, top), s.fixed(budgetToSpend, top+2)
	contained := quantity.Round(sum.Total*b.inputs.tax/(1+b.inputs.tax), d)
	money := func(formula string, value float64) excelize.Cell {
		return s.look.formula(strong, fmt.Sprintf("ROUND(%s,%d)", formula, d), value, s.look.money)
	}
	s.sumRow(budgetItem, "All lines", map[int]excelize.Cell{
		budgetTotal:   money("SUM("+s.area(budgetTotal, s.first, s.last)+")", sum.Total),
		budgetToSpend: money("SUM("+s.area(budgetToSpend, s.first, s.last)+")", sum.ToBuy),
	})
	s.sumRow(budgetItem, "of that, there already", map[int]excelize.Cell{budgetTotal: money(total+"-"+toBuy, sum.Had)})
	s.sumRow(budgetItem, "Contingency on what is still to buy", map[int]excelize.Cell{budgetToSpend: money(toBuy+"*"+contingencyName, sum.Contingency)})
	s.sumRow(budgetItem, "Still to spend, contingency included", map[int]excelize.Cell{budgetToSpend: money(toBuy+"+"+contingency, sum.ToSpend)})
	s.sumRow(budgetItem, "Tax contained in all lines", map[int]excelize.Cell{budgetTotal: money(total+"*"+taxName+"/(1+"+taxName+")", contained)})
	b.figures.total = at(budgetSheet, s.at[budgetTotal-1], top, sum.Total)
	b.figures.had = at(budgetSheet, s.at[budgetTotal-1], top+1, sum.Had)
	b.figures.toSpend = at(budgetSheet, s.at[budgetToSpend-1], top+3, sum.ToSpend)
}

// taxFactor is what the formulas multiply prices by.
func (b *book) taxFactor() float64 {
	if b.inputs.taxIncluded {
		return 1
	}
	return 1 + b.inputs.tax
}

func phaseOf(phase string) string {
	if phase == "" {
		return noPhase
	}
	return clean(phase)
}

// budgetLine adds one item.
func (b *book) budgetLine(s *sheet, item *plan.Item, line plan.Cost) {
	l, n := s.look, strconv.Itoa(s.next())
	price, total, toSpend := b.priceCell(s, item.Price), excelize.Cell{}, excelize.Cell{}
	if b.isOwn(item.Price) {
		count := s.col(budgetCount) + n
		tail := "*" + s.col(budgetPrice) + n + b.taxTerm() + "," + strconv.Itoa(b.digits) + ")"
		total = l.formula(body, "ROUND("+count+tail, line.Total, l.money)
		toSpend = l.formula(body, "ROUND(MAX("+count+"-"+s.col(budgetHave)+n+",0)"+tail, line.ToSpend, l.money)
	} else {
		total, toSpend = l.words(body, "not added up"), l.words(body, "not added up")
	}
	lead := l.words(body, "")
	if item.Lead.Has {
		lead = l.reading(item.Lead.Q, "d")
	}
	s.line(s.words(budgetPhase-1, phaseOf(item.Phase)), s.words(budgetItem-1, item.Name), s.words(budgetTank-1, item.Tank),
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
		format = priceFormat(q.Value(), b.currency)
	}
	if formula, ok := b.follow(q, b.currency, s.name, s.name); ok {
		return s.look.formula(body, formula, q.Value(), format)
	}
	return s.look.number(body, q.Value(), format)
}

// budgetGroups adds the sums by phase, tank and supplier below the list.
func (b *book) budgetGroups(s budgetList, lines []plan.Cost) {
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
	t := groupTable{title: "Sums by phase", by: budgetPhase, first: s.first, last: s.last, sums: []groupSum{
		{budgetTotal, s.look.money, b.digits}, {budgetToSpend, s.look.money, b.digits},
	}}
	if s.has(budgetPhase) {
		s.table(t, phases)
	}
	if s.has(budgetTank) {
		t.title, t.unnamed, t.by = "Sums by tank", "no tank named", budgetTank
		s.table(t, tanks)
	}
	if s.has(budgetSupplier) {
		t.title, t.unnamed, t.by = "Sums by supplier", "no supplier named", budgetSupplier
		s.table(t, suppliers)
	}
}
