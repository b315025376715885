package quantity

import "strings"

// Origin says where a quantity came from: a name, a text that was typed, or an
// operation over other origins. It is kept only where something with a name is
// involved, so that plain arithmetic costs nothing.
type Origin struct {
	Op     byte // 'N' a name, 'T' a typed text, 'C' a constant, or + - * / ^ n
	Text   string
	Value  float64 // of a constant, in Unit
	Unit   *Unit
	Left   *Origin
	Right  *Origin
	weight int
}

// maxOriginWeight bounds how long an expression is kept; a longer one is
// dropped and the value counts as fixed.
const maxOriginWeight = 60

// Named is the origin of a named value.
func Named(name string) *Origin { return &Origin{Op: 'N', Text: name, weight: 1} }

// Typed is the origin of a value that stands as text in a table.
func Typed(text string) *Origin { return &Origin{Op: 'T', Text: text, weight: 1} }

// TypedText gives the text that was typed, when the quantity is one.
func (q Quantity) TypedText() (string, bool) {
	if q.origin != nil && q.origin.Op == 'T' {
		return q.origin.Text, true
	}
	return "", false
}

// combine makes the origin of an operation; nil when neither side has a name
// behind it.
func combine(op byte, a, b Quantity) *Origin {
	if !a.origin.tracked() && !b.origin.tracked() {
		return nil
	}
	left := a.origin.orConstant(a)
	o := &Origin{Op: op, Left: left, weight: 1 + left.weight}
	if op != 'n' {
		o.Right = b.origin.orConstant(b)
		o.weight += o.Right.weight
	}
	if o.weight > maxOriginWeight {
		return nil
	}
	return o
}

func (o *Origin) tracked() bool { return o != nil && o.Op != 'T' }

func (o *Origin) orConstant(q Quantity) *Origin {
	if o.tracked() {
		return o
	}
	return &Origin{Op: 'C', Value: q.value, Unit: q.unit, weight: 1}
}

// String writes the expression as a person would in a cell.
func (o *Origin) String() string {
	if o == nil {
		return ""
	}
	var b strings.Builder
	o.write(&b, 0)
	return b.String()
}

// binding strengths of the operators, to set brackets only where needed
var strength = map[byte]int{'+': 1, '-': 1, '*': 2, '/': 2, 'n': 3, '^': 4}

func (o *Origin) write(b *strings.Builder, around int) {
	switch o.Op {
	case 'N', 'T':
		b.WriteString(o.Text)
	case 'C':
		if o.Unit == nil {
			b.WriteString(formatExact(o.Value))
		} else {
			b.WriteString(`Q"` + Quantity{value: o.Value, unit: o.Unit}.String() + `"`)
		}
	default:
		o.writeOperation(b, around)
	}
}

// writeOperation sets brackets where the reader of a cell would bind another
// way: powers bind to the right, the rest to the left, and two minus signs
// side by side would begin a comment.
func (o *Origin) writeOperation(b *strings.Builder, around int) {
	own := strength[o.Op]
	if own < around {
		b.WriteByte('(')
		defer b.WriteByte(')')
	}
	left, right := own, own+1
	switch o.Op {
	case 'n':
		b.WriteByte('-')
		o.Left.write(b, own+1)
		return
	case '^':
		left, right = own+1, own
	}
	o.Left.write(b, left)
	b.WriteString(" " + string(rune(o.Op)) + " ")
	o.Right.write(b, right)
}
