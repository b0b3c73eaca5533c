package schedule

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/source"
	"blankoff/takeoff/schedule/stated"
)

// Whatever a text holds and wherever it is cut into chunks, all that is found is
// what is found row by row.
func FuzzInto(f *testing.F) {
	paths, err := filepath.Glob("../../testdata/schedules/*.csv")
	if err != nil || len(paths) == 0 {
		f.Fatal(paths, err)
	}
	for i, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data, uint16(1+97*i))
	}
	f.Add([]byte("tag,kind,w,h,l\na,straight,300,200,1000\nSystem: B,,,,\nb,straight,\"300\",200,1000\ntotal,,,,5\nc,straight,300,200\",1000\n"), uint16(40))
	f.Add([]byte("kind;size;l\nKanal;300x200;1,5\nm\n90° bend;Ø315;\nkind;size;l\nwhat;;2\n"), uint16(9))
	f.Fuzz(func(t *testing.T, data []byte, size uint16) {
		want, wantInfo, wantErr := oneByOne("fuzz.csv", data, takeoff.Options{})
		defer func(size int) { source.ChunkSize = size }(source.ChunkSize)
		source.ChunkSize = 1 + int(size)
		got := takeoff.New(takeoff.Options{})
		info, err := Options{}.IntoFrom("fuzz.csv", data, got, nil)
		same(t, "error", fmt.Sprint(err), fmt.Sprint(wantErr))
		if err != nil {
			return
		}
		got.Finish(info.Schedule, info.Faults, info.Notes)
		same(t, "what was found", info, wantInfo)
		same(t, "faults", got.Faults, want.Faults)
		same(t, "items", got.Items, want.Items)
		same(t, "totals", got.Totals, want.Totals)
	})
}

// A list of stated sums gives sums or located faults or says why it can't be read,
// never nothing; every area is a number of m2 that isn't negative.
func FuzzTotals(f *testing.F) {
	f.Add([]byte("system,stated_area_m2,flow_m3_h\nSA1,48.04,3600\nSA2,twelve,\n"))
	f.Add([]byte("Section;Stated area (ft2);reading_l_s\nS01;517,10;23,4\n"))
	f.Add(asXLSX(f, [][]any{{"system", "stated_area_m2"}, {"SA1", 48.04}}))
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := stated.ReadFrom("f", data)
		if err != nil {
			return
		}
		if len(got.List)+len(got.Faults) == 0 {
			t.Fatal("neither sums nor faults nor an error")
		}
		for _, x := range got.List {
			if !(x.Area >= 0) || math.IsInf(x.Area, 0) || !(x.Flow >= 0) || !(x.Reading >= 0) || x.At.Row < 1 {
				t.Fatalf("%+v", x)
			}
		}
		for _, x := range got.Faults {
			soundFault(t, x)
		}
	})
}
