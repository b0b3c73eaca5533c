package main

import (
	"os"
	"strings"
	"testing"
)

func TestKindsAndStyles(t *testing.T) {
	site(t, map[string]string{"kept.txt": "mine"})
	for _, c := range []struct {
		line  string
		code  int
		about string
	}{
		{"kinds bend --style mitred", 0, ""},
		{"kinds elbow --style lobsterback", 0, ""},
		{"kinds tee --style dished", 2, "straight, conical, shoe"},
		{"kinds tee --style odd", 2, `"odd"`},
		{"kinds plenum --style flat", 2, "no styles"},
		{"kinds --style mitred", 2, "which kind"},
		{"kinds -o all.svg", 2, "which kind"},
		{"kinds bend -o bend.pdf", 2, ".svg"},
		{"kinds bend -o kept.txt", 2, ".svg"},
		{"kinds bend -o nowhere/bend.svg", 1, "nowhere"},
		{"kinds bend -o bend.svg", 0, "wrote bend.svg"},
		{"kinds bend --style gored -o bend.SVG", 0, "wrote"},
		{"kinds cap -o bend.svg", 0, "wrote over bend.svg"},
	} {
		code, _, talk := typed(t, c.line)
		if code != c.code || !strings.Contains(talk, c.about) {
			t.Errorf("blankoff %s: exit %d, want %d; said %q, want something of %q", c.line, code, c.code, talk, c.about)
		}
	}
	data, err := os.ReadFile("bend.svg")
	if err != nil || !strings.Contains(string(data), "<title id=\"title\">cap, flat</title>") {
		t.Errorf("%v: %.300s", err, data)
	}
	if data, _ := os.ReadFile("kept.txt"); string(data) != "mine" {
		t.Errorf("kept.txt now holds %q", data)
	}
	if _, out, _ := typed(t, "kinds bend -o again.svg"); out != "" {
		t.Errorf("said on stdout: %q", out)
	}
}
