package schedule

import (
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/bases"
	"blankoff/takeoff/schedule/source"
)

// oneByOne reads a schedule by Read and Add, row after row.
func oneByOne(name string, data []byte, o takeoff.Options) (*takeoff.Takeoff, Info, error) {
	t := takeoff.New(o)
	info, err := ReadFrom(name, data, func(r *takeoff.Row) error { t.Add(r); return t.Hopeless() })
	if err == nil {
		err = t.Gather()
	}
	t.Finish(info.Schedule, info.Faults, info.Notes)
	return t, info, err
}

// sameBothWays reads a schedule in chunks of several sizes, from memory and from
// the file, with items and for totals only, and holds all that is found against
// the reading row by row.
func sameBothWays(t *testing.T, name string, data []byte) {
	t.Helper()
	defer func(size int, from int64) { source.ChunkSize, source.SurveyFrom = size, from }(source.ChunkSize, source.SurveyFrom)
	source.SurveyFrom = 0
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	largeEnd, err := bases.Lookup("large-end")
	if err != nil {
		t.Fatal(err)
	}
	options, sizes := []takeoff.Options{{}, {Sheet: 0.0008}, {Basis: largeEnd}}, []int{1, 150, 2000, 1 << 18}
	if len(data) > 1<<18 || testing.Short() { // the race detector makes it slow, and needs no more
		options, sizes = options[:1], sizes[2:]
	}
	for _, o := range options {
		want, wantInfo, wantErr := oneByOne(name, data, o)
		for _, source.ChunkSize = range sizes {
			for k := range 4 {
				o.TotalsOnly = k%2 == 1
				got, where := takeoff.New(o), fmt.Sprintf("%s in chunks of %d, totals only %v, left in the file %v", name, source.ChunkSize, o.TotalsOnly, k > 1)
				var info Info
				if k > 1 {
					info, err = Options{}.Into(path, got, nil)
				} else {
					info, err = Options{}.IntoFrom(name, data, got, nil)
				}
				same(t, where+": error", fmt.Sprint(err), fmt.Sprint(wantErr))
				if err != nil {
					continue
				}
				got.Finish(info.Schedule, info.Faults, info.Notes)
				same(t, where+": what was found", info, wantInfo)
				same(t, where+": balance", got.Schedule, want.Schedule)
				same(t, where+": faults", got.Faults, want.Faults)
				same(t, where+": rows refused", got.Refused, want.Refused)
				same(t, where+": notes", got.Notes, want.Notes)
				same(t, where+": totals", got.Totals, want.Totals)
				if !o.TotalsOnly {
					same(t, where+": items", got.Items, want.Items)
				} else if len(got.Items) > 0 {
					t.Errorf("%s: items are kept", where)
				}
			}
		}
	}
}

func same(t *testing.T, what string, got, want any) {
	t.Helper()
	if g, w := reflect.ValueOf(got), reflect.ValueOf(want); w.Kind() == reflect.Slice && g.Len() == 0 && w.Len() == 0 {
		return
	}
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("%s\n got %+v\nwant %+v", what, got, want)
	}
}

// TestIntoIsReadAndAdd: reading in chunks on all cores, and keeping lines instead
// of items, changes nothing of what is found.
func TestIntoIsReadAndAdd(t *testing.T) {
	for _, pattern := range []string{"../../testdata/schedules/*.csv", "../../testdata/schedules/ugly/*.*sv", "../../testdata/schedules/ugly/*.txt", "../../examples/*/*.csv"} {
		paths, err := filepath.Glob(pattern)
		if err != nil || len(paths) == 0 {
			t.Fatalf("%s: %v", pattern, err)
		}
		for i, path := range paths {
			if testing.Short() && i%4 > 0 { // the race detector is slow, and the full test runs beside it
				continue
			}
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			sameBothWays(t, filepath.Base(path), data)
		}
	}
	sameBothWays(t, "large.csv", twentyColumns(3000))
	for name, text := range map[string]string{
		"line ends":      "tag,kind,w,h,l\r\na,straight,300,200,1000\r\n\r\n\nb,straight,300,200,1000\r\r\nc,straight,300,200,1000\r",
		"headings again": "tag,kind,w,h,l\na,straight,300,200,1000\ntag,kind,w,h,l\nb,straight,300,200,1000\ntag,kind,diameter,length (m)\nmm,,mm,m\nc,straight,315,2\nd,straight,315,3\n",
		"units":          "tag,kind,w,h,l\n,,cm,cm,m\na,straight,30,20,1\nb,straight,30,20,2\n",
		"no heading":     "tag,kind,w,h,l,\na,straight,300,200,1000,\nb,straight,300,200,1000,x\nc,straight,300,200,1000,y,z\n",
		"quotes":         "tag,kind,w,h,l,note\na,straight,300,200,1000,\"x\ny\"\nb,straight,300,200,1000,\nc,straight,24 in,10\",1000,\"unclosed\nd,straight,300,200,1000,\n",
		"semicolons":     "tag;kind;w;h;l\na;straight;300;200;1.500\nb;straight;300;200;1,5\n",
		"wide":           "tag,kind,w,h,l\na,straight,wide,200,1000\nb,straight,n/a,200,1000\na,bend,300,200,1000\n",
		"times":          "tag,kind,w,h,l,ready,closed\na,straight,300,200,1000,2026-03-01,\nb,straight,300,200,1000,3,4\nc,straight,300,200,1000,2026-03-09,2026-03-01\na,straight,300,200,1000,soon,\n",
		"no rows":        "tag,kind,w,h,l\n",
		"mark":           "\xef\xbb\xbftag;kind;w;h;l\n" + strings.Repeat("a;straight;300;200;1,5\n", 300),
		"tabs":           "tag\tkind\tw\th\tl\n" + strings.Repeat("a\tstraight\t300\t200\t1000\n", 300) + "z\tstraight\t300\t200\t1000,5\n",
		"late quote":     "tag,kind,w,h,l\n" + strings.Repeat("a,straight,300,200,1000\n", 300) + "z,straight,\"300\",200,1000\n",
		"late letter":    "tag,kind,w,h,l\n" + strings.Repeat("a,straight,300,200,1000\n", 300) + "\xfc,straight,300,200,1000\n",
		"under headings": "tag,kind,w,h,l\nSystem: A,,,,\n" + strings.Repeat("a,straight,300,200,1000\n", 40) + "System: B,,,,\n" + strings.Repeat(",straight,300,200,900\n", 40) + "total,,,,76\nb,straight,300,200,1000\n",
		"remarks":        "tag,kind,w,h,l\na,straight,300,200,1000\nnote: seen on site\nb,straight,300,200,1000\nall dimensions in cm\nc,straight,300,200,1000\n",
		"words":          "tag,kind,w,h,l\n" + strings.Repeat("a,Kanal gerade,300,200,1000\nb,90° bend,300,200,\nc,Rohr,,,\n", 30),
		"whole sizes":    "tag,kind,size,l\n" + strings.Repeat("a,straight,300x200,1000\nb,straight,Ø315,1000\n", 30) + "c,straight,300,1000\n",
		"levels":         "tag,level,kind,w,h,l\n" + strings.Repeat("a,L1,straight,300,200,1000\nb,L2-L5,straight,300,200,1000\n"+strings.Repeat("c,L1,straight,300,200,1000\n", 90), 9),
		"many levels":    "tag,level,kind,w,h,l\n" + manyLevels(),
		"of no use":      "tag,kind,w,h,l\n" + strings.Repeat("a,what,300,200,1000\n", 20_500),
		"many faults":    "tag,kind,w,h,l\nb,straight,300,200,1000\n" + strings.Repeat("a,what,x,200,1000\n", 26_000),
	} {
		sameBothWays(t, name+".csv", []byte(text))
	}
}

