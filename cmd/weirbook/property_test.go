package main

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/markdown"
	"weirbook/notebook/run"
	"weirbook/xlsx"
)

// editor makes random notebooks and random edits of them.
type editor struct {
	*rand.Rand
	blocks []string
	serial int
	fresh  int
}

var assigned = regexp.MustCompile(`(?m)^(?:> )?(?:function )?(v\d+)(?: =|\()`)

// names are those that the notebook assigns now.
func (e *editor) names() []string {
	var names []string
	for _, m := range assigned.FindAllStringSubmatch(strings.Join(e.blocks, "\n"), -1) {
		names = append(names, m[1])
	}
	return names
}

// target is a name to assign: mostly one that nothing assigns yet.
func (e *editor) target() string {
	if have := e.names(); e.IntN(12) == 0 && len(have) > 0 {
		return e.pick(have...)
	}
	e.fresh++
	return fmt.Sprintf("v%d", e.fresh)
}

// name is a name to read: mostly one that is assigned.
func (e *editor) name() string {
	if have := e.names(); e.IntN(15) > 0 && len(have) > 0 {
		return e.pick(have...)
	}
	return fmt.Sprintf("v%d", e.IntN(30))
}

func (e *editor) pick(list ...string) string { return list[e.IntN(len(list))] }

var broken = regexp.MustCompile(`x = =|^error|Budgt|\.a = 5|^table\.insert|^v\d+\(`)

// statement is a line or some of a cell, seldom a broken one.
func (e *editor) statement() string {
	for {
		if s := e.anyStatement(); !broken.MatchString(s) || e.IntN(8) == 0 {
			return s
		}
	}
}

func (e *editor) anyStatement() string {
	e.serial++
	n := e.serial
	return e.pick(
		fmt.Sprintf("%s = Q\"%d cm\" + Q\"1 in\"", e.target(), e.IntN(50)),
		fmt.Sprintf("%s = Q\"%d cm\" -- a remark", e.target(), e.IntN(3)),
		fmt.Sprintf("%s = %s * 2", e.target(), e.name()),
		fmt.Sprintf("%s = {a = %d, b = {Q\"2 L\", true}}", e.target(), e.IntN(4)),
		fmt.Sprintf("%s = %s.a", e.target(), e.name()),
		fmt.Sprintf("function %s(x) return x + %d end", e.target(), e.IntN(4)),
		fmt.Sprintf("function %s(n)\n  cost.item{name = \"Made \" .. n, price = \"%d EUR\"}\nend", e.target(), e.IntN(9)+1),
		fmt.Sprintf("local t = {}\nfor i = 1, 3 do t[i] = i * %d end\n%s = sum(t)", e.IntN(5), e.target()),
		fmt.Sprintf("%s(%d)", e.name(), e.IntN(5)),
		fmt.Sprintf("%s = %s(%d)", e.target(), e.name(), e.IntN(5)),
		fmt.Sprintf("tank{name = \"T%d\", length = \"%d cm\", width = \"40 cm\", height = \"40 cm\"}", e.IntN(5), 50+e.IntN(3)*10),
		fmt.Sprintf("cost.item{name = \"Thing %d\", price = \"%d.50 EUR\", phase = \"P%d\"}", n, e.IntN(30), e.IntN(3)),
		"for _, row in ipairs(rows \"Budget\") do cost.item(row) end",
		"for _, row in ipairs(rows \"Budgt\") do cost.item(row) end",
		fmt.Sprintf("%s = cost.total()", e.target()),
		fmt.Sprintf("%s = cost.total{phase = \"P1\"}", e.target()),
		fmt.Sprintf("power.load{name = \"L%d\", power = \"%d W\", circuit = \"C\"}", e.IntN(6), e.IntN(900)),
		"power.circuit{name = \"C\", voltage = \"230 V\", breaker = \"10 A\"}",
		"power.tariff{price = \"0.3 EUR/kWh\"}",
		fmt.Sprintf("%s = power.cost()", e.target()),
		fmt.Sprintf("%s = assume{\"A guess\", \"%d cm\", low = \"1 cm\", high = \"9 cm\"}", e.target(), e.IntN(12)),
		fmt.Sprintf("check{\"C%d\", Q\"%d cm\", at_most = \"5 cm\", caution_at = \"4 cm\"}", e.IntN(4), e.IntN(8)),
		fmt.Sprintf("build.step{name = \"S%d\", work = \"2 h\", after = \"S%d\"}", e.IntN(6), e.IntN(6)),
		fmt.Sprintf("print(\"printed\", %d, {}, math.random())", e.IntN(3)),
		fmt.Sprintf("error(\"wrong %d\")", e.IntN(2)),
		fmt.Sprintf("%s.a = 5", e.name()),
		fmt.Sprintf("table.insert(%s, 1)", e.name()),
		"x = = 3",
		fmt.Sprintf("%s = %s", e.target(), e.name()),
		fmt.Sprintf("local t = {%d} %s = {t, t, {%d}}", e.IntN(2), e.target(), e.IntN(2)),
		fmt.Sprintf("%s = %s == %s", e.target(), e.name(), e.name()),
		fmt.Sprintf("local same, n = {}, 0 same[%s] = 1 same[%s] = 2 for _ in pairs(same) do n = n + 1 end\n%s = n", e.name(), e.name(), e.target()),
		fmt.Sprintf("%s = {f = function(x) return x * %d end}", e.target(), e.IntN(3)),
		fmt.Sprintf("local v = %s\n%s = type(v) == \"table\" and v.f and v.f(2)", e.name(), e.target()),
		fmt.Sprintf("function %s(h) for _, row in ipairs(rows(h)) do cost.item(row) end end", e.target()),
		fmt.Sprintf("%s(\"Budget\")", e.name()),
		fmt.Sprintf("local ok, why = pcall(function() %s.a = 1 end)\n%s = why", e.name(), e.target()),
		fmt.Sprintf("local ok, message = pcall(error, \"caught %d\")\n%s = message", e.IntN(3), e.target()),
	)
}

