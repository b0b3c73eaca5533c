// Package jsonout writes a view as JSON. The keys of the view are a contract.
package jsonout

import (
	"encoding/json"
	"io"
)

// Write writes a view, indented, with full digits.
func Write(w io.Writer, view any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(view)
}
