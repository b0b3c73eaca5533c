package main

import (
	"bytes"
	"fmt"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
)

// versionText says which program this is: the module's version, the revision that
// it was built from and when that was made, and the release of Go.
func versionText(info *debug.BuildInfo, ok bool) string {
	if !ok {
		return "blankoff, built without build information"
	}
	version := info.Main.Version
	if version == "" || version == "(devel)" {
		version = "of a working copy"
	}
	text := "blankoff " + version
	set := map[string]string{}
	for _, s := range info.Settings {
		set[s.Key] = s.Value
	}
	if rev := set["vcs.revision"]; rev != "" {
		text += ", revision " + rev[:min(12, len(rev))]
		if set["vcs.time"] != "" {
			text += " of " + set["vcs.time"]
		}
		if set["vcs.modified"] == "true" {
			text += ", changed since"
		}
	}
	return fmt.Sprintf("%s, %s, %s/%s", text, info.GoVersion, set["GOOS"], set["GOARCH"])
}

// addVersion gives the program its --version.
func addVersion(root *cobra.Command) {
	info, ok := debug.ReadBuildInfo()
	root.Version = versionText(info, ok)
	root.SetVersionTemplate("{{.Version}}\n")
	root.Flags().Bool("version", false, "say which version this is")
}

// checkedHelp makes help an answer like any other: where it can't be written the
// run fails.
func checkedHelp(root *cobra.Command) (failed func() error) {
	var err error
	help := root.HelpFunc()
	root.SetHelpFunc(func(c *cobra.Command, args []string) {
		var b bytes.Buffer
		out := c.OutOrStdout()
		c.SetOut(&b)
		help(c, args)
		c.SetOut(out)
		_, err = strings.NewReader(b.String()).WriteTo(out)
	})
	return func() error { return err }
}