func (e *editor) cell() string {
	var b strings.Builder
	fmt.Fprintf(&b, "```lua %s\n", e.pick("", "A title", "Another title", fmt.Sprintf("Cell %d", e.IntN(40))))
	for range 1 + e.IntN(3) {
		b.WriteString(e.statement() + "\n")
	}
	return b.String() + "```"
}

func (e *editor) block() string {
	switch e.IntN(10) {
	case 0:
		return fmt.Sprintf("## Heading %d", e.IntN(5))
	case 1:
		return fmt.Sprintf("Some words %d.\nMore of them, {= %s} and {= %s + 1}.", e.IntN(100), e.name(), e.name())
	case 2:
		return fmt.Sprintf("To spend: {= cost.to_spend()}, in all {= cost.total()}; {= %s.a}.", e.name())
	case 3:
		return fmt.Sprintf("## Budget\n\n| item | price | count | phase |\n|---|---|---|---|\n| Glass | %d EUR | 2 | P1 |\n| Pump | {= Q\"%d EUR\" * 2} | %s | P2 |", e.IntN(40), e.IntN(9), e.pick("1", "2", "", "many"))
	case 4:
		return fmt.Sprintf("> quoted\n>\n> ```lua In a quote\n> %s = %d\n> ```", e.target(), e.IntN(9))
	case 5:
		return "- a list\n  ```csv\n  a,b\n  1,2\n  ```"
	}
	return e.cell()
}

// edit changes the notebook somehow.
func (e *editor) edit() {
	if len(e.blocks) == 0 {
		e.blocks = append(e.blocks, e.block())
		return
	}
	i := e.IntN(len(e.blocks))
	switch e.IntN(9) {
	case 0, 1:
		e.blocks = append(e.blocks[:i], append([]string{e.block()}, e.blocks[i:]...)...)
	case 2:
		e.blocks = append(e.blocks[:i], e.blocks[i+1:]...)
	case 3, 4:
		e.blocks[i] = e.block()
	case 5:
		k := e.IntN(len(e.blocks))
		e.blocks[i], e.blocks[k] = e.blocks[k], e.blocks[i]
	case 6: // spacing and remarks inside
		lines := strings.Split(e.blocks[i], "\n")
		k := 1 + e.IntN(len(lines))
		if strings.HasPrefix(e.blocks[i], "```lua") && k < len(lines) {
			lines = append(lines[:k], append([]string{e.pick("", "-- a remark", "   ")}, lines[k:]...)...)
			e.blocks[i] = strings.Join(lines, "\n")
		}
	case 7:
		e.blocks[i] += "\n\nA word more."
	case 8:
		e.blocks[i] = strings.ReplaceAll(e.blocks[i], "cm", e.pick("cm", "mm", "L"))
	}
}

var assumptions = regexp.MustCompile(`(?m)^(v\d+) = assume`)

