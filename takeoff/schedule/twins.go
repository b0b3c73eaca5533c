package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// refuseTwins refuses columns that mean the same; of several note columns the
// first is used.
func (t *table) refuseTwins() {
	at := t.alike()
	beside := 0
	for _, twins := range at {
		if len(twins) == 2 {
			beside++
		}
	}
	for c, twins := range at {
		switch {
		case len(twins) < 2:
		case c == int(takeoff.Tag) && !t.maps(takeoff.From) && !t.specs[twins[0]].fixed:
			t.leaveOut(twins[1:], "column '%s' is another for tags and isn't used")
		case c == int(takeoff.Note):
			t.leaveOut(twins[1:], "column '%s' is a second note column and isn't used")
		case beside > 2 && t.specs[twins[0]].Typed == t.specs[twins[1]].Typed:
			t.twoTables(twins)
		default:
			t.refuseAll(c, twins)
		}
	}
}

// alike lists the columns that mean each of ours, and behind these the whole
// cross-sections.
func (t *table) alike() (at [takeoff.NumColumns + 4][]int) {
	for i := range t.specs {
		s := &t.specs[i]
		switch {
		case s.used && s.Verdict == headings.Sizes:
			size := int(takeoff.NumColumns) + int(s.Size)
			if s.Size == headings.LongSize {
				size = int(takeoff.NumColumns) + int(headings.OwnSize)
			}
			at[size] = append(at[size], i)
		case s.used:
			at[s.to()] = append(at[s.to()], i)
		}
	}
	return at
}

// leaveOut takes columns out of use, with a note.
func (t *table) leaveOut(columns []int, format string) {
	for _, i := range columns {
		t.specs[i].used = false
		t.note(format, t.specs[i].Typed)
	}
}

// refuseAll refuses columns that mean the same.
func (t *table) refuseAll(c int, twins []int) {
	name := "the size"
	if c < int(takeoff.NumColumns) {
		name = takeoff.Column(c).Heading()
	}
	names := make([]string, len(twins))
	for k, i := range twins {
		names[k] = fmt.Sprintf("'%s' (column %d)", t.specs[i].Typed, i+1)
	}
	t.refuse(&t.specs[twins[0]], "one column for "+name,
		strings.Join(names, " and ")+" both mean "+name+", so none of them is used; rename or remove all but one")
	for _, i := range twins[1:] {
		t.specs[i].used = false
	}
}

// twoTables refuses columns that stand there twice with others: two tables side by side.
func (t *table) twoTables(twins []int) {
	const message = "two tables stand side by side, so neither is read; put the second one below the first, or on a sheet of its own"
	if said := t.place.Fault("", t.specs[twins[0]].Typed, "one table on a sheet", message); !slices.ContainsFunc(t.info.Faults, func(f takeoff.Fault) bool { return f.Message == message && f.Row == said.Row && f.Sheet == said.Sheet }) {
		t.info.Faults = append(t.info.Faults, said)
	}
	for _, i := range twins {
		t.specs[i].used, t.specs[i].Verdict = false, headings.Unknown
	}
}

// doubtDepth refuses a bare D beside a width without a height: it may be the
// depth.
func (t *table) doubtDepth() {
	for i := range t.specs {
		s := &t.specs[i]
		if s.used && !s.fixed && s.Typed != "" && headings.Tokens(s.Typed)[0] == "d" && !(t.maps(takeoff.DimColumn(fittings.Width)) && !t.maps(takeoff.DimColumn(fittings.Height)) && t.depthByCells(s)) && t.maps(takeoff.DimColumn(fittings.Width)) && !t.maps(takeoff.DimColumn(fittings.Height)) {
			t.refuse(s, "height_mm or diameter_mm",
				"'"+s.Typed+"' may be the depth or the diameter, so it isn't used; rename it height_mm or diameter_mm")
		}
	}
}
