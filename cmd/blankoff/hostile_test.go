//go:build unix

package main

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"
)

// What hostile input may cost. Two seconds are what a reader waits on a machine
// that has nothing else to do; what is held here is the time of its processors,
// which a busy machine doesn't lengthen as much, on both of two.
const (
	patienceHostile = 4 * time.Second
	mostMemory      = 512 << 20
)

// withstands runs the program on what is hostile: it ends by itself within the
// time and the memory, and either refuses (exit 1 with a word of why) or has
// located faults.
func withstands(t *testing.T, dir, what string, stdin io.Reader, args ...string) ran {
	t.Helper()
	r := inChild(t, dir, stdin, nil, args...)
	r.unharmed(t, what)
	if r.spent > patienceHostile || r.most > mostMemory {
		t.Errorf("%s: %v (%v waited) and %d MB", what, r.spent, r.took, r.most>>20)
	}
	if (r.code == exitFailed || r.code == exitMisuse) && strings.TrimSpace(r.stderr) == "" {
		t.Errorf("%s: exit %d and not a word", what, r.code)
	}
	if strings.ContainsAny(r.stdout+r.stderr, "\x00\x07\x1b\x7f\u202e\u2066") {
		t.Errorf("%s: what is said would steer a terminal: %.300q", what, r.stderr)
	}
	t.Logf("%s: exit %d, %d ms, %d MB: %.150s", what, r.code, r.took.Milliseconds(), r.most>>20, r.stderr)
	return r
}

