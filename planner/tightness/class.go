package tightness

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Class finds a class by name, whatever the case, spaces and hyphens, with or
// without the word class before it: "B", "b", "class B", "ATC 4". In a
// numbered scheme any positive number is a class ("6", "2.5") and its limit is
// computed for that number, never taken from the nearest usual class.
//
// The error quotes the value, lists what is allowed, and says which built-in
// scheme has such a class if one does. A class that sets no limit is refused.
func (s *Scheme) Class(name string) (Class, error) {
	if s.Numbered {
		return s.numbered(name)
	}
	key := classKey(name)
	for _, c := range s.classes {
		if classKey(c.Name) != key {
			continue
		}
		if c.K == 0 {
			return Class{}, fmt.Errorf("class %s of %s sets no limit, so nothing can be tested against it: %s", c.Name, s.Name, s.allowed())
		}
		return c, nil
	}
	return Class{}, fmt.Errorf("%q is not a class of scheme %s: %s%s", name, s.Name, s.allowed(), s.elsewhere(name))
}

// numbered makes the class of a number, k in proportion to it.
func (s *Scheme) numbered(name string) (Class, error) {
	v, ok := classNumber(name)
	if !ok {
		return Class{}, fmt.Errorf("%q is not a class of scheme %s: %s%s", name, s.Name, s.allowed(), s.elsewhere(name))
	}
	factor, _ := kFactor(s.unit, s.Exponent)
	c := Class{Name: strconv.FormatFloat(v, 'f', -1, 64), K: v * factor, Source: s.Source, Sureness: Derived}
	if !(c.K > 0) || math.IsInf(c.K, 0) {
		return Class{}, fmt.Errorf("%q is not a class of scheme %s: %s", name, s.Name, s.allowed())
	}
	for _, usual := range s.classes {
		if usual.Name == c.Name {
			c.Note = usual.Note
		}
	}
	return c, nil
}

// classNumber reads a plain decimal, with or without "class" or "CL" before it.
func classNumber(name string) (float64, bool) {
	t := strings.ToLower(strings.TrimSpace(name))
	for _, word := range []string{"leakage", "class", "cl"} {
		t = strings.TrimSpace(strings.TrimPrefix(t, word))
	}
	if t == "" || strings.Trim(t, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(t, 64)
	return v, err == nil && v > 0
}

// classKey is a class name as it is compared: letters and digits in lower
// case, without a leading "tightness class" or the like.
func classKey(name string) string {
	key := plainKey(name)
	for _, word := range []string{"airtightness", "tightness", "leakage", "class"} {
		if rest := strings.TrimPrefix(key, word); rest != "" {
			key = rest
		}
	}
	return key
}

func plainKey(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
}

// allowed says what the scheme takes for a class, as the tail of an error.
func (s *Scheme) allowed() string {
	var names []string
	for _, c := range s.Classes() {
		names = append(names, c.Name)
	}
	list := strings.Join(names, ", ")
	if s.Numbered {
		return "expected a positive number with a decimal point, such as " + list + " or anything between"
	}
	return "expected one of " + list
}

// elsewhere names the built-in schemes that do have the class.
func (s *Scheme) elsewhere(name string) string {
	var have []string
	key := classKey(name)
	for _, other := range builtin().schemes {
		if other.Name == s.Name || other.Numbered {
			continue
		}
		for _, c := range other.classes {
			if key != "" && classKey(c.Name) == key {
				have = append(have, other.Name)
			}
		}
	}
	if _, isNumber := classNumber(name); isNumber && !s.Numbered {
		have = append(have, "US")
	}
	if len(have) == 0 {
		return ""
	}
	return " (scheme " + strings.Join(have, ", ") + " has it)"
}
