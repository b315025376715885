package xlsx

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/plan"
)

func startColumns() []column {
	return []column{
		{head: "What", min: 32, max: 40, kind: long}, {head: "Value", min: 16, max: 24, kind: numeric}, {head: "Mark", min: 9, max: 9}, {head: "Unit", min: 10, max: 14},
		{head: "Low", min: 9, max: 14, kind: numeric}, {head: "High", min: 9, max: 14, kind: numeric}, {head: "Where the number comes from", min: 34, max: 38, kind: long},
		{head: "What follows it in this workbook", min: 26, max: 32, kind: long},
	}
}

// The rows of the first sheet up to the inputs.
const (
	startHead = 3 // name, sentences, an empty row
	inputHead = 4 // an empty row, heading, sentences, headers
)

// inputsRow is the row of the first input.
func (b *book) inputsRow() int {
	return startHead + b.bannerRows() + b.figureRows() + b.attentionRows() + b.circuitRows() + inputHead + 1
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// start makes the first sheet. It comes last, since it shows figures of the
// others.
func (b *book) start() *sheet {
	s := b.newSheet(startSheet, startColumns())
	s.plain = true
	s.top(b.title, "This workbook was made from a notebook that plans a room of aquariums; it shows what the room costs, weighs and needs, and what was checked. "+
		"Yellow cells marked “input” may be changed: every sum that is a formula follows at once. "+
		"Everything else is fixed and changes only when the notebook is run again, which writes this workbook anew.")
	s.skip(1)
	b.keyFigures(s)
	attention := s.next()
	b.attention(s)
	b.circuits(s)
	last := s.next() - 1
	b.inputBlock(s)
	b.sheetList(s)
	b.takeCare(s)
	b.problemList(s)
	s.frozen = 1
	if last > attention {
		s.after = func(b *book) error { return b.colourOutcomes(startSheet, fmt.Sprintf("B%d:C%d", attention, last)) }
	}
	return s
}

// inputBlock adds the assumptions and the rates.
func (b *book) inputBlock(s *sheet) {
	s.skip(1)
	s.sectionHead("Assumptions and rates")
	s.across(prose, "What was taken for granted, with the range in which it may lie. A yellow “input” may be changed here, and the last column says what follows it at once; "+
		"for one marked “fixed” only a run of the notebook with the new number shows what follows.")
	texts := make([]string, len(s.columns))
	for i, c := range s.columns {
		texts[i] = c.head
	}
	s.heads(1, texts)
	for i := range b.inputs.assumptions {
		b.assumptionRow(s, &b.inputs.assumptions[i])
	}
	for i := range b.inputs.rates {
		b.rateRow(s, &b.inputs.rates[i])
	}
}

func (b *book) assumptionRow(s *sheet, a *assumed) {
	v, unit := cellNumber(a.Value)
	look, mark, follows := body, markFixed, "only a run of the notebook with it"
	if len(a.used) > 0 {
		look, mark, follows = input, "input", strings.Join(a.used, ", ")
	}
	basis := joinText(joinText(a.Basis, a.Note), a.remarks)
	if a.Overridden {
		basis = joinText("changed for this run; the notebook says "+a.Given.Short(), basis)
	}
	name := a.Label
	if name == "" {
		name = a.Name
	}
	s.fit(s.words(0, name), s.look.number(look, v, inputFormat(isShare(a.Value))), s.look.words(body, mark), s.look.words(body, unitWords(unit)),
		b.bound(a, a.Low), b.bound(a, a.High), s.words(6, basis), s.words(7, follows))
}

// bound is the low or high end of an assumption, in the unit of its cell.
func (b *book) bound(a *assumed, o plan.Optional) excelize.Cell {
	if !o.Has {
		return b.look.words(body, "")
	}
	if isShare(a.Value) {
		return b.look.quantityIn(o.Q, "", shareFormat)
	}
	return b.look.reading(o.Q, a.Value.Unit().Symbol())
}

// inputFormat shows an input as it is typed; a share as a percentage.
func inputFormat(share bool) string {
	if share {
		return shareFormat
	}
	return generalFormat
}

func (b *book) rateRow(s *sheet, r *rate) {
	l, format := s.look, inputFormat(r.share)
	value, mark := l.number(input, r.value, format), "input"
	if r.formula != "" {
		value, mark = l.formula(body, r.formula, r.value, format), "follows"
		r.basis = joinText("the assumption above: change it there", r.basis)
	}
	none := l.words(body, "")
	s.fit(s.words(0, r.label), value, l.words(body, mark), l.words(body, r.unit), none, none, s.words(6, r.basis), s.words(7, r.used))
}

// sheetList says what each sheet is, with a link to it.
func (b *book) sheetList(s *sheet) {
	s.skip(1)
	s.sectionHead("The sheets")
	about := map[string]string{
		budgetSheet:  "everything to buy, with sums by phase, tank and supplier",
		runningSheet: "what the room takes a month and a year, by kind, group and tank",
		buildSheet:   "the steps of the work in their order",
		tanksSheet:   "measures, water and weight of every tank",
		fishSheet:    "the fish of every tank, with their oxygen and feed",
		waterSheet:   "salt by steps and dates, what was measured, sources, nitrate and filters",
		checksSheet:  "what was checked and how it came out, the worst first",
		valuesSheet:  "every named number of the notebook, for those who want to look closer",
	}
	for _, name := range b.sheetNames()[1:] {
		row := s.spread(inputValue, s.look.words(link, name), s.look.words(body, about[name]))
		s.links = append(s.links, jump{cell: cellName(1, row), to: "'" + name + "'!A1"})
	}
}

// takeCare adds cautions for what the plan has.
func (b *book) takeCare(s *sheet) {
	s.skip(1)
	s.sectionHead("Take care")
	for _, text := range b.plan.Cautions() {
		s.across(prose, sentence(text))
	}
	s.across(prose, "These are figures for planning. Local code, the makers' instructions and licensed practice decide.")
}

// problemRows bounds the list of problems.
const problemRows = 40

// problemList adds the problems of the run, if it had any.
func (b *book) problemList(s *sheet) {
	problems := b.result.Problems
	if len(problems) == 0 {
		return
	}
	s.skip(1)
	s.sectionHead("What the run of the notebook reported")
	for i, p := range problems {
		if i == problemRows {
			s.across(prose, fmt.Sprintf("… and %d more", len(problems)-problemRows))
			return
		}
		kind := "mistake: "
		if p.Caution {
			kind = "caution: "
		}
		if p.Pos.File != "" {
			p.Pos.File = filepath.Base(p.Pos.File) // the folder is nobody's business
		}
		text := kind + p.Error()
		if p.Hint != "" {
			text += " (" + p.Hint + ")"
		}
		s.across(prose, text)
	}
}
