package lualib_test

import (
	"fmt"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/lualib"
	"weirbook/notebook"
	"weirbook/notebook/plan"
)

// full gives, for each function with named arguments, a call that sets all that
// its result can show.
var full = map[string]map[string]string{
	"today":            {"date": `"2027-02-01"`},
	"check":            {"name": `"Water"`, "value": `Q"40 L"`, "at_most": `"50 L"`, "at_least": `"1 L"`, "caution_at": `"45 L"`, "message": `"drain"`, "tank": `"North"`},
	"room":             {"name": `"Store"`, "length": `"5.2 m"`, "width": `"3.1 m"`, "height": `"2.4 m"`},
	"rack":             {"name": `"Wall"`, "room": `"Store"`, "length": `"2.6 m"`, "width": `"60 cm"`, "height": `"2 m"`, "tiers": `"35 cm; 115 cm"`},
	"tank":             {"name": `"North"`, "length": `"120 cm"`, "width": `"50 cm"`, "height": `"50 cm"`, "glass": `"10 mm"`, "bottom": `"12 mm"`, "fill": `"45 cm"`, "substrate": `"4 cm"`, "rock": `"10 kg"`, "salinity": `"3 ppt"`, "room": `"Store"`, "rack": `"Wall"`, "tier": `1`, "x": `"0 cm"`, "y": `"0 cm"`},
	"volume.box":       {"length": `"120 cm"`, "width": `"50 cm"`, "height": `"50 cm"`, "fill": `"45 cm"`, "wall": `"10 mm"`, "bottom": `"10 mm"`},
	"volume.cylinder":  {"diameter": `"58 cm"`, "height": `"90 cm"`, "fill": `"80 cm"`, "wall": `"5 mm"`, "bottom": `"5 mm"`},
	"volume.prism":     {"area": `"4000 cm2"`, "height": `"40 cm"`, "fill": `"30 cm"`},
	"volume.bow":       {"length": `"120 cm"`, "width": `"45 cm"`, "bow": `"12 cm"`, "height": `"55 cm"`, "fill": `"50 cm"`, "wall": `"10 mm"`, "bottom": `"10 mm"`},
	"salinity.density": {"salinity": `"15 ppt"`, "temperature": `"25 degC"`},
	"salinity.salt":    {"water": `"240 L"`, "from": `"1 ppt"`, "to": `"3 ppt"`, "temperature": `"24 degC"`},
	"stocking.fish":    {"tank": `"North"`, "species": `"Danio rerio"`, "count": `12`, "length": `"4 cm"`, "temperature": `"24 degC"`},
	"power.circuit":    {"name": `"Hall"`, "voltage": `"230 V"`, "breaker": `"16 A"`, "protection": `"RCD 30 mA"`},
	"power.load":       {"name": `"Pump"`, "power": `"18 W"`, "count": `2`, "hours": `"9 h/d"`, "on": `"07:30"`, "circuit": `"Hall"`, "tank": `"North"`, "group": `"G"`, "essential": `true`},
	"power.tariff":     {"price": `"0.31 EUR/kWh"`},
	"power.cost":       {"per": `"yr"`},
	"power.total":      {"per": `"yr"`},
	"cost.item":        {"name": `"Net"`, "price": `"2.50 EUR"`, "count": `3`, "phase": `"Lids"`, "tank": `"North"`, "supplier": `"S"`, "have": `1`, "lead": `"3 d"`},
	"cost.contingency": {"rate": `"10 %"`},
	"cost.tax":         {"rate": `"20 %"`, "included": `true`},
	"cost.running":     {"name": `"Floss"`, "amount": `"14 EUR"`, "every": `"3 mo"`, "tank": `"North"`},
	"cost.total":       {},
	"cost.to_spend":    {},
	"build.step":       {"name": `"Test"`, "work": `"2 h"`, "wait": `"2 d"`, "people": `2`, "after": `"Level"`, "phase": `"Lids"`, "tank": `"North"`},
}

// fullCall gives the full call of a function, nil without one.
func fullCall(name string) map[string]string {
	if args, ok := full[name]; ok {
		return args
	}
	return waterCalls[name]
}

// inARow are the functions whose arguments stand in a row instead of in braces.
var inARow = map[string]bool{"Q": true, "date": true, "assume": true, "rows": true, "sum": true, "round": true, "min": true, "max": true, "abs": true, "sqrt": true}

