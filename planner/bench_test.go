package planner_test

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"time"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/takeoff"
)

// line is a row of a made-up schedule: a circular piece, m.
type line struct {
	tag, kind, from  string
	diameter, length float64
	at               float64 // along the piece that it sits on
	branch           float64 // diameter of a tee's branch
}

// job is a made-up system of some n pieces, a length of straight counted as one
// where it is made in one.
type job struct {
	name   string
	pieces int // of a group
	group  func(k int) []line
}

// The groups hang one on the other in a row.
var jobs = []job{
	// A main of straights of four pieces each.
	{"main", 4, func(k int) []line {
		return []line{{tag: tag("M", k), kind: "straight", from: tag("M", k-1), diameter: 0.5, length: 12}}
	}},
	// A tree of tees: on each a branch of straights, or the next tees.
	{"tees", 4, func(k int) []line {
		from := tag("T", (k-1)/2)
		if k > 0 && k%2 == 0 {
			from += "/branch"
		}
		return []line{
			{tag: tag("T", k), kind: "tee", from: tag("D", (k-1)/2), diameter: 0.4, length: 0.6, branch: 0.4},
			{tag: tag("D", k), kind: "straight", from: from, diameter: 0.4, length: 9},
		}
	}},
	// A straight of two pieces with 40 spigots, each with a straight on it.
	{"spigots", 82, func(k int) []line {
		out := []line{{tag: tag("M", k), kind: "straight", from: tag("M", k-1), diameter: 0.8, length: 6}}
		for i := range 40 {
			s := fmt.Sprintf("M%d-%d", k, i)
			out = append(out,
				line{tag: s, kind: "spigot", from: tag("M", k), diameter: 0.1, length: 0.05, at: 0.1 + 0.145*float64(i)},
				line{tag: s + "d", kind: "straight", from: s, diameter: 0.1, length: 1 + 0.05*float64(i)})
		}
		return out
	}},
}
