package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// hostile are texts that a schedule may bring and that must stay texts.
var hostile = []string{
	`</script><script>window.bad=1</script>`, `<img src=x onerror="window.bad=1">`, `"><svg onload=window.bad=1>`, `' onmouseover='window.bad=1`,
	`{{.Plan}}`, `${window.bad=1}`, "a\u2028b", "<!--", "]]>", "=1+1", "@SUM(A1)", "+1", "-1", "javascript:window.bad=1", "&lt;b&gt;", "a\u202eb", `\u003cscript\u003e`, `a"b,c`,
}

// hostileSite is a schedule that has them in every text.
func hostileSite(t *testing.T) {
	t.Helper()
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	_ = w.Write([]string{"tag", "system", "level", "place", "drawing", "kind", "shape", "diameter_mm", "length_mm", "from", "class", "test_pa", "note", "group"})
	from := ""
	for _, x := range hostile {
		_ = w.Write([]string{x, "S " + hostile[0], x, x, x, "straight", "circular", "630", "30000", from, "B", "400", x, ""})
		from = x
	}
	w.Flush()
	site(t, map[string]string{"site.csv": b.String(), "job.toml": `project = '''</title><script>window.bad=1</script>'''
client = "<b>bold</b>"
`})
}

// TestHostilePage writes a page of hostile texts: none of them is markup.
func TestHostilePage(t *testing.T) {
	hostileSite(t)
	dir := packOf(t, "plan site.csv --rig rig.toml --job job.toml")
	page, err := os.ReadFile(filepath.Join(dir, "plan.html"))
	if err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(page, []byte("<script")); n != 2 {
		t.Errorf("%d scripts in the page, want its data and its own", n)
	}
	data := regexp.MustCompile(`(?s)<script type="application/json" id="data">.*?</script>`) // holds tags as they are, as text
	page = data.ReplaceAll(page, nil)
	for _, bad := range []string{"<img", "<b>bold", "<svg onload", "onerror=\"window", "' onmouseover='window", "\u202e"} {
		if bytes.Contains(page, []byte(bad)) {
			i := bytes.Index(page, []byte(bad))
			t.Errorf("the page holds %q in %q", bad, page[max(0, i-80):i+60])
		}
	}
	loads := regexp.MustCompile(`(?i)(src|href)\s*=\s*"([^"#][^"]*)"|[:\s]url\(|@import|https?://`)
	for _, m := range loads.FindAllString(string(page), -1) {
		if !strings.Contains(m, "http://www.w3.org/2000/svg") && m != "http://" {
			t.Errorf("the page would load %s", m)
		}
	}
}

// TestHostilePageInBrowser opens it: nothing of it runs, tags are shown as they
// are, and the cuts that it saves read back.
func TestHostilePageInBrowser(t *testing.T) {
	need(t, "chromium", "chromium-browser", "google-chrome")
	hostileSite(t)
	line := "plan site.csv --rig rig.toml --job job.toml"
	o := open(t, filepath.Join(packOf(t, line), "plan.html"))
	var bad bool
	var text string
	o.eval(t, "window.bad !== undefined", &bad)
	o.eval(t, "document.getElementById('sections').textContent + document.getElementById('cards').textContent", &text)
	if bad {
		t.Error("a text of the schedule ran as script")
	}
	for _, x := range []string{hostile[0], hostile[4], "&lt;b&gt;"} {
		if !strings.Contains(text, x) {
			t.Errorf("%q isn't shown as it is", x)
		}
	}
	var free []int
	o.eval(t, "blankoff.data.joints.map((j, k) => [j, k]).filter(([j]) => !j.bar && !j.fix && !j.cut && j.at.startsWith('between')).map(([, k]) => k)", &free)
	for _, k := range free {
		o.eval(t, fmt.Sprintf("(blankoff.toggle(%d), 0)", k), new(int))
	}
	sameAsPlanned(t, o, line)
	if len(o.complain) > 0 {
		t.Errorf("the page complains: %s", o.complain)
	}
}
