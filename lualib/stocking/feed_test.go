package stocking

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The ration table is common practice; these rows are the table.
func TestDailyFeed(t *testing.T) {
	tests := []struct {
		name              string
		habit             Habit
		mass, temperature float64
		low, high         float64 // % per day
	}{
		{"fry", Community, 0.02, 25, 5, 10},
		{"small", Community, 0.5, 25, 2, 3},
		{"medium", Community, 50, 25, 1, 2},
		{"between", Community, 200, 25, 0.75, 1.5},
		{"large", Community, 800, 25, 0.5, 1},
		{"warmer by 5", Community, 50, 30, 1.414214, 2.828427},
		{"cooler by 10", Community, 50, 15, 0.5, 1},
		{"large predator", Predator, 800, 25, 0.3, 0.7},
		{"young predator", Predator, 50, 25, 1, 2},
		{"pond in summer", Pond, 2000, 22, 1, 2},
		{"pond at 18", Pond, 2000, 18, 1, 2},
		{"pond in spring", Pond, 2000, 16, 0.5, 1},
		{"pond at 12", Pond, 2000, 12, 0.2, 0.5},
		{"pond at 9", Pond, 2000, 9, 0, 0.2},
		{"pond in winter", Pond, 2000, 5, 0, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, err := DailyFeed(test.habit, test.mass, test.temperature)
			require.NoError(t, err)
			require.InDelta(t, test.low, got.LowPercent, 1e-6)
			require.InDelta(t, test.high, got.HighPercent, 1e-6)
			require.InDelta(t, got.LowPercent*test.mass/100, got.LowGPerDay, 1e-9)
			require.InDelta(t, got.HighPercent*test.mass/100, got.HighGPerDay, 1e-9)
		})
	}
}

func TestHabits(t *testing.T) {
	tests := []struct {
		name string
		want Habit
	}{
		{"Neon tetra", Community},
		{"Oscar", Predator},
		{"Red lionfish", Predator},
		{"Koi", Pond},
		{"Goldfish", Pond},
		{"Sterlet", Pond},
	}
	for _, test := range tests {
		s, err := Lookup(test.name)
		require.NoError(t, err)
		got, err := HabitOf(s)
		require.NoError(t, err)
		require.Equal(t, test.want, got, test.name)
	}
}
