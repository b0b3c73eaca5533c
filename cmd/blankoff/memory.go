package main

import (
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"sync/atomic"
)

// usual is what the program keeps within where it can, bytes.
const usual = 400 << 20

// sparing makes the program clear up its memory more often where it would take
// more than 400 MB, unless GOMEMLIMIT says otherwise. Where nearly as much is kept, it
// may take a fifth more than that: else it would do hardly anything but clear up.
func sparing() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(usual)
		(&clearing{}).done()
	}
}

// What a row of a large schedule may take, bytes: with its item, piece, joints and
// section, or for totals only.
const (
	rowRoom    = 1250
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
	large.Store(true)
	debug.SetMemoryLimit(math.MaxInt64)
	(&clearing{uint64(bytes)}).done()
}

// clearing is told each time that memory has been cleared up: nothing refers to
// it, so it is found then. Its room is what a large schedule may take; 0: the usual.
type clearing struct{ room uint64 }

// large is that a large schedule has its own room.
var large atomic.Bool

func (c *clearing) done() {
	live := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(live)
	held := live[0].Value.Uint64()
	switch {
	case c.room > 0:
		debug.SetGCPercent(c.percent(held))
	case large.Load():
		return
	default:
		debug.SetMemoryLimit(int64(max(usual, held+held/5)))
	}
	runtime.SetFinalizer(c, (*clearing).done)
}

// percent is by how much what is held may grow before it is cleared up again.
func (c *clearing) percent(held uint64) int {
	const least, most = 15, 100
	if 2*held <= c.room {
		return most
	}
	return max(least, int(100*c.room/held)-100)
}
