package main

import (
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
)

// sparing makes the program clear up its memory more often where it would take
// more than 400 MB, unless GOMEMLIMIT says otherwise.
func sparing() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(400 << 20)
	}
}

// What a row of a large schedule may take, bytes: with its item, piece, joints and
// section, or for totals only.
const (
	rowRoom    = 1450
	totalsRoom = 200
)

// spacious lets the program take so much memory, and more where it needs more:
// nearly all of a large schedule is kept, and looking through it again and again
// for what isn't takes longer than the work. Beyond that it clears up each time
// that a seventh has been added.
func spacious(bytes int) {
	if os.Getenv("GOMEMLIMIT") != "" {
		return
	}
	debug.SetMemoryLimit(math.MaxInt64)
	(&clearing{uint64(bytes)}).done()
}

// clearing is told each time that memory has been cleared up: nothing refers to
// it, so it is found then.
type clearing struct{ room uint64 }

func (c *clearing) done() {
	const least, most = 15, 100
	live := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(live)
	percent := most
	if held := live[0].Value.Uint64(); 2*held > c.room {
		percent = max(least, int(100*c.room/held)-100)
	}
	debug.SetGCPercent(percent)
	runtime.SetFinalizer(c, (*clearing).done)
}
