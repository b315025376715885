package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The unit of a product is the one a person would read it in.
func TestUnitsOfProducts(t *testing.T) {
	requireResults(t, []sumRow{
		{"72 in", "*", "18 in", "1296 in2"}, {"1296 in2", "*", "2 ft", "31104 in3"}, {"2 m", "*", "50 cm", "1 m2"}, {"2 m2", "*", "50 cm", "1 m3"}, {"6 ft", "*", "24 in", "12 ft2"},
		{"200 L", "/", "4000 cm2", "50 cm"}, {"1 m3", "/", "2 m2", "0.5 m"}, {"231 in3", "/", "21 in2", "11 in"}, {"5 ft3", "/", "2 ft", "2.5 ft2"},
		{"150 W", "*", "8 h", "1.2 kWh"}, {"8 h", "*", "150 W", "1.2 kWh"}, {"1.2 kWh", "/", "8 h", "150 W"}, {"230 V", "*", "2 A", "460 W"}, {"460 W", "/", "230 V", "2 A"}, {"460 W", "/", "2 A", "230 V"}, {"230 V", "/", "2 A", "115 ohm"}, {"2 A", "*", "115 ohm", "230 V"},
		{"0.31 EUR/kWh", "*", "120 kWh", "37.2 EUR"}, {"120 kWh", "*", "0.31 EUR/kWh", "37.2 EUR"}, {"0.31 EUR/kWh", "*", "500 Wh", "0.155 EUR"}, {"12 EUR/mo", "*", "1 yr", "144 EUR"}, {"2 EUR/L", "*", "10 gal", "75.70823568 EUR"}, {"37.2 EUR", "/", "120 kWh", "0.31 EUR/kWh"}, {"40 EUR", "/", "2 EUR", "20"},
		{"20 %", "*", "5 L", "1 L"}, {"5 L", "*", "20 %", "1 L"}, {"5 L", "/", "20 %", "25 L"}, {"35 g/kg", "*", "200 kg", "7000 g"}, {"30 mg/L", "*", "200 L", "6000 mg"}, {"200 L", "*", "30 mg/L", "6000 mg"},
		{"100 USD", "*", "0.92 EUR/USD", "92 EUR"}, {"0.92 EUR/USD", "*", "100 USD", "92 EUR"}, {"92 EUR", "/", "0.92 EUR/USD", "100 USD"}, {"92 EUR", "/", "100 USD", "0.92 EUR/USD"},
		{"750 L/h", "*", "2 h", "1500 L"}, {"200 gal/h", "*", "30 min", "100 gal"}, {"1500 L", "/", "2 h", "750 L/h"}, {"1500 L", "/", "750 L/h", "2 h"}, {"9 h/d", "*", "7 d", "63 h"}, {"150 W", "*", "9 h/d", "56.25 W"},
		{"12 in", "/", "1 ft", "1"}, {"5 m", "/", "2 m", "2.5"}, {"5 m", "*", "2", "10 m"}, {"2", "*", "5 m", "10 m"}, {"10", "/", "5 s", "2 1/s"}, {"5 m", "/", "2", "2.5 m"},
		{"5.7 W/(m2.K)", "*", "2 m2", "11.4 W/K"}, {"11.4 W/K", "*", "10 K", "114 W"}, {"1000 kg/m3", "*", "200 L", "200 kg"}, {"100 lm", "/", "2 m2", "50 lx"}, {"50 lx", "*", "2 m2", "100 lm"}, {"100 umol/(m2.s)", "*", "10 h", "3600000 umol/m2"},
		{"10 N", "/", "2 m2", "0.005 kPa"}, {"2 kPa", "*", "3 m2", "6000 N"}, {"5 kg", "/", "10 L", "0.5 kg/L"}, {"10 Ah", "/", "2 h", "5 A"},
	})
}

// A cost of running something for a time: in three steps, as typed.
func TestARunningCostComesOutAsMoney(t *testing.T) {
	power := mustParse(t, "150 W")
	daily, err := power.Mul(mustParse(t, "9 h/d"))
	require.NoError(t, err)
	energy, err := daily.Mul(mustParse(t, "1 yr"))
	require.NoError(t, err)
	require.Equal(t, "492.75 kWh", energy.String())
	cost, err := energy.Mul(mustParse(t, "0.31 EUR/kWh"))
	require.NoError(t, err)
	require.Equal(t, "152.75 EUR", cost.RoundTo(2).String())
	rate, err := mustParse(t, "0.31 EUR/kWh").Mul(power)
	require.NoError(t, err)
	again, err := rate.Mul(mustParse(t, "3285 h"))
	require.NoError(t, err)
	require.Equal(t, "152.75 EUR", again.RoundTo(2).String())
}
