package main

import (
	"os"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"sync"
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
		litter(atFirst)
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

// How much may lie about before memory is cleared up, in percent of what is kept.
const (
	atFirst = 400 // the first time: what is made at the start is nearly all kept
	usually = 100
	// For totals of a large schedule lines are kept, without pointers, which nothing looks
	// through. So clearing up costs next to nothing, and memory that wasn't in use before
	// costs a stop a page.
	forTotals = 20
)

// littering is how much may lie about now; 0: nothing was said yet.
var littering struct {
	sync.Mutex
	percent int
}

// litter lets no more than so much lie about from now on, unless GOGC says otherwise.
func litter(percent int) {
	littering.Lock()
	defer littering.Unlock()
	if now := littering.percent; (now == 0 || percent < now) && os.Getenv("GOMEMLIMIT")+os.Getenv("GOGC") == "" {
		debug.SetGCPercent(percent)
		littering.percent = percent
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
	runtime.SetFinalizer(c, func(c *clearing) { litter(usually); c.done() })
}
