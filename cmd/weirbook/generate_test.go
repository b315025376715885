package main

import (
	"fmt"
	"strings"
)

// generated writes a notebook of a given size: tanks and budget lines in tables,
// cells of some lines each that lean on one another, values in the text.
func generated(cells, tanks, items int) []byte {
	var b strings.Builder
	b.WriteString("# A generated room\n\n```lua Prices\nelectricity = assume{\"Electricity price\", \"0.30 EUR/kWh\"}\npower.tariff{price = electricity}\ncost.contingency \"10 %\"\n```\n\n")
	b.WriteString("## Tanks\n\n| name | length | width | height | glass | fill | substrate |\n|---|---|---|---|---|---|---|\n")
	for i := range tanks {
		fmt.Fprintf(&b, "| Tank %d | %d cm | 50 cm | 55 cm | 10 mm | 50 cm | %d cm |\n", i, 80+i%60, i%6)
	}
	b.WriteString("\n```lua The tanks\ntanks = {}\nfor _, row in ipairs(rows \"Tanks\") do tanks[row.name] = tank(row) end\nall_water = sum(tanks, \"water\")\n```\n\n")
	b.WriteString("## Budget\n\n| item | count | price | phase | supplier | have |\n|---|---|---|---|---|---|\n")
	for i := range items {
		fmt.Fprintf(&b, "| Part number %d | %d | %d.%02d EUR | Phase %d | Supplier %d | %s |\n", i, 1+i%4, 3+i%90, i%100, i%12, i%7, map[bool]string{true: "1", false: ""}[i%5 == 0])
	}
	b.WriteString("\n```lua The budget\nfor _, row in ipairs(rows \"Budget\") do cost.item(row) end\n```\n\nIn all {= cost.total()}, to spend {= cost.to_spend()}.\n\n")
	for i := range cells - 3 {
		fmt.Fprintf(&b, "## Part %d\n\nSome words about part %d and why it is so, with *stress* and a [link](https://example.org/%d).\nIts value is {= v%d}.\n\n", i, i, i, i)
		fmt.Fprintf(&b, "```lua Cell %d\n", i)
		if i%10 != 0 {
			fmt.Fprintf(&b, "local before = v%d\n", i-1)
		} else {
			b.WriteString("local before = Q\"1 cm\"\n")
		}
		b.WriteString("local total = before\n")
		for k := range 8 {
			fmt.Fprintf(&b, "local part%d = Q\"%d mm\" * %d + before -- a remark\n", k, k+1, i%7+1)
		}
		b.WriteString("for n = 1, 10 do\n  if n % 2 == 0 then total = total + part1 else total = total + part2 end\nend\n")
		fmt.Fprintf(&b, "v%d = round(total, 3)\n", i)
		if i%25 == 0 {
			fmt.Fprintf(&b, "check{\"Part %d fits\", v%d, at_most = \"100 km\"}\n", i, i)
		}
		b.WriteString("```\n\n")
	}
	return []byte(b.String())
}