// book makes a workbook from its parts; those of a plain one are filled in, and
// an empty one is left out. A part may be long: it is written by a function.
func book(t *testing.T, parts map[string]func(w io.Writer)) []byte {
	t.Helper()
	f := excelize.NewFile()
	for i, cell := range []string{"tag", "kind", "diameter_mm", "length_mm"} {
		for row, text := range []string{cell, []string{"A", "straight", "200", "3000"}[i]} {
			at, _ := excelize.CoordinatesToCellName(i+1, row+1)
			if err := f.SetCellValue("Sheet1", at, text); err != nil {
				t.Fatal(err)
			}
		}
	}
	var plain, b bytes.Buffer
	if err := f.Write(&plain); err != nil {
		t.Fatal(err)
	}
	zr, err := zip.NewReader(bytes.NewReader(plain.Bytes()), int64(plain.Len()))
	if err != nil {
		t.Fatal(err)
	}
	zw := zip.NewWriter(&b)
	for _, p := range zr.File {
		if _, given := parts[p.Name]; given {
			continue
		}
		if err := zw.Copy(p); err != nil {
			t.Fatal(err)
		}
	}
	for name, write := range parts {
		if write == nil {
			continue
		}
		w, err := zw.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		write(w)
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// repeated writes text between two others n times.
func repeated(before, text string, n int, after string) func(io.Writer) {
	return func(w io.Writer) {
		io.WriteString(w, before)
		many := 1 + 60_000/max(1, len(text))
		block := []byte(strings.Repeat(text, many))
		for ; n >= many; n -= many {
			w.Write(block)
		}
		io.WriteString(w, strings.Repeat(text, n)+after)
	}
}

func plainly(text string) func(io.Writer) { return repeated(text, "", 0, "") }

const (
	sheetPart   = "xl/worksheets/sheet1.xml"
	stringsPart = "xl/sharedStrings.xml"
	sheetOpen   = `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`
	sheetShut   = `</sheetData></worksheet>`
	headRow     = `<row r="1"><c r="A1" t="inlineStr"><is><t>kind</t></is></c><c r="B1" t="inlineStr"><is><t>diameter_mm</t></is></c><c r="C1" t="inlineStr"><is><t>length_mm</t></is></c></row>`
	sstOpen     = `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">`
)

// TestHostileWorkbooks reads workbooks that are made to do harm.
func TestHostileWorkbooks(t *testing.T) {
	sheet := func(write func(io.Writer)) map[string]func(io.Writer) {
		return map[string]func(io.Writer){sheetPart: write}
	}
	inner := book(t, nil)
	for _, c := range []struct {
		name  string
		about string // in what is said
		parts map[string]func(io.Writer)
	}{
		{"a sheet of 300 MB of spaces", "unpacks to far more", sheet(repeated(sheetOpen, " ", 300<<20, sheetShut))},
		{"150 MB of spaces among rows", "larger than its filled rows", sheet(repeated(sheetOpen+headRow, " <!-- nothing, and nothing else either; it goes on and on. "+strings.Repeat("0123456789", 30)+" -->", 500_000, sheetShut))},
		{"empty rows without end", "1048576 rows", sheet(repeated(sheetOpen+headRow, "<row/>", 2_500_000, sheetShut))},
		{"cells without end that say nothing", "columns", sheet(repeated(sheetOpen+headRow+"<row>", "<c/>", 4_000_000, sheetShut))},
		{"a long text on many rows", "too long for a", map[string]func(io.Writer){stringsPart: plainly(sstOpen + "<si><t>" + strings.Repeat("x", 32_000) + "</t></si></sst>"),
			"xl/worksheets/sheet1.xml": repeated(sheetOpen+headRow, `<row><c t="s"><v>0</v></c><c t="s"><v>0</v></c><c t="s"><v>0</v></c></row>`, 10_000, sheetShut)}},
		{"the last column on many rows", "", sheet(repeated(sheetOpen+headRow, `<row><c t="inlineStr"><is><t>A</t></is></c><c r="XFD3"><v>1</v></c></row>`, 100_000, sheetShut))},
		{"many lists of hidden columns", "", sheet(repeated(`<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><cols>`, `<col min="1" max="16384" hidden="1"/>`, 200_000, "</cols><sheetData>"+headRow+sheetShut))},
		{"another workbook inside", "", map[string]func(io.Writer){"xl/embeddings/book.xlsx": plainly(string(inner)), "xl/worksheets/sheet2.xml": plainly(string(inner))}},
		{"a zip in the sheet's place", "damaged", sheet(plainly(string(inner)))},
		{"a million columns", "unpacks to far more", sheet(repeated(sheetOpen+`<row r="1">`, `<c t="inlineStr"><is><t>kind</t></is></c>`, 1_000_000, "</row>"+sheetShut))},
		{"a million columns under headings", "columns", sheet(repeated(sheetOpen+headRow+`<row r="2">`, `<c><v>1</v></c>`, 1_000_000, "</row>"+sheetShut))},
		{"a cell said to lie in column ZZZZZZ", "", sheet(plainly(sheetOpen + headRow + `<row r="2"><c r="ZZZZZZ2"><v>1</v></c></row>` + sheetShut))},
		{"ten million shared texts", "unpacks to far more", map[string]func(io.Writer){stringsPart: repeated(sstOpen, "<si><t>a</t></si>", 10_000_000, "</sst>")}},
		{"a million shared texts that pack badly", "texts", map[string]func(io.Writer){stringsPart: func(w io.Writer) {
			io.WriteString(w, sstOpen)
			for i := range 1_000_000 {
				fmt.Fprintf(w, "<si><t>%x</t></si>", uint32(i)*2654435761)
			}
			io.WriteString(w, "</sst>")
		}}},
		{"a shared text of 1 GB", "unpacks to far more", map[string]func(io.Writer){stringsPart: repeated(sstOpen+"<si><t>", "a", 1<<30, "</t></si></sst>")}},
		{"a shared text of 15 MB", "text of more than", map[string]func(io.Writer){stringsPart: repeated(sstOpen+"<si><t>", "a", 15<<20, "</t></si></sst>")}},
		{"a shared text of 15 MB in parts", "", map[string]func(io.Writer){stringsPart: repeated(sstOpen+"<si>", "<r><t>"+strings.Repeat("a", 1000)+"</t></r>", 15<<10, "</si></sst>")}},
		{"an attribute of 15 MB", "text of more than", sheet(repeated(sheetOpen+`<row r="`, "1", 15<<20, `"></row>`+sheetShut))},
		{"five million elements deep", "deep", sheet(repeated(sheetOpen+headRow+"<row><c>", "<a>", 5_000_000, ""))},
		{"five million elements deep, with > in values", "deep", sheet(repeated(sheetOpen+headRow+"<row><c>", `<a b="/>">`, 1_500_000, ""))},
		{"a list of sheets that is deep", "deep", map[string]func(io.Writer){"xl/workbook.xml": repeated("<workbook>", "<a>", 1_000_000, "")}},
		{"styles that are deep", "deep", map[string]func(io.Writer){"xl/styles.xml": repeated("<styleSheet>", "<a>", 5_000_000, "")}},
		{"many sheets", "sheets", map[string]func(io.Writer){"xl/workbook.xml": repeated("<workbook><sheets>", `<sheet name="a"/>`, 200_000, "</sheets></workbook>")}},
		{"half a million styles", "", map[string]func(io.Writer){"xl/styles.xml": repeated("<styleSheet><cellXfs>", `<xf/>`, 500_000, "</cellXfs></styleSheet>")}},
		{"entities that grow", "damaged", sheet(plainly(`<!DOCTYPE x [<!ENTITY a "lol"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;">]>` + sheetOpen + headRow + `<row r="2"><c t="inlineStr"><is><t>&c;</t></is></c></row>` + sheetShut))},
		{"an entity that reads a file", "damaged", sheet(plainly(`<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>` + sheetOpen + headRow + `<row r="2"><c t="inlineStr"><is><t>&a;</t></is></c></row>` + sheetShut))},
		{"a sheet that lies elsewhere", "missing", map[string]func(io.Writer){"xl/_rels/workbook.xml.rels": plainly(`<Relationships><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="http://127.0.0.1:9/sheet.xml" TargetMode="External"/></Relationships>`)}},
		{"a sheet that lies above", "missing", map[string]func(io.Writer){"xl/_rels/workbook.xml.rels": plainly(`<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="../../../../../../etc/passwd"/></Relationships>`)}},
		{"parts named ../", "", map[string]func(io.Writer){"../../evil.xml": plainly("x"), "/etc/passwd": plainly("x"), `..\..\evil`: plainly("x"), "xl/\x00\x1b[31m\u202e": plainly("x")}},
		{"relationships in a ring", "", map[string]func(io.Writer){"xl/_rels/workbook.xml.rels": plainly(`<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="workbook.xml"/></Relationships>`), "xl/_rels/sheet1.xml.rels": plainly(`<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="workbook.xml"/></Relationships>`)}},
		{"no list of types", "", map[string]func(io.Writer){"[Content_Types].xml": nil}},
		{"wrong types", "", map[string]func(io.Writer){"[Content_Types].xml": plainly(`<Types><Default Extension="xml" ContentType="image/png"/></Types>`)}},
		{"no sheet", "missing", sheet(nil)},
		{"no relationships", "", map[string]func(io.Writer){"_rels/.rels": nil, "xl/_rels/workbook.xml.rels": nil}},
		{"an absurd dimension", "", sheet(plainly(strings.Replace(sheetOpen, "<sheetData>", `<dimension ref="A1:XFD9999999999"/><sheetData>`, 1) + headRow + `<row r="2"><c r="A2" t="inlineStr"><is><t>straight</t></is></c><c r="B2"><v>200</v></c><c r="C2"><v>3000</v></c></row>` + sheetShut))},
		{"cells out of order", "too late", sheet(plainly(sheetOpen + headRow + `<row r="2"><c r="C2"><v>1</v></c><c r="B2"><v>1</v></c></row>` + sheetShut))},
		{"a cell twice", "twice", sheet(plainly(sheetOpen + headRow + `<row r="2"><c r="B2"><v>1</v></c><c r="B2"><v>2</v></c></row>` + sheetShut))},
		{"row 1000000000", "damaged", sheet(plainly(sheetOpen + headRow + `<row r="1000000000"><c><v>1</v></c></row>` + sheetShut))},
		{"row -1", "damaged", sheet(plainly(sheetOpen + headRow + `<row r="-1"><c><v>1</v></c></row>` + sheetShut))},
		{"shared text number 10^18", "damaged", sheet(plainly(sheetOpen + headRow + `<row r="2"><c t="s"><v>1000000000000000000</v></c></row>` + sheetShut))},
		{"numbers beyond all", "", sheet(plainly(sheetOpen + headRow + `<row r="2"><c t="inlineStr"><is><t>straight</t></is></c><c><v>1e308</v></c><c><v>1e999</v></c></row><row r="3"><c s="99999999999999999999" t="inlineStr"><is><t>straight</t></is></c><c><v>NaN</v></c><c><v>-Inf</v></c></row>` + sheetShut))},
		{"a name that steers a terminal", "", map[string]func(io.Writer){"xl/workbook.xml": plainly(`<workbook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="a&#x202e;b&#x9;&#x7f;` + strings.Repeat("long", 10_000) + `" r:id="rId1"/></sheets></workbook>`)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := site(t, map[string]string{"hostile.xlsx": string(book(t, c.parts))})
			r := withstands(t, dir, c.name, nil, "takeoff", "hostile.xlsx")
			if !strings.Contains(r.stderr, c.about) {
				t.Errorf("said %.300q, want a word of %q", r.stderr, c.about)
			}
			if c.about != "" && r.code != exitFailed {
				t.Errorf("exit %d", r.code)
			}
			if got := names(t, dir); got != "hostile.xlsx rig.toml" {
				t.Errorf("it left %s", got)
			}
		})
	}
}

// TestOtherFiles reads what isn't a workbook but is named so.
func TestOtherFiles(t *testing.T) {
	lying := book(t, nil)
	copy(lying[bytes.Index(lying, []byte("PK\x01\x02"))+24:], []byte{1, 0, 0, 0}) // its first part is said to be 1 byte long
	many := func() []byte {
		var b bytes.Buffer
		zw := zip.NewWriter(&b)
		for i := range 200_000 {
			if _, err := zw.Create(fmt.Sprint(i)); err != nil {
				t.Fatal(err)
			}
		}
		zw.Close()
		return b.Bytes()
	}()
	twice := func() []byte {
		var b bytes.Buffer
		zw := zip.NewWriter(&b)
		for range 2 {
			if _, err := zw.Create(sheetPart); err != nil {
				t.Fatal(err)
			}
		}
		zw.Close()
		return b.Bytes()
	}()
	for name, data := range map[string][]byte{
		"a password": append([]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"), make([]byte, 4096)...), "a page": []byte("<!DOCTYPE html><html><script>alert(1)</script></html>"),
		"a CSV": []byte("tag,kind,diameter_mm,length_mm\nA,straight,200,x\n"), "a zip cut short": book(t, nil)[:900], "a zip of 200,000 parts": many, "a part twice": twice,
		"a part that is longer than said": lying, "nothing": nil, "one byte": {'P'}, "only a head": []byte("PK\x03\x04"), "an end of a zip alone": []byte("PK\x05\x06" + strings.Repeat("\x00", 18)),
	} {
		dir := site(t, map[string]string{"hostile.xlsx": string(data)})
		if r := withstands(t, dir, name, nil, "takeoff", "hostile.xlsx"); r.code == exitDone {
			t.Errorf("%s is taken for a schedule", name)
		}
	}
}

// endless gives a text, then another for ever or n bytes long.
type endless struct {
	head, body string
	left       int64
	at         int
}

func (e *endless) Read(b []byte) (int, error) {
	if e.head != "" {
		n := copy(b, e.head)
		e.head = e.head[n:]
		return n, nil
	}
	if e.left <= 0 {
		return 0, io.EOF
	}
	for i := range b {
		b[i] = e.body[e.at%len(e.body)]
		e.at++
	}
	e.left -= int64(len(b))
	return len(b), nil
}

// TestHostileText reads texts that are made to do harm, from a pipe: 2 GB in one
// line, and the like.
func TestHostileText(t *testing.T) {
	const head = "tag,kind,diameter_mm,length_mm\n"
	const many = 2 << 30
	for _, c := range []struct {
		name       string
		head, body string
		left       int64
	}{
		{"2 GB without a line", "", "0123456789", many}, {"2 GB in a cell", head + "A,straight,", "9", many}, {"2 GB in quotes", head + `A,straight,"`, "9\n", many},
		{"2 GB of NUL", "", "\x00", many}, {"2 GB of lines", "", "\n", many}, {"2 GB of commas", head, ",", many}, {"2 GB of quotes", head, `"`, many}, {"2 GB of headings", "", head, many},
		{"24 MB in quotes", head + `A,straight,"`, "9\n", 24 << 20}, {"24 MB without a line", "", "x", 24 << 20}, {"24 MB of lines", head, "\n", 24 << 20}, {"24 MB of blank rows", head, ",,,\n", 24 << 20}, {"24 MB of refused rows", head, "A,straight,x,y\n", 24 << 20},
		{"24 MB of refused rows with all columns", "tag,kind,width_mm,height_mm,diameter_mm,length_mm,angle_deg,radius_mm,width2_mm,height2_mm,offset_mm,test_pa,design_pa,quantity\n", "x,x,x,x,x,x,x,x,x,x,x,x,x,x\n", 24 << 20},
		{"24 MB of Windows-1252", head, "\xe9\xe8\x80\x80\x80\x80\n", 24 << 20}, {"24 MB of broken UTF-8", head, "é\xe9éé\n", 24 << 20}, {"24 MB of UTF-16", "\xff\xfet\x00a\x00g\x00,\x00k\x00i\x00n\x00d\x00\n\x00", "\x01\x30", 24 << 20},
		{"24 MB of headings", "", head, 24 << 20}, {"24 MB of carriage returns", head, "A,straight,200,3000\r", 24 << 20}, {"rows of 900 kB", "", strings.Repeat("kind,", 180_000) + "\n", 24 << 20},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := site(t, map[string]string{})
			if err := syscall.Mkfifo("hostile.csv", 0o600); err != nil {
				t.Fatal(err)
			}
			go func() {
				if f, err := os.OpenFile(filepath.Join(dir, "hostile.csv"), os.O_WRONLY, 0); err == nil {
					_, _ = io.CopyBuffer(f, &endless{c.head, c.body, c.left, 0}, make([]byte, 1<<20))
					f.Close()
				}
			}()
			if r := withstands(t, dir, c.name, nil, "takeoff", "hostile.csv"); r.code != exitFailed {
				t.Errorf("exit %d", r.code)
			}
		})
	}
	figured := func(format string, n int) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(strings.ReplaceAll(format, "#", strconv.Itoa(i)))
		}
		return b.String()
	}
	for name, text := range map[string]string{
		"kinds with figures": head + figured("A#,duct 1 x # dia 2 to 3 Ø x #,200,3000\n", 60_000), "rows of one cell": head + strings.Repeat("Something strange here\n", 100_000),
		"names of groups": head + strings.Repeat("FITTINGS\n", 100_000), "lines with colons": head + figured("Foo #: bar\n", 100_000), "long remarks": "tag,kind,size,length_mm,note\n" + strings.Repeat("A,duct,600x400,3000,"+strings.Repeat("typ 1 deleted qty x ", 1_500)+"\n", 300),
		"a million columns": head + "A,straight,200,3000" + strings.Repeat(",x", 1_000_000) + "\n", "a million headings": strings.Repeat("kind,", 1_000_000) + "\n", "lone quotes": head + "A\",\"straight,2\"00,3000\"\n\"\nB,straight,200,3000\n",
		"mixed lines": head + "A,straight,200,3000\rB,straight,200,3000\r\nC,straight,200,3000\n\rD,straight,200,x\n", "marks": head + "A\u202eB,straight,200,3000\n\u2066x\u2069,straight,200,y\nC\x1b[2J,straight,\x07,3000\n", "bytes": head + "\xff\xfe,straight,200,x\n",
		"NUL": head + "A\x00B,straight,200,3000\n", "one long word": head + strings.Repeat("A", 30_000) + ",straight,200,3000\nB," + strings.Repeat("x", 32_000) + ",200,3000\n",
	} {
		dir := site(t, map[string]string{"hostile.csv": text})
		for _, line := range []string{"takeoff hostile.csv", "plan hostile.csv --rig rig.toml --class B --test-pressure 400"} {
			withstands(t, dir, name+": "+line, nil, strings.Fields(line)...)
		}
	}
}

