package jsonout

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"
)

type entry struct {
	Name  string             `json:"name"`
	Notes []string           `json:"notes"`
	Of    map[string]float64 `json:"of,omitempty"`
}

type view struct {
	Title   string  `json:"title"`
	Gone    string  `json:"gone,omitempty"`
	Long    []entry `json:"long"`
	Hidden  []entry `json:"-"`
	Count   int     `json:"count,omitzero"`
	Maybe   []entry `json:"maybe,omitempty"`
	Last    *entry  `json:"last"`
	Numbers []int   `json:"numbers"`
	private int
}

// TestLongLists: a view with long lists is written as the library writes it whole.
func TestLongLists(t *testing.T) {
	for _, n := range []int{0, 1, many - 1, many, 3 * many} {
		v := &view{private: n, Title: "a <b> & [c]", Numbers: []int{1, 2}}
		for i := range n {
			e := entry{Name: fmt.Sprintf("entry [%d] \"q\" \u2028 <i>", i), Notes: []string{"x", "y"}}
			if i%3 == 0 {
				e.Notes, e.Of = nil, map[string]float64{"b": 1.5, "a": 1e-9}
			}
			v.Long, v.Hidden = append(v.Long, e), append(v.Hidden, e)
			if i%2 == 0 {
				v.Maybe = append(v.Maybe, e)
			}
		}
		if n > 1 {
			v.Count, v.Last = n, &v.Long[1]
		}
		var got, want bytes.Buffer
		if err := Write(&got, v); err != nil {
			t.Fatal(err)
		}
		e := json.NewEncoder(&want)
		e.SetEscapeHTML(false)
		e.SetIndent("", "  ")
		if err := e.Encode(v); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got.Bytes(), want.Bytes()) {
			t.Errorf("%d entries: got\n%.600s\nwant\n%.600s", n, got.Bytes(), want.Bytes())
		}
	}
}

// TestFullDisk: what can't be written is an error, with long lists too.
func TestFullDisk(t *testing.T) {
	v := &view{Long: make([]entry, 10*many)}
	for _, room := range []int{0, 100, 5000} {
		if err := Write(&full{room}, v); err == nil {
			t.Errorf("%d bytes of room: no error", room)
		}
	}
}

type full struct{ room int }

func (f *full) Write(b []byte) (int, error) {
	if f.room -= len(b); f.room < 0 {
		return 0, fmt.Errorf("full")
	}
	return len(b), nil
}
