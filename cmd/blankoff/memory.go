package main

import (
	"os"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"sync/atomic"
)

// usual is what the program keeps within where it can, bytes.
const usual = 400 << 20

// room is what the program keeps within, bytes.
var room atomic.Int64

// sparing makes the program clear up its memory more often where it would take
// more than 400 MB, unless GOMEMLIMIT says otherwise. Where nearly as much is kept, it
// may take a fifth more than that: else it would do hardly anything but clear up.
func sparing() {
	if os.Getenv("GOMEMLIMIT") == "" {
		room.Store(usual)
		(&clearing{}).done()
	}
}

// What a row of a large schedule may take, bytes: with its item, piece, joints and
// section, or for totals only.
const (
	rowRoom    = 1320
	totalsRoom = 280
)

// spacious lets the program take so much memory: nearly all of a large schedule is
// kept, and looking through it again and again for what isn't takes longer than the
// work.
func spacious(bytes int) {
	if os.Getenv("GOMEMLIMIT") == "" {
		room.Store(int64(bytes))
		debug.SetMemoryLimit(int64(bytes))
	}
}

// littering is how much may lie about before memory is cleared up, in percent of what is
// kept, where totals only are asked for of a large schedule. What is kept then are lines
// without pointers, which nothing looks through, so that clearing up costs next to nothing;
// memory that wasn't in use before costs a stop a page.
const littering = 20

// tidy makes the program clear up often.
func tidy() {
	if os.Getenv("GOMEMLIMIT")+os.Getenv("GOGC") == "" {
		debug.SetGCPercent(littering)
	}
}

// clearing is told each time that memory has been cleared up: nothing refers to
// it, so it is found then. Should it be told late, memory is cleared up once more than
// it need be.
type clearing struct{ _ int }

func (c *clearing) done() {
	live := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(live)
	held := int64(live[0].Value.Uint64())
	debug.SetMemoryLimit(max(room.Load(), held+held/5))
	runtime.SetFinalizer(c, (*clearing).done)
}