// TestHostileSettings reads settings, cuts and earlier plans that are made to do
// harm.
func TestHostileSettings(t *testing.T) {
	dir := site(t, map[string]string{"good.csv": goodSchedule})
	good := "plan good.csv --rig rig.toml"
	for _, c := range []struct {
		name, line string
		data       func(io.Writer)
	}{
		{"endless rig", "plan good.csv --rig x", repeated("", "#\n", 100<<20, "")}, {"lists in lists", "plan good.csv --rig x", repeated("a = ", "[", 200_000, "")}, {"tables in tables", "plan good.csv --rig x", repeated("a = ", "{a=", 60_000, "")},
		{"points in a key", "plan good.csv --rig x", repeated("a", ".a", 100_000, "=1")}, {"points in a heading", "plan good.csv --rig x", repeated("[a", ".a", 100_000, "]")}, {"points apart", "plan good.csv --rig x", repeated("[a", " . a", 60_000, "]")},
		{"quoted points", "plan good.csv --rig x", repeated("[a", ".\"a\"", 50_000, "]")}, {"a long name", "plan good.csv --rig x", repeated(`name = "`, "x", 200_000, "\"\n[[range]]\nmin_l_s = 1\nmax_l_s = 100\n")}, {"many keys", good + " --job x", func(w io.Writer) {
			for i := range 30_000 {
				fmt.Fprintf(w, "k%d=1\n", i)
			}
		}},
		{"a scheme", good + " --scheme x", repeated("", "[[class]]\n", 25_000, "")}, {"a basis", "takeoff good.csv --basis x", repeated("", "[[switch]]\n", 23_000, "")}, {"a regime", good + " --regime x", repeated("", "[", 200_000, "")},
		{"a register", good + " --job x", repeated("[register]\n", "", 0, strings.Repeat("x", 200_000)+"='y'\n")}, {"a plan that is deep", good + " --keep x", repeated(`{"sections":`, "[", 20_000_000, "")}, {"a plan of blanks", good + " --keep x", repeated(`{"cuts":[`, "{},", 20_000_000, "{}]}")},
		{"a plan of pieces", good + " --keep x", repeated(`{"sections":[{"id":"S1","pieces":[`, "{},", 900_000, "{}]}]}")}, {"a plan without end", good + " --keep x", repeated(`{"sections":"`, "x", 200<<20, "")}, {"cuts without end", good + " --cuts x", repeated("tag,piece,next_tag,next_piece\n", "A,1,B,1\n", 10_000_000, "")},
		{"many cuts", good + " --cuts x", repeated("tag,piece,next_tag,next_piece\n", "A,x,B,y\n", 240_000, "")}, {"a long cut", good + " --cuts x", repeated("tag,piece,next_tag,next_piece\n\"", "A,x,B,y\n", 400_000, "")},
		{"numbers in a plan", good + " --keep x", plainly(`{"sections":[{"id":"S1","area_m2":1e308,"limit_l_s":-1e308,"status":"passed","pieces":[{"tag":"A","from_piece":-9223372036854775808,"to_piece":9223372036854775807,"of":9223372036854775807,"own_area_m2":1e308}]}]}`)},
		{"pieces in a plan", good + " --keep x", plainly(`{"sections":[{"id":"S99999999999999999999","status":"agreed","pieces":[{"tag":"A","from_piece":5,"to_piece":1,"of":3},{"tag":"A","from_piece":1,"to_piece":2000000000,"of":2000000000}]}]}`)},
	} {
		f, err := os.Create("x")
		if err != nil {
			t.Fatal(err)
		}
		c.data(f)
		f.Close()
		withstands(t, dir, c.name, nil, strings.Fields(c.line)...)
	}
}