// supplies are records that the calls lean on, in cells of their own.
var supplies = map[plan.Kind]string{
	plan.KindRoom:    `room{name = "Store"}`,
	plan.KindRack:    `rack{name = "Wall", room = "Store", tiers = "35 cm"}`,
	plan.KindTank:    `north = tank{name = "North", length = "120 cm", width = "50 cm", height = "50 cm"}`,
	plan.KindCircuit: `power.circuit{name = "Hall", voltage = "230 V", breaker = "16 A"}`,
	plan.KindLoad:    `power.load{name = "North return", power = "18 W", circuit = "Hall"}`,
	plan.KindTariff:  `power.tariff "0.30 EUR/kWh"`,
	plan.KindItem:    `cost.item{name = "Lid", price = "9.99 EUR", phase = "Lids"}`,
	plan.KindStep:    `build.step{name = "Level"} build.step{name = "Level the stand"}`,
}

// supplied writes the cells of all supplies but those that a call makes itself.
func supplied(f *lualib.Function) string {
	own := map[plan.Kind]bool{}
	for _, k := range f.Makes {
		own[k] = k != plan.KindStep && k != plan.KindLoad && k != plan.KindItem
	}
	text := ""
	for _, k := range plan.Kinds() {
		if code := supplies[k]; code != "" && !own[k] {
			text += cell("supply of "+string(k), code)
		}
	}
	return text
}

// callOf writes a call with named arguments.
func callOf(f *lualib.Function, args map[string]string, change ...string) string {
	all := map[string]string{}
	for k, v := range args {
		all[k] = v
	}
	for i := 0; i+1 < len(change); i += 2 {
		if all[change[i]] = change[i+1]; change[i+1] == "" {
			delete(all, change[i])
		}
	}
	var parts []string
	for k, v := range all {
		parts = append(parts, k+" = "+v)
	}
	sort.Strings(parts)
	return fmt.Sprintf("%s{%s}", f.FullName(), strings.Join(parts, ", "))
}

// eachNamed runs a test for every function with named arguments.
func eachNamed(t *testing.T, test func(t *testing.T, f *lualib.Function, args map[string]string)) {
	for _, f := range lualib.New().Functions() {
		if inARow[f.FullName()] {
			continue
		}
		t.Run(f.FullName(), func(t *testing.T) {
			args := fullCall(f.FullName())
			require.NotNil(t, args, "the test needs a full call of %s", f.FullName())
			test(t, f, args)
		})
	}
}

// about gives the one error of a call.
func about(t *testing.T, f *lualib.Function, call string) string {
	t.Helper()
	result := runText(t, supplied(f)+cell("call", "local r = "+call))
	require.Equal(t, 1, result.Errors(), "%s: %v", call, problems(result))
	for _, p := range result.Problems {
		if !p.Caution {
			require.Contains(t, p.Error(), f.FullName(), call)
			return p.Text()
		}
	}
	return ""
}

func TestArgumentsMissing(t *testing.T) {
	eachNamed(t, func(t *testing.T, f *lualib.Function, args map[string]string) {
		for _, a := range f.Args {
			if a.Need {
				text := about(t, f, callOf(f, args, a.Name, ""))
				require.Contains(t, text, a.Name+": the argument is missing")
				require.Contains(t, text, "hint: add "+a.Name+" = ")
			}
		}
	})
}

func TestArgumentsMisspelled(t *testing.T) {
	eachNamed(t, func(t *testing.T, f *lualib.Function, args map[string]string) {
		for _, a := range f.Args {
			given, ok := args[a.Name]
			if !ok || len(a.Name) < 3 {
				continue
			}
			wrong := a.Name + a.Name[len(a.Name)-1:]
			text := about(t, f, callOf(f, args, a.Name, "", wrong, given))
			require.Contains(t, text, wrong+": got an argument that the function does not have")
			require.Contains(t, text, fmt.Sprintf("did you mean %q?", a.Name))
		}
	})
}