// manyLevels are rows of so many levels that a batch forgets their names, some of them
// for several.
func manyLevels() string {
	var b strings.Builder
	for i := range 20_000 {
		fmt.Fprintf(&b, "a,L%d,straight,300,200,1000\n", i%9_000)
		if i%800 == 700 {
			b.WriteString("a,L2 to L5,straight,300,200,1000\n")
		}
	}
	return b.String()
}

// TestIntoIsReadAndAddOnRandomSchedules is the same on what chance writes: every
// kind of piece, links of every sort, right and wrong.
func TestIntoIsReadAndAddOnRandomSchedules(t *testing.T) {
	for seed := range 60 {
		sameBothWays(t, fmt.Sprintf("random %d.csv", seed), randomSchedule(rand.New(rand.NewSource(int64(seed)))))
	}
}

func randomSchedule(r *rand.Rand) []byte {
	pick := func(of ...string) string { return of[r.Intn(len(of))] }
	var b strings.Builder
	b.WriteString("tag,system,level,kind,shape,quantity,w,h,d,l,angle,radius_mm,w2,h2,d2,branch_d,branch_length,area_m2,lining,size is,from,run,joins,at_mm,scope,ready,closed\n")
	n := 5 + r.Intn(60)
	for i := range n {
		sizes := pick("300,200,", "600,400,", "600.04,400,", "600.02,400,", ",,315", ",,200", ",,wide", "300,200,100")
		from := ""
		if i > 0 && r.Intn(5) > 0 {
			from = fmt.Sprintf("T%d", i-1-r.Intn(min(i, 3))) + pick("", "", "", "", "/branch", "/far", "/branch2")
		}
		from = pick(from, from, from, from, from, "^", "none")
		fmt.Fprintf(&b, "%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s,%s\n",
			pick(fmt.Sprintf("T%d", i), fmt.Sprintf("T%d", i), fmt.Sprintf("T%d", i), "T0", ""), pick("A", "B", ""), pick("1", "2"),
			pick("straight", "straight", "bend", "tee", "spigot", "spigot", "cap", "plenum", "reducer", "cross", "breeches", "damper", "flexible", "what"),
			pick("", "", "", "circular", "oval"), pick("1", "1", "1", "2", "0"), sizes, pick("1000", "6000", "900", "20"),
			pick(",", "90,400", "90,500"), pick(",,", ",,250", "250,200,"), pick(",", "100,100", "125,50"),
			pick("", "", "", "", "", "2", "0.001"), pick(",", ",", ",", "25,clear", "25,"), from, pick("", "", "", "r1"),
			pick("", "", "", "", "", "T1"), pick("", "", "500", "2000"), pick("", "", "", "", "out", "through"),
			pick("", "", "", "2026-03-01", "4"), pick("", "", "", "2026-03-04", "2"))
	}
	if r.Intn(3) > 0 {
		return []byte(b.String())
	}
	lines := strings.Split(b.String(), "\n")
	for i := range lines {
		cells := strings.Split(lines[i], ",")
		k := r.Intn(len(cells))
		cells[k] = pick(`"`+cells[k]+`"`, `"`+cells[k]+`"`, `"`+cells[k]+"\n"+`"`, cells[k]+`"`, `"`+cells[k], `""`)
		lines[i] = strings.Join(cells, ",")
	}
	return []byte(strings.Join(lines, "\n"))
}
