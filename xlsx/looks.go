package xlsx

import (
	"strings"

	"github.com/xuri/excelize/v2"

	"weirbook/notebook/quantity"
)

// look says how a cell is drawn, apart from its number format.
type look int

const (
	body               look = iota // a cell of a list
	wrapped                        // a cell of a list with longer text
	strong                         // a sum
	label                          // the words before a sum or a figure
	countLook                      // a count that stands at the left
	title                          // the name of the sheet
	section                        // a heading within a sheet
	prose                          // sentences over several columns
	heading                        // a column's header
	numberHeading                  // the header of a column of numbers
	faint                          // a cell of a list for those who look closer
	faintHeading                   // the header of a column of such cells
	faintNumberHeading             // the same over numbers
	missing                        // a figure that could not be worked out
	input                          // a cell that the reader may change
	alarm                          // something that needs attention
	link                           // a jump to another place of the workbook
)

// The colours: a grey green for structure, sand for input, and a muted traffic
// light for the outcomes.
const (
	ink       = "22302E"
	soft      = "566360"
	hairline  = "C9D3D0"
	band      = "DFE8E5"
	sand      = "FFF4CC"
	sandEdge  = "B08A1E"
	passFill  = "DCEFE0"
	careFill  = "FBE7BF"
	failFill  = "F5CFC9"
	alarmText = "8C2B1E"
	linkText  = "1F5D7A"
)

type lookKey struct {
	look   look
	format string
}

// looks makes the styles of a workbook, each once. The first error stays.
type looks struct {
	file        *excelize.File
	ids         map[lookKey]int
	plain       [link + 1]int // styles without a number format, 0 for not made yet
	err         error
	money       string // number format of the notebook's money
	moneyDigits int
	moneyTail   int // characters after the digits of money
	currency    string
	shown       []shown // by style
}

// shown is what a number format adds to a number, and how a style takes text.
type shown struct {
	tail, decimals int
	wraps          bool // longer text is broken into lines
}

func newLooks(file *excelize.File, currency string) *looks {
	l := &looks{file: file, ids: map[lookKey]int{}, currency: currency, moneyDigits: 2}
	if currency != "" {
		l.moneyDigits = quantity.MinorDigits(currency)
		l.moneyTail = 1 + len(currency)
	}
	l.money = moneyFormat(currency)
	return l
}

// moneyFormat is the number format of an amount: grouped digits, as many
// decimals as the currency has, and its code.
func moneyFormat(currency string) string {
	if currency == "" {
		return decimalsFormat(2)
	}
	return decimalsFormat(quantity.MinorDigits(currency)) + ` "` + currency + `"`
}

// finestCoin is how many decimals a price with parts of the smallest coin, such
// as that of a screw, shows at most.
const finestCoin = 4

// priceFormat is the number format of a price: with the decimals that it has.
func priceFormat(v float64, currency string) string {
	digits := 2
	if currency != "" {
		digits = quantity.MinorDigits(currency)
	}
	format := decimalsFormat(priceDecimals(v, digits))
	if currency == "" {
		return format
	}
	return format + ` "` + currency + `"`
}

// priceDecimals counts the decimals of a price, from those of its currency.
func priceDecimals(v float64, digits int) int {
	for digits < finestCoin && quantity.Round(v, digits) != v {
		digits++
	}
	return digits
}

// id gives the style of a look with a number format ("" for none).
func (l *looks) id(k look, format string) int {
	if format == "" && l.plain[k] != 0 {
		return l.plain[k]
	}
	key := lookKey{k, format}
	if id, ok := l.ids[key]; ok {
		return id
	}
	id := l.make(k, format)
	l.ids[key] = id
	if format == "" {
		l.plain[k] = id
	}
	for len(l.shown) <= id {
		l.shown = append(l.shown, shown{})
	}
	l.shown[id] = shown{tail: strings.Count(format, `"`) / 2 * l.moneyTail, decimals: decimalsOf(format), wraps: k == wrapped}
	return id
}

func (l *looks) make(k look, format string) int {
	style := lookStyle(k)
	if format != "" {
		switch format {
		case generalFormat:
		case textFormat:
			style.NumFmt = textFormatID
		default:
			style.CustomNumFmt = &format
		}
		if k == body || k == strong || k == input || k == faint {
			style.Alignment.Horizontal, style.Alignment.Indent = "right", 0
		}
	}
	if format == textFormat {
		style.Alignment.Horizontal = "left"
	}
	id, err := l.file.NewStyle(style)
	if err != nil && l.err == nil {
		l.err = err
	}
	return id
}

// tailOf gives what a style's number format adds to a number: characters after
// it and decimals.
func (l *looks) tailOf(style int) (tail, decimals int) {
	return l.shown[style].tail, l.shown[style].decimals
}

func lookStyle(k look) *excelize.Style {
	s := &excelize.Style{Font: font(10, false, ink), Alignment: &excelize.Alignment{Vertical: "top"}}
	switch k {
	case body:
		s.Border, s.Alignment.Horizontal, s.Alignment.Indent = edges(hairline, "bottom"), "left", 1
	case wrapped:
		s.Border, s.Alignment.Horizontal, s.Alignment.Indent, s.Alignment.WrapText = edges(hairline, "bottom"), "left", 1, true
	case strong:
		s.Font, s.Border = font(10, true, ink), edges(hairline, "bottom")
	case countLook:
		s = lookStyle(body)
		s.Font = font(10, true, ink)
	case label:
		s.Alignment.Horizontal, s.Alignment.Indent = "left", 1
	case title:
		s.Font = font(16, true, ink)
	case section:
		s.Font, s.Alignment.Vertical = font(12, true, ink), "bottom"
	case prose:
		s.Font, s.Alignment.WrapText = font(10, false, soft), true
	case heading:
		s.Font, s.Fill, s.Border = font(10, true, ink), filled(band), edges(soft, "bottom")
		s.Alignment = &excelize.Alignment{Horizontal: "left", Indent: 1, Vertical: "center", WrapText: true}
	case numberHeading:
		s = lookStyle(heading)
		s.Alignment.Horizontal, s.Alignment.Indent = "right", 0
	case faint:
		s = lookStyle(body)
		s.Font = font(9, false, soft)
	case faintHeading, faintNumberHeading:
		s = lookStyle(heading)
		if k == faintNumberHeading {
			s = lookStyle(numberHeading)
		}
		s.Font = font(9, false, soft)
	case missing:
		s = lookStyle(strong)
		s.Font, s.Alignment.Horizontal = font(10, true, alarmText), "right"
	case input:
		s.Fill, s.Border = filled(sand), edges(sandEdge, "left", "right", "top", "bottom")
	case alarm:
		s.Font, s.Fill, s.Alignment.WrapText = font(10, true, alarmText), filled(failFill), true
	case link:
		s = lookStyle(body)
		s.Font = font(10, false, linkText)
		s.Font.Underline = "single"
	}
	return s
}

func font(size float64, bold bool, color string) *excelize.Font {
	return &excelize.Font{Family: "Calibri", Size: size, Bold: bold, Color: color}
}

func filled(color string) excelize.Fill {
	return excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{color}}
}

func edges(color string, sides ...string) []excelize.Border {
	var borders []excelize.Border
	for _, side := range sides {
		borders = append(borders, excelize.Border{Type: side, Color: color, Style: 1})
	}
	return borders
}

// decimalsOf counts the decimals that a number format shows.
func decimalsOf(format string) int {
	_, after, _ := strings.Cut(format, ".")
	n := 0
	for n < len(after) && after[n] == '0' {
		n++
	}
	return n
}
