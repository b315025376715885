package notebook

import (
	"crypto/sha256"
	"encoding/binary"
	"hash"
	"math"

	"weirbook/notebook/quantity"
)

// Value is what a cell hands to another: nil, bool, float64, string,
// quantity.Quantity, quantity.Date, *Data or Function. All are immutable.
type Value any

// Function stands for a value that is a function or holds one. Functions are no
// data: a cell that assigns them runs in every run that uses them.
type Function struct{}

// Digest is a fingerprint of content.
type Digest [16]byte

// Pair is one entry of a table value.
type Pair struct {
	Key   Value // bool, float64 or string
	Value Value
}

// Data is a table of a cell, or the result of a library function.
type Data struct {
	Of     string // the library function whose result it is, "" for a plain table
	Pairs  []Pair // in the order in which Lua walks them
	Digest Digest
	Size   int // entries of all that is written when the table is written out
	Depth  int // tables inside each other, 1 for one that holds none
}

// NewData makes a table value and its fingerprint.
func NewData(of string, pairs []Pair) *Data {
	d := &Data{Of: of, Pairs: pairs, Depth: 1, Size: len(pairs)}
	h := NewHasher()
	h.Text(of)
	for _, p := range pairs {
		h.Value(p.Key)
		h.Value(p.Value)
		if inner, ok := p.Value.(*Data); ok {
			d.Size, d.Depth = d.Size+inner.Size, max(d.Depth, inner.Depth+1)
		}
	}
	d.Digest = h.Sum()
	return d
}

// Field gives the value under a text key.
func (d *Data) Field(name string) (Value, bool) {
	for _, p := range d.Pairs {
		if p.Key == name {
			return p.Value, true
		}
	}
	return nil, false
}

// Named is a value with its name.
type Named struct {
	Name  string
	Value Value
}

// Hasher makes fingerprints. Every part is written with its kind and length, so
// that no two different contents write the same bytes.
type Hasher struct {
	h       hash.Hash
	scratch []byte
}

// NewHasher gives an empty Hasher.
func NewHasher() *Hasher { return &Hasher{h: sha256.New()} }

func (h *Hasher) flush() {
	h.h.Write(h.scratch)
	h.scratch = h.scratch[:0]
}

// Text adds a text.
func (h *Hasher) Text(s string) {
	h.scratch = binary.AppendUvarint(append(h.scratch, 's'), uint64(len(s)))
	h.scratch = append(h.scratch, s...)
	if len(h.scratch) > 1024 {
		h.flush()
	}
}

// Number adds a number.
func (h *Hasher) Number(f float64) {
	h.scratch = binary.BigEndian.AppendUint64(append(h.scratch, 'n'), math.Float64bits(f))
}

// Digest adds a fingerprint.
func (h *Hasher) Digest(d Digest) { h.scratch = append(append(h.scratch, 'd'), d[:]...) }

// Bool adds a truth value.
func (h *Hasher) Bool(b bool) {
	if b {
		h.scratch = append(h.scratch, 't')
	} else {
		h.scratch = append(h.scratch, 'f')
	}
}

// Quantity adds a quantity with its unit and its origin.
func (h *Hasher) Quantity(q quantity.Quantity) {
	h.scratch = append(h.scratch, 'q')
	h.Number(q.Value())
	h.Text(q.Unit().Symbol())
	h.Text(q.Origin().String())
}

// Value adds a value.
func (h *Hasher) Value(v Value) {
	switch v := v.(type) {
	case nil:
		h.scratch = append(h.scratch, '0')
	case bool:
		h.Bool(v)
	case float64:
		h.Number(v)
	case string:
		h.Text(v)
	case quantity.Quantity:
		h.Quantity(v)
	case quantity.Date:
		h.scratch = append(h.scratch, 'D')
		h.Number(float64(v.Day()))
	case *Data:
		h.Digest(v.Digest)
	case Function:
		h.scratch = append(h.scratch, 'F')
	default:
		panic("notebook: a value of an unknown type")
	}
}

// Sum gives the fingerprint of all that was added.
func (h *Hasher) Sum() Digest {
	h.flush()
	var d Digest
	copy(d[:], h.h.Sum(nil))
	return d
}