// TestAbsurdSizes plans pieces of sizes and numbers that nobody can mean.
func TestAbsurdSizes(t *testing.T) {
	const head = "tag,kind,shape,quantity,width_mm,height_mm,diameter_mm,length_mm,angle_deg,radius_mm,gores,branch_diameter_mm,branch_length_mm,from,at_mm\n"
	spigots := func(n int) string {
		var b strings.Builder
		b.WriteString("M,straight,,1,900,600,,1500000,,,,,,,\n")
		for i := range n {
			fmt.Fprintf(&b, "S%d,spigot,,1,,,,,,,,100,200,M,%d\n", i, 1+i%1_499_000)
		}
		return b.String()
	}
	for _, c := range []struct{ name, rows, flags string }{
		{"quantity 10^9", "A,straight,,1000000000,600,400,,1000,,,,,,,\n", ""}, {"quantity 10000 of 10 km", "A,straight,,10000,600,400,,10000000,,,,,,,\n", ""}, {"length 10^12 mm in pieces of 1 mm", "A,straight,,1,600,400,,1000000000000,,,,,,,\n", "--piece-length 0.001"},
		{"10 km in pieces of 10 mm", "A,straight,,10000,600,400,,10000000,,,,,,,\n", "--piece-length 0.01"}, {"10 km in pieces of 0.1 m, many times", strings.Repeat("A,straight,,10000,600,400,,10000000,,,,,,,\n", 1) + "B,straight,,10000,600,400,,10000000,,,,,,A,\nC,straight,,10000,600,400,,10000000,,,,,,B,\n", "--piece-length 0.1"},
		{"pieces of 1e-300 m", "A,straight,,1,600,400,,1000,,,,,,,\n", "--piece-length 1e-300"}, {"width 1e308", "A,straight,,1,1e308,400,,1000,,,,,,,\n", ""}, {"width 1e-308", "A,straight,,1,1e-308,1e-308,,1000,,,,,,,\n", ""}, {"diameter 1e-5 mm", "A,straight,,1,,,0.00001,0.00001,,,,,,,\n", ""},
		{"an angle of a million degrees", "A,bend,,1,,,200,,1000000,300,,,,,\n", ""}, {"an angle of 1e-300 degrees", "A,bend,,1,,,200,,1e-300,300,,,,,\n", ""}, {"a radius of 1e300", "A,bend,,1,,,200,,90,1e300,,,,,\n", ""}, {"10^9 gores", "A,gored bend,,1,,,200,,90,300,1000000000,,,,\n", ""},
		{"100,000 spigots on one straight", spigots(100_000), ""},
		{"120,000 rows in one chain", chain(120_000), ""}, {"many fittings side by side", strings.Repeat("A,cap,,10000,,,200,,,,,,,,\n", 1), ""},
	} {
		dir := site(t, map[string]string{"absurd.csv": head + c.rows})
		for _, line := range []string{"takeoff absurd.csv --totals ", "plan absurd.csv --rig rig.toml --class B --test-pressure 400 --format json "} {
			r := withstands(t, dir, c.name+": "+line, nil, strings.Fields(line+c.flags)...)
			if r.code == exitDone && strings.HasPrefix(r.stdout, "{") && !json.Valid([]byte(r.stdout)) {
				t.Errorf("%s: no JSON", c.name)
			}
		}
	}
}

// chain is n straights, each on the one before.
func chain(n int) string {
	var b strings.Builder
	for i := range n {
		from := ""
		if i > 0 {
			from = fmt.Sprintf("P%d", i-1)
		}
		fmt.Fprintf(&b, "P%d,straight,,1,,,200,3000,,,,,,%s,\n", i, from)
	}
	return b.String()
}
