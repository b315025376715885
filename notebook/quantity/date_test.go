package quantity_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"weirbook/notebook/quantity"
)

func mustDate(t *testing.T, text string) quantity.Date {
	t.Helper()
	d, err := quantity.ParseDate(text)
	require.NoError(t, err, text)
	return d
}

// Calendar rules of ISO 8601: 2000 is a leap year, 1900 and 2100 are not.
func TestParseDate(t *testing.T) {
	for _, text := range []string{"2027-03-06", "1900-01-01", "2199-12-31", "1970-01-01", "1969-12-31", "2000-02-29", "2028-02-29"} {
		require.Equal(t, text, mustDate(t, text).String())
	}
	for _, text := range []string{"", "2027-3-6", "06.03.2027", "2027-13-01", "2027-00-10", "2027-02-30", "2027-04-31", "1900-02-29", "2100-02-29", "1899-12-31", "2200-01-01", "2027-03-06 ", "2027-03-06T00:00", "20270306", "٢٠٢٧-٠٣-٠٦"} {
		_, err := quantity.ParseDate(text)
		require.EqualError(t, err, "got the text \""+text+"\", want a date")
		require.Contains(t, []string{`write year-month-day, as in "2027-03-06"`, "the calendar, from 1900 to 2199, has no such day"}, adviceOf(err))
	}
}

func TestDateAdd(t *testing.T) {
	for _, row := range []struct {
		date, step string
		sign       int
		want       string
	}{
		{"2027-03-06", "2 wk", 1, "2027-03-20"}, {"2027-03-06", "2 wk", -1, "2027-02-20"}, {"2027-03-06", "10 d", 1, "2027-03-16"}, {"2027-03-06", "48 h", 1, "2027-03-08"}, {"2027-03-06", "1440 min", 1, "2027-03-07"}, {"2027-03-06", "0 d", 1, "2027-03-06"}, {"2027-03-06", "-1 d", 1, "2027-03-05"},
		{"2027-01-31", "1 mo", 1, "2027-02-28"}, {"2028-01-31", "1 mo", 1, "2028-02-29"}, {"2027-03-31", "1 mo", -1, "2027-02-28"}, {"2027-03-31", "-1 mo", 1, "2027-02-28"}, {"2027-05-31", "1 mo", 1, "2027-06-30"}, {"2027-11-30", "3 mo", 1, "2028-02-29"}, {"2027-01-15", "12 mo", 1, "2028-01-15"}, {"2027-01-15", "13 mo", -1, "2025-12-15"},
		{"2028-02-29", "1 yr", 1, "2029-02-28"}, {"2028-02-29", "4 yr", 1, "2032-02-29"}, {"2096-02-29", "4 yr", 1, "2100-02-28"}, {"2027-12-31", "1 d", 1, "2028-01-01"}, {"2028-02-28", "1 d", 1, "2028-02-29"}, {"2100-02-28", "1 d", 1, "2100-03-01"}, {"1970-01-01", "1 d", -1, "1969-12-31"},
		{"2199-12-30", "1 d", 1, "2199-12-31"}, {"1900-01-02", "1 d", -1, "1900-01-01"}, {"1900-01-01", "299 yr", 1, "2199-01-01"},
	} {
		got, err := mustDate(t, row.date).Add(mustParse(t, row.step), row.sign)
		require.NoError(t, err, "%s %s", row.date, row.step)
		require.Equal(t, row.want, got.String(), "%s %d x %s", row.date, row.sign, row.step)
	}
}

func TestDateAddRefuses(t *testing.T) {
	for _, row := range []struct{ date, step, message, advice string }{
		{"2027-03-06", "2 m", "cannot add 2 m (a length) and 1 d (a time)", `a date changes by a time, as in "2 wk"`}, {"2027-03-06", "2", "cannot add 2 (a bare number) and 1 d (a time)", `a date changes by a time, as in "2 wk"`},
		{"2027-03-06", "36 h", "got 36 h, want whole days to add to a date", ""}, {"2027-03-06", "0.5 mo", "got 0.5 mo, want whole days to add to a date", ""}, {"2027-03-06", "0.5 d", "got 0.5 d, want whole days to add to a date", ""},
		{"2199-12-31", "1 d", "the date 2199-12-31 moved by 1 d leaves the calendar, want 1900 to 2199", ""}, {"2199-12-01", "1 mo", "the date 2199-12-01 moved by 31 d leaves the calendar, want 1900 to 2199", ""},
		{"2027-01-01", "1e9 d", "the date 2027-01-01 moved by 1 000 000 000 d leaves the calendar, want 1900 to 2199", ""}, {"1900-01-01", "-1 d", "the date 1900-01-01 moved by -1 d leaves the calendar, want 1900 to 2199", ""},
		{"2027-01-01", "2999 yr", "the date 2027-01-01 moved by 1 095 362 d leaves the calendar, want 1900 to 2199", ""}, {"2027-01-01", "3000 yr", "the date 2027-01-01 moved by 1 095 000 d leaves the calendar, want 1900 to 2199", ""},
	} {
		_, err := mustDate(t, row.date).Add(mustParse(t, row.step), 1)
		require.EqualError(t, err, row.message)
		require.Equal(t, row.advice, adviceOf(err), row.message)
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := mustDate(t, "2027-01-01").Add(quantity.Must(v, "d"), 1)
		require.Error(t, err)
		_, err = mustDate(t, "2027-01-01").Add(quantity.Must(v, "mo"), 1)
		require.Error(t, err)
	}
}

func TestDateDifferencesAndOrder(t *testing.T) {
	a, b := mustDate(t, "2027-03-06"), mustDate(t, "2028-03-06")
	require.Equal(t, "366 d", b.Sub(a).String())
	require.Equal(t, "-366 d", a.Sub(b).String())
	require.Equal(t, []int{-1, 0, 1}, []int{a.Compare(b), a.Compare(a), b.Compare(a)})
	require.Equal(t, "Saturday", a.Weekday())
	require.Equal(t, 0, mustDate(t, "1970-01-01").Day())
	require.Equal(t, -1, mustDate(t, "1969-12-31").Day())
	require.Equal(t, time.Date(2027, 3, 6, 0, 0, 0, 0, time.UTC), a.Time())
}

// Every day of the calendar reads back and follows the one before.
func TestEveryDayOfTheCalendar(t *testing.T) {
	one, day := quantity.Must(1, "d"), mustDate(t, "1900-01-01")
	for day.String() != "2199-12-31" {
		next, err := day.Add(one, 1)
		require.NoError(t, err)
		read, err := quantity.ParseDate(next.String())
		require.NoError(t, err)
		require.Equal(t, next, read)
		require.Equal(t, day.Day()+1, next.Day())
		day = next
	}
	// 300 years, 73 of them leap years
	require.Equal(t, 300*365+73-1, day.Day()-mustDate(t, "1900-01-01").Day())
}
