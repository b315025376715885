package lualib

import (
	"reflect"

	"weirbook/notebook"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

var (
	typeQuantity = reflect.TypeFor[quantity.Quantity]()
	typeDate     = reflect.TypeFor[quantity.Date]()
	typeSource   = reflect.TypeFor[plan.Source]()
)

// writeRecord adds all of a record but its place to a fingerprint.
func writeRecord(h *notebook.Hasher, r plan.Record) {
	h.Text(string(r.Kind()))
	writeReflected(h, reflect.ValueOf(r).Elem())
}

func writeReflected(h *notebook.Hasher, v reflect.Value) {
	switch v.Type() {
	case typeQuantity:
		h.Quantity(v.Interface().(quantity.Quantity))
		return
	case typeDate:
		h.Value(v.Interface().(quantity.Date))
		return
	case typeSource:
		h.Text(v.Interface().(plan.Source).Note)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			writeReflected(h, v.Field(i))
		}
	case reflect.Slice:
		h.Number(float64(v.Len()))
		for i := range v.Len() {
			writeReflected(h, v.Index(i))
		}
	case reflect.String:
		h.Text(v.String())
	case reflect.Bool:
		h.Bool(v.Bool())
	case reflect.Int, reflect.Int64, reflect.Int8:
		h.Number(float64(v.Int()))
	case reflect.Float64:
		h.Number(v.Float())
	default:
		panic("lualib: a record holds a " + v.Kind().String())
	}
}
