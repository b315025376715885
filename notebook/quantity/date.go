package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	stdtime "time"
)

// Date is a day of the calendar, counted from 1970-01-01.
type Date struct{ day int }

var dateText = regexp.MustCompile(`^(\d{4})-(\d{2})-(\d{2})$`)

// DateError is a text that is no date.
type DateError struct{ Text string }

// Error gives what was got and wanted.
func (e *DateError) Error() string {
	return fmt.Sprintf("got the text %q, want a date", e.Text)
}

// Advice shows the form.
func (e *DateError) Advice() string {
	if dateText.MatchString(e.Text) {
		return "the calendar, from 1900 to 2199, has no such day"
	}
	return `write year-month-day, as in "2027-03-06"`
}

// ParseDate reads an ISO 8601 calendar date, years 1900 to 2199.
func ParseDate(text string) (Date, error) {
	m := dateText.FindStringSubmatch(text)
	if m == nil {
		return Date{}, &DateError{text}
	}
	year, _ := strconv.Atoi(m[1])
	month, _ := strconv.Atoi(m[2])
	day, _ := strconv.Atoi(m[3])
	t := stdtime.Date(year, stdtime.Month(month), day, 0, 0, 0, 0, stdtime.UTC)
	if t.Year() != year || int(t.Month()) != month || t.Day() != day || year < 1900 || year > 2199 {
		return Date{}, &DateError{text}
	}
	return fromTime(t), nil
}

func fromTime(t stdtime.Time) Date { return Date{int(t.Unix() / 86400)} }

// Time gives midnight UTC of the day.
func (d Date) Time() stdtime.Time { return stdtime.Unix(int64(d.day)*86400, 0).UTC() }

// String gives the ISO 8601 form.
func (d Date) String() string { return d.Time().Format("2006-01-02") }

// Weekday gives the English name of the day.
func (d Date) Weekday() string { return d.Time().Weekday().String() }

// Day gives the number of days since 1970-01-01.
func (d Date) Day() int { return d.day }

// Sub gives the time between two dates, in days.
func (d Date) Sub(e Date) Quantity { return Must(float64(d.day-e.day), "d") }

// Compare gives -1, 0 or 1.
func (d Date) Compare(e Date) int {
	switch {
	case d.day < e.day:
		return -1
	case d.day > e.day:
		return 1
	}
	return 0
}

// Add gives the date a time later. Whole months and years written as such are
// those of the calendar (a month after 31 January is the last of February);
// any other time must be whole days.
func (d Date) Add(q Quantity, sign int) (Date, error) {
	if q.Dimension() != dimTime {
		return Date{}, &MismatchError{Doing: "add", A: q, B: Must(1, "d"), hint: `a date changes by a time, as in "2 wk"`}
	}
	if unit := q.unit.symbol; (unit == "mo" || unit == "yr") && q.value == math.Trunc(q.value) && math.Abs(q.value) < 3000 {
		months := int(q.value) * sign
		if unit == "yr" {
			months *= 12
		}
		return d.addMonths(months)
	}
	days := q.inUnit(Must(1, "d").unit)
	if days != math.Trunc(days) {
		return Date{}, fmt.Errorf("got %s, want whole days to add to a date", q.Short())
	}
	return d.checked(days * float64(sign))
}

func (d Date) checked(days float64) (Date, error) {
	if math.Abs(days) > 366*300 {
		return Date{}, fmt.Errorf("the date %s moved by %s d leaves the calendar, want 1900 to 2199", d, formatShort(days))
	}
	moved := Date{d.day + int(days)}
	if year := moved.Time().Year(); year < 1900 || year > 2199 {
		return Date{}, fmt.Errorf("the date %s moved by %s d leaves the calendar, want 1900 to 2199", d, formatShort(days))
	}
	return moved, nil
}

func (d Date) addMonths(months int) (Date, error) {
	t := d.Time()
	first := stdtime.Date(t.Year(), t.Month()+stdtime.Month(months), 1, 0, 0, 0, 0, stdtime.UTC)
	last := first.AddDate(0, 1, -1).Day()
	moved := fromTime(stdtime.Date(first.Year(), first.Month(), min(t.Day(), last), 0, 0, 0, 0, stdtime.UTC))
	return d.checked(float64(moved.day - d.day))
}