// overrides sets an assumption of the notebook now and then.
func (e *editor) overrides() map[string]string {
	found := assumptions.FindAllStringSubmatch(strings.Join(e.blocks, "\n"), -1)
	if len(found) == 0 || e.IntN(2) == 0 {
		return nil
	}
	return map[string]string{found[e.IntN(len(found))][1]: fmt.Sprintf("%d cm", e.IntN(12))}
}

func (e *editor) content() []byte {
	return []byte("# Room\n\n" + strings.Join(e.blocks, "\n\n") + "\n")
}

// seen is all that a person can see of a result.
func seen(t *testing.T, r *notebook.Result) string {
	var b bytes.Buffer
	require.NoError(t, writeJSON(&b, r))
	printProblems(&b, r, plainStyle)
	same := *r
	same.Ran, same.Took = 0, 0
	printSummary(&b, &same, "room.xlsx", plainStyle)
	for _, c := range r.Cells {
		fmt.Fprintln(&b, c.Cell.Line(), c.Cell.Title, c.Status, c.WaitsFor)
	}
	return b.String()
}

func workbook(t *testing.T, r *notebook.Result) []byte {
	var b bytes.Buffer
	require.NoError(t, xlsx.Write(&b, r))
	return b.Bytes()
}

// TestPartialRunsEqualFreshRuns makes random edits and compares the state after
// each with that of a fresh process: values, records, totals, problems, and the
// workbook's bytes.
func TestPartialRunsEqualFreshRuns(t *testing.T) {
	sequences, edits := 60, 40
	if testing.Short() {
		sequences = 8
	}
	for seed := range sequences {
		e := &editor{Rand: rand.New(rand.NewPCG(uint64(seed), 7))}
		for range 6 {
			e.blocks = append(e.blocks, e.block())
		}
		runner, parser := run.New(lualib.New(), notebook.DefaultLimits()), markdown.NewParser()
		for step := range edits {
			content := e.content()
			overrides := e.overrides()
			partial, err := runner.Run(context.Background(), parser.Parse("room.md", content), overrides)
			require.NoError(t, err)
			fresh, err := run.New(lualib.New(), notebook.DefaultLimits()).Run(context.Background(), markdown.Parse("room.md", content), overrides)
			require.NoError(t, err)
			require.Equal(t, seen(t, fresh), seen(t, partial), "seed %d, step %d:\n%s", seed, step, content)
			if step%8 == 7 {
				require.True(t, bytes.Equal(workbook(t, fresh), workbook(t, partial)), "the workbooks differ: seed %d, step %d", seed, step)
			}
			e.edit()
		}
	}
}

// TestEditsThatRunNothing: prose, comments and spacing are no code.
func TestEditsThatRunNothing(t *testing.T) {
	base := "# Room\n\nWords.\n\n```lua One\na = 1\nb = a + 1\n```\n\n```lua Two\nc = b * 2\ncheck{\"C\", c, at_most = 3}\n```\n\nIs {= c}.\n"
	runner, parser := run.New(lualib.New(), notebook.DefaultLimits()), markdown.NewParser()
	first, err := runner.Run(context.Background(), parser.Parse("room.md", []byte(base)), nil)
	require.NoError(t, err)
	require.Equal(t, 3, first.Ran)
	for name, c := range map[string]struct {
		edited string
		ran    int
	}{
		"prose":                   {strings.Replace(base, "Words.", "Other words,\nand a line more.", 1), 0},
		"a comment in a cell":     {strings.Replace(base, "b = a + 1", "-- why\nb = a + 1 -- because", 1), 0},
		"spacing in a cell":       {strings.Replace(base, "b = a + 1", "\n  b   =   a+1\n", 1), 0},
		"early cut-off":           {strings.Replace(base, "a = 1", "a = 2 - 1", 1), 1},
		"a value that others use": {strings.Replace(base, "a = 1", "a = 2", 1), 3},
		"a title":                 {strings.Replace(base, "lua Two", "lua Deux", 1), 1},
	} {
		runner, parser := run.New(lualib.New(), notebook.DefaultLimits()), markdown.NewParser()
		_, err := runner.Run(context.Background(), parser.Parse("room.md", []byte(base)), nil)
		require.NoError(t, err)
		result, err := runner.Run(context.Background(), parser.Parse("room.md", []byte(c.edited)), nil)
		require.NoError(t, err)
		require.Equal(t, c.ran, result.Ran, name)
	}
}
