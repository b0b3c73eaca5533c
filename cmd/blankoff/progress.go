package main

import (
	"fmt"
	"io"
	"strings"
	"sync"
	"time"
)

const (
	patience = 500 * time.Millisecond // before anything is shown
	every    = 100 * time.Millisecond // it is written again at most
	widest   = 70                     // columns
)

// progress is one line on a terminal that says what long work is at. It is shown
// once the work has taken a while, and wiped before anything else is written
// there and at the end. Anywhere but on a terminal it only passes text on.
type progress struct {
	on    bool
	timer *time.Timer

	mu    sync.Mutex
	out   io.Writer
	text  string // to be shown
	seen  string // what stands there
	ended bool
}

func newProgress(out io.Writer, on bool) *progress {
	p := &progress{on: on, out: out}
	p.mu.Lock()
	defer p.mu.Unlock()
	if on {
		p.timer = time.AfterFunc(patience, p.tick)
	}
	return p
}

// say notes what the work is at.
func (p *progress) say(text string) {
	if p == nil || !p.on {
		return
	}
	text = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return '?'
		}
		return r
	}, text)
	if r := []rune(text); len(r) > widest {
		text = string(r[:widest-3]) + "..."
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.text = text
}

// tick shows what the work is at and comes again.
func (p *progress) tick() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.ended {
		return
	}
	if p.text != p.seen {
		p.wipe()
		io.WriteString(p.out, p.text)
		p.seen = p.text
	}
	p.timer.Reset(every)
}

// wipe takes the line away.
func (p *progress) wipe() {
	if p.seen != "" {
		io.WriteString(p.out, "\r"+strings.Repeat(" ", len([]rune(p.seen)))+"\r")
		p.seen = ""
	}
}

// Write passes on what else is said, on a line of its own.
func (p *progress) Write(b []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.wipe()
	return p.out.Write(b)
}

// done wipes the line for good.
func (p *progress) done() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.wipe()
	p.ended = true
	if p.timer != nil {
		p.timer.Stop()
	}
}

// planning says which system is being divided.
func (p *progress) planning(system string, stretch, of int) {
	if system == "" {
		system = "without a name"
	}
	p.say(fmt.Sprintf("planning: system %s, %d of %d", system, stretch, of))
}

// told makes a pack say which of its documents is being written.
func (p *progress) told(docs []document) []document {
	for i := range docs {
		d := docs[i]
		docs[i].write = func(w io.Writer) error {
			p.say("writing " + d.name)
			return d.write(w)
		}
	}
	return docs
}
