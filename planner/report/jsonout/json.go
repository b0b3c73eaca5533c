// Package jsonout writes a view as JSON. The keys of the view are a contract.
package jsonout

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"reflect"
)

// many is the length from which a list of the view is written entry by entry: the text of
// a long one takes more memory than the view.
const many = 256

// Write writes a view, indented, with full digits.
func Write(w io.Writer, view any) error {
	v := reflect.Indirect(reflect.ValueOf(view))
	if !v.IsValid() || v.Kind() != reflect.Struct || !hasLong(v) {
		return encoder(w, "").Encode(view)
	}
	out := bufio.NewWriter(w)
	before := "{\n"
	for i := range v.NumField() {
		written, err := writeField(out, before, v.Type().Field(i), v.Field(i))
		if err != nil {
			return err
		}
		if written {
			before = ",\n"
		}
	}
	out.WriteString("\n}\n")
	return out.Flush()
}

func encoder(w io.Writer, prefix string) *json.Encoder {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent(prefix, "  ")
	return e
}

// hasLong reports a struct of plain fields, one of which is a long list.
func hasLong(v reflect.Value) bool {
	if reflect.PointerTo(v.Type()).Implements(marshaler) {
		return false
	}
	long := false
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.Anonymous {
			return false
		}
		long = long || f.IsExported() && isLong(v.Field(i))
	}
	return long
}

var marshaler = reflect.TypeFor[json.Marshaler]()

// isLong reports a long list of structs.
func isLong(v reflect.Value) bool {
	return v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct && v.Len() >= many && !v.Type().Implements(marshaler)
}

// writeField writes one field of the view behind what parts it from those before, and
// reports whether there was anything to write. It is written as a struct of this field
// only, so that its tag means what it always does.
func writeField(out *bufio.Writer, before string, f reflect.StructField, v reflect.Value) (bool, error) {
	if !f.IsExported() {
		return false, nil
	}
	list := v
	if isLong(v) {
		v = v.Slice(0, 1)
	}
	one := reflect.New(reflect.StructOf([]reflect.StructField{{Name: f.Name, Type: f.Type, Tag: f.Tag}})).Elem()
	one.Field(0).Set(v)
	var text bytes.Buffer
	if err := encoder(&text, "").Encode(one.Interface()); err != nil {
		return false, err
	}
	inside := bytes.TrimSuffix(bytes.TrimPrefix(text.Bytes(), []byte("{\n")), []byte("\n}\n"))
	if bytes.Equal(inside, []byte("{}\n")) {
		return false, nil
	}
	out.WriteString(before)
	if !isLong(list) {
		_, err := out.Write(inside)
		return true, err
	}
	out.Write(inside[:bytes.IndexByte(inside, '[')+1])
	return true, writeEntries(out, list)
}

// writeEntries writes the entries of a list and what ends it.
func writeEntries(out *bufio.Writer, list reflect.Value) error {
	var text bytes.Buffer
	e := encoder(&text, "    ")
	before := "\n    "
	for i := range list.Len() {
		text.Reset()
		if err := e.Encode(list.Index(i).Addr().Interface()); err != nil {
			return err
		}
		out.WriteString(before)
		if _, err := out.Write(bytes.TrimSuffix(text.Bytes(), []byte("\n"))); err != nil {
			return err
		}
		before = ",\n    "
	}
	_, err := out.WriteString("\n  ]")
	return err
}
