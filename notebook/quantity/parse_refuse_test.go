package quantity_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

// refused is a text, the message of the error and its advice.
type refused struct{ text, message, advice string }

func requireRefused(t *testing.T, rows []refused) {
	t.Helper()
	for _, row := range rows {
		_, err := quantity.Parse(row.text)
		require.EqualError(t, err, row.message, row.text)
		require.Equal(t, row.advice, adviceOf(err), row.text)
	}
}

func adviceOf(err error) string {
	var advised interface{ Advice() string }
	if errors.As(err, &advised) {
		return advised.Advice()
	}
	return ""
}

func TestParseRefusesACommaWithBothReadings(t *testing.T) {
	requireRefused(t, []refused{
		{"1,200", `a comma in the number "1,200" reads two ways`, `write "1200" or "1.2"`},
		{"1,200 L/h", `a comma in the number "1,200" reads two ways`, `write "1200 L/h" or "1.2 L/h"`},
		{"1,000 L", `a comma in the number "1,000" reads two ways`, `write "1000 L" or "1 L"`},
		{"3,5 in", `a comma in the number "3,5" reads two ways`, `write "35 in" or "3.5 in"`},
		{"-3,5 K", `a comma in the number "-3,5" reads two ways`, `write "-35 K" or "-3.5 K"`},
		{"6 ft 2,5 in", `a comma in the number "2,5" reads two ways`, `write "25 in" or "2.5 in"`},
		{"€ 3,50", `a comma in the number "3,50" reads two ways`, `write "350" or "3.5"`},
	})
}

func TestParseRefusesACommaThatReadsOneWay(t *testing.T) {
	requireRefused(t, []refused{
		{"0,31 EUR/kWh", `got the number "0,31" with a comma, want none`, `write "0.31 EUR/kWh"`},
		{"1,200.5 L", `got the number "1,200.5" with a comma, want none`, `write "1200.5 L"`},
		{"1.200,5 L", `got the number "1.200,5" with a comma, want none`, `write "1200.5 L"`},
		{"1 200,5 L", `got the number "1 200,5" with a comma, want none`, `write "1200.5 L"`},
		{"1,200,300 L", `got the number "1,200,300" with a comma, want none`, `write "1200300 L"`},
	})
}

// What a reader is told to write must itself be read.
func TestCommaReadingsParse(t *testing.T) {
	for text, want := range map[string][2]float64{"1,200 L": {1200, 1.2}, "12,5 L": {125, 12.5}, "0,5 L": {0.5, 0.5}, "1.200,5 L": {1200.5, 1200.5}} {
		_, err := quantity.Parse(text)
		var comma *quantity.CommaError
		require.ErrorAs(t, err, &comma, text)
		readings := strings.Split(strings.TrimPrefix(comma.Advice(), "write "), " or ")
		for i, reading := range readings {
			q, err := quantity.Parse(strings.Trim(reading, `"`))
			require.NoError(t, err, reading)
			require.Equal(t, want[i], q.Value(), reading)
		}
	}
}

func TestParseRefusesWhatIsNoQuantity(t *testing.T) {
	const want, falling = `want a number with a unit, as in "72 in"`, `want one number with a unit, or falling ones as in "6 ft 2 in"`
	requireRefused(t, []refused{
		{"", `got the text "", ` + want, ""}, {"   ", `got the text "   ", ` + want, ""}, {"in", `got the text "in", ` + want, ""}, {"W/(m2.K)", `got the text "W/(m2.K)", ` + want, ""},
		{"about 5 m", `got the text "about 5 m", ` + want, ""}, {"--5 m", `got the text "--5 m", ` + want, ""}, {"inf", `got the text "inf", ` + want, ""}, {"nan m", `got the text "nan m", ` + want, ""}, {"- m", `got the text "- m", ` + want, ""},
		{"1 wk 2 d 3 h 4 min 5 s", `got the text "1 wk 2 d 3 h 4 min 5 s", ` + want, ""},
		{"2 in 6 ft", `got the text "2 in 6 ft", ` + falling, ""}, {"2 m 50", `got the text "2 m 50", ` + falling, ""}, {"5 m 3 kg", `got the text "5 m 3 kg", ` + falling, ""}, {"6 ft 2 ft", `got the text "6 ft 2 ft", ` + falling, ""},
		{"6 ft -2 in", `got the text "6 ft -2 in", ` + falling, ""}, {"25 degC 2 K", `got the text "25 degC 2 K", ` + falling, ""}, {"5 EUR 20 USD", `got the text "5 EUR 20 USD", ` + falling, ""},
		{"£12.50 m", `got the text "£12.50 m", want one currency`, ""}, {"EUR 5 USD", `got the text "EUR 5 USD", want one currency`, ""},
		{"1/0 in", `the fraction "1/0" divides by zero`, ""}, {"3 0/0 in", `the fraction "3 0/0" divides by zero`, ""},
		{"1 200/4 in", `got the fraction "1 200/4", want one below 1 after the whole number`, ""}, {"1e400 m", `the number "1e400" is too large`, ""},
		{strings.Repeat("9", 201), "got a text of 201 characters, want a number with a unit", ""},
	})
}

