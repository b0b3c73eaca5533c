package schedule

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"blankoff/takeoff"
)

// Published tables read as their authors say that they are: they are put under
// headings of a schedule, two of their columns as tag and note.
func TestPublishedTables(t *testing.T) {
	files, err := filepath.Glob("../../testdata/adversarial/csv-spectrum/*.csv")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d tables (%v)", len(files), err)
	}
	for _, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		said, err := os.ReadFile(strings.TrimSuffix(path, ".csv") + ".json")
		if err != nil {
			t.Fatal(err)
		}
		var want []map[string]string
		if err := json.Unmarshal(said, &want); err != nil { // one row is no list there
			want = make([]map[string]string, 1)
			if err := json.Unmarshal(said, &want[0]); err != nil {
				t.Fatal(err)
			}
		}
		head, body, _ := bytes.Cut(data, []byte("\n"))
		names := strings.Split(strings.TrimSpace(string(head)), ",")
		columns := []takeoff.Column{takeoff.Kind, takeoff.Tag, takeoff.Note, takeoff.PlaceOnSite, takeoff.Drawing}[:len(names)]
		var headings []string
		for _, c := range columns {
			headings = append(headings, c.Heading())
		}
		var rows []takeoff.Row
		_, err = ReadFrom("t.csv", []byte(strings.Join(headings, ",")+"\n"+string(body)), func(r *takeoff.Row) error {
			rows = append(rows, *r)
			return nil
		})
		if err != nil || len(rows) != len(want) {
			t.Errorf("%s: %d rows, want %d (%v)", path, len(rows), len(want), err)
			continue
		}
		if strings.Contains(path, "location") { // holds a character that can't be read, and other data than it says
			if len(rows[0].Faults) != 1 || !strings.Contains(rows[0].Faults[0].Message, "can't be read") {
				t.Errorf("%s: %v", path, rows[0].Faults)
			}
			continue
		}
		for i, w := range want {
			for k, name := range names {
				if got := rows[i].Text[columns[k]]; got != strings.TrimSpace(strings.ReplaceAll(w[strings.Trim(name, `"`)], "\r\n", "\n")) {
					t.Errorf("%s, row %d, %s: %q, want %q", path, i+1, name, got, w[name])
				}
			}
		}
	}
}
