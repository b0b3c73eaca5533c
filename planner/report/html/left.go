package html

import "blankoff/planner/report"

// left is the class of what isn't tested.
func left(s *report.Section) string {
	if s.NotTested != "" {
		return " left"
	}
	return ""
}

// mark puts a word before a text, if there is any.
func mark(word, text string) string {
	if text == "" {
		return ""
	}
	return word + text
}
