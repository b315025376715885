package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"reflect"
	"strings"
	"unicode"

	"weirbook/notebook"
	"weirbook/notebook/diag"
	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// writeJSON prints plan and values with their units. Keys are sorted, so that
// the same notebook gives the same bytes.
func writeJSON(w io.Writer, r *notebook.Result) error {
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	values := map[string]any{}
	for _, v := range r.Values {
		if _, function := v.Value.(notebook.Function); !function {
			values[v.Name] = jsonValue(v.Value)
		}
	}
	return encoder.Encode(map[string]any{
		"notebook": r.Document.File, "title": r.Document.Title, "values": values, "text_values": jsonExpressions(r),
		"cells": jsonCells(r), "plan": jsonPlan(r.Plan), "problems": jsonProblems(r.Problems),
	})
}

// jsonValue shows a value: quantities as value, unit and text.
func jsonValue(v notebook.Value) any {
	switch v := v.(type) {
	case float64:
		return jsonNumber(v)
	case quantity.Quantity:
		return map[string]any{"value": jsonNumber(v.Value()), "unit": v.Unit().Symbol(), "text": v.Short(), "from": v.Origin().String()}
	case quantity.Date:
		return v.String()
	case *notebook.Data:
		return jsonData(v)
	case notebook.Function:
		return "function"
	}
	return v
}

// jsonNumber gives null for what JSON has no number for.
func jsonNumber(f float64) any {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return nil
	}
	return f
}

// jsonData shows a table: a list where its keys are 1, 2, 3 …, else an object.
func jsonData(d *notebook.Data) any {
	var list []any
	object := map[string]any{}
	for i, p := range d.Pairs {
		if p.Key == float64(i+1) {
			list = append(list, jsonValue(p.Value))
		}
		key, ok := p.Key.(string)
		if !ok {
			key = valueText(p.Key)
		}
		object[key] = jsonValue(p.Value)
	}
	if len(list) == len(d.Pairs) && len(list) > 0 {
		return list
	}
	return object
}

func jsonExpressions(r *notebook.Result) []any {
	list := []any{}
	for _, c := range r.Cells {
		if c.Cell.Kind != notebook.Expression {
			continue
		}
		entry := map[string]any{"line": c.Cell.Line(), "expression": c.Cell.Code, "status": string(c.Status)}
		if c.Status == notebook.Done && len(c.Outcome.Values) == 1 {
			entry["value"] = jsonValue(c.Outcome.Values[0].Value)
			entry["text"] = valueText(c.Outcome.Values[0].Value)
		}
		list = append(list, entry)
	}
	return list
}

func jsonCells(r *notebook.Result) []any {
	list := []any{}
	for _, c := range r.Cells {
		if c.Cell.Kind == notebook.Expression {
			continue
		}
		entry := map[string]any{"line": c.Cell.Line(), "title": c.Cell.Title, "status": string(c.Status)}
		if c.Outcome != nil && c.Outcome.Printed != "" {
			entry["printed"] = strings.TrimRight(c.Outcome.Printed, " ")
		}
		if len(c.WaitsFor) > 0 {
			entry["waits_for"] = c.WaitsFor
		}
		list = append(list, entry)
	}
	return list
}

func jsonProblems(problems []diag.Problem) []any {
	list := []any{}
	for _, p := range problems {
		severity := "error"
		if p.Caution {
			severity = "caution"
		}
		entry := map[string]any{"line": p.Pos.Line, "column": p.Pos.Column, "subject": p.Subject, "message": p.Message, "hint": p.Hint, "severity": severity}
		var also []any
		for _, a := range p.Also {
			also = append(also, map[string]any{"line": a.Pos.Line, "text": a.Text})
		}
		if also != nil {
			entry["also"] = also
		}
		list = append(list, entry)
	}
	return list
}

// jsonPlan shows every list of records, field by field.
func jsonPlan(p *plan.Plan) map[string]any {
	out := map[string]any{}
	v := reflect.ValueOf(p).Elem()
	for i := range v.NumField() {
		if v.Field(i).Kind() != reflect.Slice {
			continue // no list of records
		}
		list := []any{}
		for k := range v.Field(i).Len() {
			list = append(list, jsonStruct(v.Field(i).Index(k).Elem()))
		}
		out[snake(v.Type().Field(i).Name)] = list
	}
	return out
}

func jsonStruct(v reflect.Value) map[string]any {
	out := map[string]any{}
	for i := range v.NumField() {
		field := v.Type().Field(i)
		switch x := v.Field(i).Interface().(type) {
		case plan.Source:
			out["line"] = x.Line
			if x.Note != "" {
				out["note"] = x.Note
			}
		case plan.Optional:
			if x.Has {
				out[snake(field.Name)] = jsonValue(x.Q)
			}
		case quantity.Quantity, quantity.Date, float64:
			out[snake(field.Name)] = jsonValue(x)
		case []quantity.Quantity:
			var list []any
			for _, q := range x {
				list = append(list, jsonValue(q))
			}
			out[snake(field.Name)] = list
		case plan.OptionalDate:
			if x.Has {
				out[snake(field.Name)] = x.Date.String()
			}
		case []plan.WaterStep:
			list := []any{}
			for k := range x {
				list = append(list, jsonStruct(reflect.ValueOf(x[k])))
			}
			out[snake(field.Name)] = list
		case int, bool, string, []string, plan.Outcome:
			out[snake(field.Name)] = x
		default:
			panic(fmt.Sprintf("weirbook: no JSON for a %T", x))
		}
	}
	return out
}

// snake turns a field's name into the form of JSON keys.
func snake(name string) string {
	var b strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}
