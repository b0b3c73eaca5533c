package main

import (
	"strings"

	"github.com/spf13/cobra"

	"blankoff/fittings"
	"blankoff/planner/sampling"
	"blankoff/planner/tightness"
	"blankoff/takeoff/bases"
)

// completeWords lets a shell complete what a flag or an argument may be: words
// where they are few, and otherwise files by their endings.
func completeWords(root *cobra.Command) {
	var rules, regimes, kinds []string
	for _, b := range bases.BuiltIn() {
		rules = append(rules, b.Name)
	}
	for _, p := range sampling.Presets() {
		regimes = append(regimes, p.Name)
	}
	for _, k := range fittings.Kinds() {
		kinds = append(kinds, k.Name)
	}
	words := map[string][]string{
		"aim": {"tests", "time"}, "by": {"level", "stage"}, "sign": {"positive", "negative"}, "units": {"si", "us"}, "slip-joints": {"open", "bladder", "made-up"},
		"pressure-rule": {"design", "operating"}, "sample-by": {"area", "length", "joint length"}, "scheme": tightness.Names(), "basis": rules, "regime": regimes,
	}
	endings := map[string][]string{"rig": {"toml"}, "job": {"toml"}, "cuts": {"csv"}, "keep": {"json"}}
	for _, c := range root.Commands() {
		for flag, list := range words {
			if c.Flags().Lookup(flag) != nil {
				complete(c, flag, list)
			}
		}
		for flag, list := range endings {
			if c.Flags().Lookup(flag) != nil {
				_ = c.MarkFlagFilename(flag, list...)
			}
		}
		if f := c.Flags().Lookup("format"); f != nil {
			list := []string{"table", "json"}
			if strings.Contains(f.Usage, "csv") {
				list = append(list, "csv")
			}
			complete(c, "format", list)
		}
		switch {
		case strings.Contains(c.Use, "SCHEDULE"):
			c.ValidArgsFunction = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
				return []string{"csv", "tsv", "txt", "xlsx"}, cobra.ShellCompDirectiveFilterFileExt
			}
		case strings.Contains(c.Use, "KIND"):
			c.ValidArgsFunction = cobra.FixedCompletions(kinds, cobra.ShellCompDirectiveNoFileComp)
		default:
			c.ValidArgsFunction = cobra.NoFileCompletions
		}
	}
}

func complete(c *cobra.Command, flag string, words []string) {
	_ = c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveDefault))
}