func TestArgumentsOfAWrongKind(t *testing.T) {
	eachNamed(t, func(t *testing.T, f *lualib.Function, args map[string]string) {
		for _, a := range f.Args {
			bad := map[lualib.ArgKind][]string{
				lualib.ArgQuantity: {`"1 mol"`, `"lots"`, `{}`, `true`}, lualib.ArgMoney: {`"1 mol"`, `5`, `"-1 EUR"`, `{}`, `"-1 EUR/kWh"`}, lualib.ArgNumber: {`"x"`, `{}`, `Q"1 L"`, `0/0`},
				lualib.ArgCount: {`1.5`, `-1`, `"x"`, `Q"1 L"`, `math.huge`}, lualib.ArgText: {`{}`, `print`}, lualib.ArgBool: {`"perhaps"`, `5`}, lualib.ArgDate: {`"2027-13-01"`, `5`, `"soon"`},
				lualib.ArgLink: {`{}`, `print`}, lualib.ArgList: {`"1 mol"`, `{"1 cm", "x"}`}, lualib.ArgPoints: {`5`, `{{"1 cm"}}`, `{{"1 cm", "1 mol"}}`}, lualib.ArgNames: {`{{}}`},
			}[a.Kind]
			for _, v := range bad {
				if text := about(t, f, callOf(f, args, a.Name, v)); a.Kind != lualib.ArgDate {
					require.Contains(t, text, a.Name+":", "%s = %s", a.Name, v)
				}
			}
		}
	})
}

func TestArgumentsOutOfRange(t *testing.T) {
	eachNamed(t, func(t *testing.T, f *lualib.Function, args map[string]string) {
		for _, a := range f.Args {
			if a.Kind != lualib.ArgQuantity || a.Unit == "" || (a.Low == 0 && a.Top == 0 && !a.Above) {
				continue
			}
			require.Contains(t, about(t, f, callOf(f, args, a.Name, fmt.Sprintf("%q", fmt.Sprintf("%g %s", a.Low-1, a.Unit)))), a.Name+": got ")
			if a.Top > a.Low {
				require.Contains(t, about(t, f, callOf(f, args, a.Name, fmt.Sprintf("%q", fmt.Sprintf("%g %s", a.Top*1.01+1, a.Unit)))), a.Name+": got ")
			}
			if a.Above {
				require.Contains(t, about(t, f, callOf(f, args, a.Name, fmt.Sprintf("%q", fmt.Sprintf("%g %s", a.Low, a.Unit)))), "more than")
			}
		}
	})
}

// TestFullCalls checks that results have the documented fields and no others,
// and that what a function says it makes and reads is true.
func TestFullCalls(t *testing.T) {
	eachNamed(t, func(t *testing.T, f *lualib.Function, args map[string]string) {
		var got, want []string
		var result *notebook.Result
		for _, change := range append(otherCalls[f.FullName()], nil) { // the full call last
			result = good(t, supplied(f)+cell("call", "local r = "+callOf(f, args, change...)+"\nfields = {}\nif type(r) == 'table' then for k in pairs(r) do fields[#fields + 1] = k end table.sort(fields) end"))
			fields := value(t, result, "fields").(*notebook.Data)
			for _, p := range fields.Pairs {
				got = append(got, p.Value.(string))
			}
		}
		slices.Sort(got)
		got = slices.Compact(got)
		for _, field := range f.Fields {
			want = append(want, field.Name)
		}
		sort.Strings(want)
		require.Equal(t, want, got)
		last := result.Cells[len(result.Cells)-1].Outcome
		made := map[plan.Kind]bool{}
		for _, r := range last.Records {
			made[r.Kind()] = true
		}
		for _, k := range f.Makes {
			require.True(t, made[k], "%s says that it makes a %s", f.FullName(), k)
		}
		require.Len(t, made, len(f.Makes))
		for _, kind := range f.Reads {
			p := badText(t, supplied(f)+cell("call", "local r = "+callOf(f, args)+"\n"+makerOf(kind)))
			require.Contains(t, p.Error(), fmt.Sprintf("recorded after the cell has read the %s records", kind))
		}
	})
}

// makerOf is a call that makes a record of a kind that something reads.
func makerOf(kind plan.Kind) string {
	return map[plan.Kind]string{
		plan.KindLoad: `power.load{name = "Late", power = "1 W"}`, plan.KindTariff: `power.tariff "1 EUR/kWh"`, plan.KindItem: `cost.item{name = "Late", price = "1 EUR"}`,
		plan.KindTax: `cost.tax "20 %"`, plan.KindContingency: `cost.contingency "5 %"`,
	}[kind]
}
