package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
)

// The largest files that are read beside a schedule, bytes.
const (
	mostSettings = 256 << 10 // a rig, a job, a scheme, a basis, a regime
	mostCuts     = 4 << 20
	mostPlan     = 96 << 20 // some 800 bytes a row
)

// readInput reads a file whole, or a pipe, but no further than it can reach; what
// says which file it is.
func readInput(what, path string, most int) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w", what, path, cause(err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w", what, path, cause(err))
	}
	if len(data) > most {
		return nil, fmt.Errorf("%s %s: it is larger than %d KiB, and no such file is", what, path, most>>10)
	}
	return data, nil
}

// readSettings reads a settings file (TOML). One whose tables lie deep in each
// other is refused before it is taken apart, which would take long.
func readSettings(what, path string) (io.Reader, error) {
	data, err := readInput(what, path, mostSettings)
	if err != nil {
		return nil, err
	}
	if line := tangled(data); line > 0 {
		return nil, fmt.Errorf("%s %s, line %d: there are more than %d brackets or points; a settings file has one table inside another, no more", what, path, line, mostNested)
	}
	return bytes.NewReader(data), nil
}

const mostNested = 64

// tangled finds the line on which brackets lie too deep in each other, or a key
// has too many points; 0 if there is none. Text in quotes and comments don't
// count.
func tangled(data []byte) int {
	line, open, points := 1, 0, 0
	for i := 0; i < len(data); i++ {
		switch c := data[i]; c {
		case '\n':
			line, points = line+1, 0
		case '#':
			if n := bytes.IndexByte(data[i:], '\n'); n > 0 {
				i += n - 1
			} else {
				return 0
			}
		case '"', '\'':
			end := quoteEnd(data[i:], c)
			line += bytes.Count(data[i:i+end], []byte("\n"))
			i += end - 1
		case '[', '{':
			open++
		case ']', '}':
			open = max(0, open-1)
		case ',', '=':
			points = 0
		case '.':
			points++
		}
		if open > mostNested || points > mostNested {
			return line
		}
	}
	return 0
}

// quoteEnd is where a text in quotes ends; one that isn't closed ends with its
// line.
func quoteEnd(data []byte, quote byte) int {
	end := []byte{quote, quote, quote}
	if !bytes.HasPrefix(data, end) {
		end = end[:1]
	}
	for i := len(end); i < len(data); i++ {
		switch {
		case quote == '"' && data[i] == '\\':
			i++
		case bytes.HasPrefix(data[i:], end):
			return i + len(end)
		case data[i] == '\n' && len(end) == 1:
			return i
		}
	}
	return len(data)
}

// readPlanFile reads an earlier plan.
func readPlanFile(path string) (io.Reader, error) {
	data, err := readInput("earlier plan", path, mostPlan)
	if err != nil {
		return nil, err
	}
	if bytes.Count(data, []byte("{")) > 1_000_000 {
		return nil, fmt.Errorf("earlier plan %s: it holds more than the plan of the largest schedule", path)
	}
	return bytes.NewReader(data), nil
}
