//go:build linux

package main

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// The speed of the program as it is built, on a schedule of a million rows, beside
// what the bare reading of the same file takes in the same run:
//
//	go test ./cmd/blankoff -run '^$' -bench 'Totals|PlanMillion|Start' -benchtime 3x
//
// Wall times depend on what else the machine does: of all rounds the best counts.

// built is the program.
func built(b *testing.B) string {
	b.Helper()
	path := filepath.Join(b.TempDir(), "blankoff")
	if out, err := exec.Command("go", "build", "-o", path, ".").CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	return path
}

// cost is what a run took.
type cost struct {
	wall, cpu    time.Duration // cpu: of all threads, in user mode
	heap, memory float64       // the most that the heap and the process held, MB (10^6 bytes)
}

// best keeps the least of each figure.
func (c *cost) best(o cost) {
	if c.wall == 0 {
		*c = o
		return
	}
	c.wall, c.cpu = min(c.wall, o.wall), min(c.cpu, o.cpu)
	c.heap, c.memory = min(c.heap, o.heap), min(c.memory, o.memory)
}

// heapLine is a collection as the run time traces it: what the heap held at its
// start, at its end, and what was left, MiB.
var heapLine = regexp.MustCompile(`(?m)^gc .* (\d+)->(\d+)->\d+ MB`)

// runs runs the program as a process of its own.
func runs(b *testing.B, program string, args ...string) cost {
	b.Helper()
	var errs strings.Builder
	c := exec.Command(program, args...)
	c.Env = append(os.Environ(), "GODEBUG=gctrace=1")
	c.Stderr = &errs
	start := time.Now()
	err := c.Run()
	o := cost{wall: time.Since(start)}
	var exit *exec.ExitError
	if err != nil && !(errors.As(err, &exit) && exit.ExitCode() == exitPartly) {
		b.Fatalf("%v\n%s", err, errs.String())
	}
	o.cpu = c.ProcessState.UserTime()
	o.memory = float64(c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss) * 1024 / 1e6
	for _, m := range heapLine.FindAllStringSubmatch(errs.String(), -1) {
		mib, _ := strconv.Atoi(m[2])
		o.heap = max(o.heap, float64(mib)*(1<<20)/1e6)
	}
	return o
}

// millionRows writes a schedule of twenty columns: a thousand systems, each a main
// of a thousand straights and bends.
func millionRows(b *testing.B) string {
	b.Helper()
	path := filepath.Join(b.TempDir(), "million.csv")
	f, err := os.Create(path)
	if err != nil {
		b.Fatal(err)
	}
	w := bufio.NewWriter(f)
	fmt.Fprintln(w, "tag,system,level,place,drawing,kind,style,shape,quantity,width_mm,height_mm,diameter_mm,length_mm,angle_deg,radius_mm,from,joint,class,test_pa,note")
	for i := range 1_000_000 {
		s, k := i/1000, i%1000
		from := ""
		if k > 0 {
			from = fmt.Sprintf("D%04d-%03d", s, k-1)
		}
		piece := fmt.Sprintf("straight,,rectangular,1,%d,300,,%d,,", 300+50*(k%10), 1200+k)
		switch k % 7 {
		case 3:
			piece = "bend,,rectangular,1,600,400,,,90,500"
		case 5:
			piece = fmt.Sprintf("straight,,circular,1,,,315,%d,,", 1000+3*k)
		}
		fmt.Fprintf(w, "D%04d-%03d,AHU %04d,L%d,grid %d,DR-%04d,%s,%s,flanged,B,400,\n", s, k, s, k/100, k%26, s, piece, from)
	}
	if err := errors.Join(w.Flush(), f.Close()); err != nil {
		b.Fatal(err)
	}
	return path
}

// bareRead reads a file by encoding/csv and does nothing with it.
func bareRead(b *testing.B, path string) cost {
	b.Helper()
	f, err := os.Open(path)
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	var before, after syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &before)
	start := time.Now()
	r := csv.NewReader(bufio.NewReaderSize(f, 1<<16))
	r.ReuseRecord = true
	for err == nil {
		_, err = r.Read()
	}
	o := cost{wall: time.Since(start)}
	syscall.Getrusage(syscall.RUSAGE_SELF, &after)
	if err != io.EOF {
		b.Fatal(err)
	}
	o.cpu = time.Duration(after.Utime.Nano() - before.Utime.Nano())
	return o
}

// BenchmarkTotals is takeoff --totals of a million rows, beside a bare read of the
// same file.
func BenchmarkTotals(b *testing.B) {
	program, path := built(b), millionRows(b)
	var bare, ours cost
	for b.Loop() {
		bare.best(bareRead(b, path))
		ours.best(runs(b, program, "takeoff", "--totals", path))
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ours.wall.Seconds(), "s")
	b.ReportMetric(ours.cpu.Seconds(), "s-cpu")
	b.ReportMetric(ours.wall.Seconds()/bare.wall.Seconds(), "x-bare-csv")
	b.ReportMetric(ours.cpu.Seconds()/bare.cpu.Seconds(), "x-bare-csv-cpu")
	b.ReportMetric(ours.heap, "MB-heap")
	b.ReportMetric(ours.memory, "MB-in-all")
}

// rangeOfBench is a rig with one range.
const rangeOfBench = `name = "one range"
[[range]]
name = "only"
min_l_s = 12
max_l_s = 40
accuracy_percent = 3
accuracy_l_s = 0.2
own_leak_l_s = 0.1
`

// BenchmarkPlanMillion is the plan of a million rows in a thousand systems.
func BenchmarkPlanMillion(b *testing.B) {
	program, path := built(b), millionRows(b)
	rig := filepath.Join(b.TempDir(), "rig.toml")
	if err := os.WriteFile(rig, []byte(rangeOfBench), 0o644); err != nil {
		b.Fatal(err)
	}
	var ours cost
	for b.Loop() {
		ours.best(runs(b, program, "plan", path, "--rig", rig))
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ours.wall.Seconds(), "s")
	b.ReportMetric(ours.cpu.Seconds(), "s-cpu")
	b.ReportMetric(ours.heap, "MB-heap")
	b.ReportMetric(ours.memory, "MB-in-all")
}

// BenchmarkStart is the time from the start of the program to its end, where it
// only lists the kinds of piece.
func BenchmarkStart(b *testing.B) {
	program := built(b)
	var ours cost
	for b.Loop() {
		ours.best(runs(b, program, "kinds"))
	}
	b.ReportMetric(float64(ours.wall.Microseconds())/1000, "ms")
	b.ReportMetric(ours.memory, "MB-in-all")
}