func TestParseRefusesUnits(t *testing.T) {
	requireRefused(t, []refused{
		{"72 inn", `unknown unit "inn"`, ""}, {"72 IN", `unknown unit "IN"`, ""}, {"5 l/hh", `unknown unit "hh"`, ""}, {"12 34 in", `unknown unit "34 in"`, ""}, {"1.2.3 m", `unknown unit ".3 m"`, ""},
		{"5 kg/", `unknown unit "kg/"`, ""}, {"5 kg/(m.", `unknown unit "kg/(m."`, ""}, {"5 (m/s)2", `unknown unit "(m/s)2"`, ""}, {"5 W/(m2", `unit "W/(m2": a bracket is not closed`, ""},
		{"5 m13", `unit "m13": exponent beyond 12`, ""}, {"5 m-13", `unit "m-13": exponent beyond 12`, ""}, {"5 m999", `unit "m999": exponent beyond 12`, ""}, {"5 m12.m12", "the exponent of m grows beyond 12", ""},
		{"5 m12.ft12", "the exponent of length grows beyond 12", ""}, {"5 m5.L5", "the exponent of length grows beyond 12", ""}, {"5 rad12.rad12", "the exponent of rad grows beyond 12", ""}, {"5 EUR12.EUR", "the exponent of EUR grows beyond 12", ""},
		{"5 EUR.USD.GBP", "three currencies in one value", ""},
		{"5 ((((((((((m))))))))))", `unit "((((((((((m))))))))))": brackets nested too deep`, ""},
		{"5 " + strings.Repeat("m.", 40) + "m", "unit text of 81 characters, want at most 80", ""},
		{"5 GWh12", `unknown unit "GWh"`, ""},
	})
}

func TestKeepersUnitsAreAnswered(t *testing.T) {
	const dollar = "write USD (or AUD, CAD, …): the dollar sign does not say whose"
	requireRefused(t, []refused{
		{"25 C", `unknown unit "C"`, "write degC for a temperature"}, {"77 F", `unknown unit "F"`, "write degF for a temperature"},
		{"400 ppm", `unknown unit "ppm"`, "write mg/L for something dissolved in water, mg/kg for something in salt or feed"},
		{"5 ppb", `unknown unit "ppb"`, "write ug/L for something dissolved in water"},
		{"$40", `unknown unit "$"`, dollar}, {"$ 40", `unknown unit "$"`, dollar}, {"40 $", `unknown unit "$"`, dollar}, {"0.31 $/kWh", `unknown unit "$"`, dollar},
		{"¥500", `unknown unit "¥"`, "write JPY or CNY"}, {"5 kw", `unknown unit "kw"`, "write kW"}, {"0.31 EUR/kwh", `unknown unit "kwh"`, "write kWh"},
		{"3 M", `unknown unit "M"`, "write mol/L, or m for metres"}, {"8 dH", `unknown unit "dH"`, "write dGH for hardness, dKH for carbonate hardness"},
		{"1.025 SG", `unknown unit "SG"`, "give a specific gravity as a bare number with its reference temperature"}, {"300 PAR", `unknown unit "PAR"`, "write umol/(m2.s)"},
	})
}

// Every answer is for a unit that is indeed refused.
func TestAnswersAreForRefusedUnits(t *testing.T) {
	for unit, advice := range quantity.AnswerTexts() {
		_, err := quantity.New(1, unit)
		var unknown *quantity.UnknownUnitError
		require.ErrorAs(t, err, &unknown, unit)
		require.Equal(t, advice, unknown.Advice(), unit)
	}
}
