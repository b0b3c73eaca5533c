package xlsx

import (
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"blankoff/planner"
)

// tower is a schedule of n systems of 50 rows each: a main with bends, reducers,
// spigots and flexibles. Made up.
func tower(n int) string {
	var b strings.Builder
	b.WriteString("tag,from,system,level,kind,width_mm,height_mm,diameter_mm,length_mm,angle_deg,radius_mm,width2_mm,height2_mm,branch_diameter_mm,branch_length_mm,at_mm\n")
	for i := range n {
		last := ""
		for k := range 10 {
			tag := func(kind string) string { return fmt.Sprintf("D%d.%d.%s", i, k, kind) }
			put := func(kind, from, tail string) {
				fmt.Fprintf(&b, "%s,%s,System %d,Level %d,%s,%s\n", tag(kind), from, i, i%20, kind, tail)
			}
			put("straight", last, "600,400,,9000,,,,,,,")
			put("spigot", tag("straight"), ",,,,,,,,200,100,2000")
			put("flexible", tag("spigot"), ",,200,1500,,,,,,,")
			put("bend", tag("straight"), "600,400,,,90,500,,,,,")
			put("inline", tag("bend"), "600,400,,300,,,,,,,")
			last = tag("inline")
		}
	}
	return b.String()
}

// BenchmarkRows writes the plan of a schedule of 100,000 rows.
func BenchmarkRows(b *testing.B) {
	v := planned(b, job{csv: tower(2000), rigs: []string{otherRig, holedRig}, set: func(s *planner.Settings) { s.Class, s.TestPa = "B", 400 }})
	b.Logf("%d rows, %d sections", len(v.Takeoff.Items), len(v.Sections))
	count := &counter{}
	var m, most runtime.MemStats
	for b.Loop() {
		count.n = 0
		runtime.GC()
		runtime.ReadMemStats(&m)
		if err := Plan(count, v); err != nil {
			b.Fatal(err)
		}
		runtime.ReadMemStats(&most)
	}
	b.ReportMetric(float64(count.n)/1e6, "MB-file")
	b.ReportMetric(float64(most.HeapSys)/1e6, "MB-heap")
}

// counter counts what is written.
type counter struct{ n int64 }

func (c *counter) Write(p []byte) (int, error) {
	c.n += int64(len(p))
	return io.Discard.Write(p)
}
