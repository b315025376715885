package quantity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

func TestShort(t *testing.T) {
	for _, row := range []struct {
		v          float64
		unit, want string
	}{
		{72, "in", "72 in"}, {3.14159, "m", "3.142 m"}, {0.0012345, "m", "0.001235 m"}, {1234.56, "L", "1235 L"}, {12345.6, "L", "12 346 L"}, {1234567, "L", "1 234 567 L"}, {-12345.6, "L", "-12 346 L"}, {9999.6, "L", "10 000 L"},
		{0.99996, "m", "1 m"}, {2.50, "m", "2.5 m"}, {0, "m", "0 m"}, {1e16, "m", "1e+16 m"}, {1e-5, "m", "1e-05 m"}, {5, "", "5"}, {1e15, "L/h", "1e+15 L/h"}, {math.Inf(1), "m", "inf m"}, {math.NaN(), "", "nan"},
		{35.245, "EUR", "35.25 EUR"}, {40, "EUR", "40.00 EUR"}, {12345.678, "EUR", "12 345.68 EUR"}, {900.4, "JPY", "900 JPY"}, {1.23456, "KWD", "1.235 KWD"}, {-0.001, "EUR", "0.00 EUR"}, {0.31456, "EUR/kWh", "0.3146 EUR/kWh"},
	} {
		require.Equal(t, row.want, quantity.Must(row.v, row.unit).Short(), row.want)
	}
}

func TestStringKeepsEveryDigit(t *testing.T) {
	for want, q := range map[string]quantity.Quantity{
		"0.30000000000000004 m": quantity.Must(0.30000000000000004, "m"), "100000 m": quantity.Must(1e5, "m"), "999999999999999 m": quantity.Must(999999999999999, "m"), "1e+15 m": quantity.Must(1e15, "m"), "0.000001 m": quantity.Must(1e-6, "m"), "1e-07 m": quantity.Must(1e-7, "m"),
		"3.1 m": quantity.Must(3.14159, "m").RoundTo(1), "-5": quantity.Bare(-5),
	} {
		require.Equal(t, want, q.String())
	}
	require.Equal(t, "3.14 m", quantity.Must(3.14159, "m").Digits(3))
}

func TestDimensionWords(t *testing.T) {
	for unit, want := range map[string]string{
		"m5": "a value of dimension length^5", "EUR/kWh": "an amount of EUR per energy", "EUR/USD": "a value of dimension EUR x USD^-1", "K.m": "a value of dimension length x temperature", "EUR2": "a value of dimension EUR^2",
	} {
		require.Equal(t, want, quantity.Must(1, unit).Dimension().String())
	}
}
