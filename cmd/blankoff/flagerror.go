package main

import (
	"fmt"
	"regexp"
	"strings"
)

var badValue = regexp.MustCompile(`(?s)^invalid argument "(.*)" for "(?:-\w, )?(--[\w-]+)" flag: (.*)$`)

// flagTrouble says in our words what is wrong with a flag.
func flagTrouble(err error) error {
	m := badValue.FindStringSubmatch(err.Error())
	if m == nil {
		return err
	}
	expected := "a number"
	switch {
	case strings.Contains(m[3], "ParseBool"):
		expected = "no value, or true or false"
	case strings.Contains(m[3], "ParseUint"), strings.Contains(m[3], "ParseInt"):
		expected = "a whole number"
	case !strings.Contains(m[3], "strconv"):
		return fmt.Errorf("%s %q: %s", m[2], m[1], m[3])
	}
	return fmt.Errorf("%s %q: expected %s", m[2], m[1], expected)
}
