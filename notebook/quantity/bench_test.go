package quantity_test

import (
	"testing"

	"weirbook/notebook/quantity"
)

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"72 in", "6 ft 2 1/2 in", "0.31 EUR/kWh", "5.7 W/(m2.K)"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := quantity.Parse(text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

type operation func(a, b quantity.Quantity) (quantity.Quantity, error)

func benchmarkOperation(b *testing.B, do operation, left, right string) {
	b.Helper()
	p, q := mustParse(b, left), mustParse(b, right)
	b.Run(left+" and "+right, func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := do(p, q); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkAdd(b *testing.B) {
	benchmarkOperation(b, quantity.Quantity.Add, "72 in", "18 in")
	benchmarkOperation(b, quantity.Quantity.Add, "72 in", "2 ft")
	benchmarkOperation(b, quantity.Quantity.Add, "25 degC", "3 K")
}

func BenchmarkMul(b *testing.B) {
	benchmarkOperation(b, quantity.Quantity.Mul, "72 in", "2")
	benchmarkOperation(b, quantity.Quantity.Mul, "72 in", "18 in")
	benchmarkOperation(b, quantity.Quantity.Mul, "150 W", "9 h")
	benchmarkOperation(b, quantity.Quantity.Mul, "0.31 EUR/kWh", "120 kWh")
}
