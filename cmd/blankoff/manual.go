package main

import (
	"fmt"
	"io"
	"regexp"
	"strings"

	"github.com/spf13/cobra"
)

func newManual() *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "manual [-o blankoff.1]",
		Short: "Show the help of all commands in one, or write it as a manual page",
		Long: `manual shows what every command says of itself with --help, one after the
other. With -o it is written as a page for man instead.

` + exitPlain,
		Example: `  blankoff manual
  blankoff manual -o blankoff.1`,
		Args: noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			s := screenOf(c)
			if out == "" {
				return manualText(s.answer, c.Root())
			}
			return writeTo(out, nil, s.answer, s.talk, func(w io.Writer) error { return manualPage(w, c.Root()) })
		},
	}
	c.Flags().StringVarP(&out, "out", "o", "", "write the manual page to `FILE`")
	return c
}

// documented are the program itself and its commands, in the order of its help.
func documented(root *cobra.Command) []*cobra.Command {
	list := []*cobra.Command{root}
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() && c.Name() != "completion" {
			list = append(list, c)
		}
	}
	return list
}

// manualText writes the help of every command.
func manualText(w io.Writer, root *cobra.Command) error {
	for i, c := range documented(root) {
		rule := ""
		if i > 0 {
			rule = "\n" + strings.Repeat("-", 78) + "\n\n"
		}
		c.InitDefaultHelpFlag()
		if _, err := io.WriteString(w, rule+strings.TrimRight(strings.TrimSpace(c.Long)+"\n\n"+c.UsageString(), "\n")+"\n"); err != nil {
			return err
		}
	}
	return nil
}

// manualPage writes the same for man. It bears no date: it goes with its program.
func manualPage(w io.Writer, root *cobra.Command) error {
	var b strings.Builder
	b.WriteString(".TH BLANKOFF 1\n.SH NAME\nblankoff \\- " + roff(strings.ToLower(root.Short[:1])+root.Short[1:]) + "\n.SH SYNOPSIS\n")
	all := documented(root)
	for _, c := range all[1:] {
		b.WriteString(".B " + roff(c.UseLine()) + "\n.br\n")
	}
	long, codes, _ := strings.Cut(root.Long, "Exit codes:\n")
	b.WriteString(".SH DESCRIPTION\n" + filled(long))
	for _, c := range all[1:] {
		about, _, _ := strings.Cut(c.Long, "Exit codes:\n")
		b.WriteString(".SH " + roff(strings.ToUpper(c.Name())) + "\n" + filled(about))
		writeFlags(&b, c)
		b.WriteString(".PP\n" + asTyped(c.Example))
	}
	b.WriteString(".SH OPTIONS OF ALL COMMANDS\n")
	writeFlags(&b, root)
	b.WriteString(".SH EXIT STATUS\n" + asTyped(codes) + ".SH EXAMPLES\n" + asTyped(root.Example))
	_, err := io.WriteString(w, b.String())
	return err
}

var flagName = regexp.MustCompile(`(?m)^ +(?:-[a-zA-Z], )?--([a-z0-9-]+)`)

// flagsOf are the names of a command's own flags, in the order of its help.
func flagsOf(c *cobra.Command) (names []string) {
	for _, m := range flagName.FindAllStringSubmatch(c.LocalFlags().FlagUsages(), -1) {
		names = append(names, m[1])
	}
	return names
}

// flagParts is what a flag's help says of it: "-o, --out", FILE, and what it is
// for.
func flagParts(c *cobra.Command, name string) (spelt, value, about string) {
	f := c.LocalFlags().Lookup(name)
	spelt, about = "--"+f.Name, f.Usage
	if f.Shorthand != "" {
		spelt = "-" + f.Shorthand + ", " + spelt
	}
	if parts := strings.SplitN(f.Usage, "`", 3); len(parts) == 3 {
		value, about = parts[1], strings.Join(parts, "")
	} else if t := f.Value.Type(); t != "bool" {
		value = "WORD"
		if strings.Contains(t, "float") || strings.Contains(t, "int") {
			value = "NUMBER"
		}
	}
	if f.DefValue != "" && f.DefValue != "false" && f.DefValue != "[]" && f.DefValue != "0" {
		about += fmt.Sprintf(" (default %s)", f.DefValue)
	}
	return spelt, value, about
}

// writeFlags writes a paragraph for each flag.
func writeFlags(b *strings.Builder, c *cobra.Command) {
	for _, name := range flagsOf(c) {
		spelt, value, about := flagParts(c, name)
		b.WriteString(".TP\n.B " + roff(strings.TrimSpace(spelt+" "+value)) + "\n" + roff(about) + "\n")
	}
}

// filled is text that man may break anew; empty lines part paragraphs.
func filled(text string) string {
	return strings.ReplaceAll(roff(strings.TrimSpace(text)), "\n\n", "\n.PP\n") + "\n"
}

// asTyped is text that stays as it is.
func asTyped(text string) string { return ".nf\n" + roff(strings.Trim(text, "\n")) + "\n.fi\n" }

// roff masks what man would take for its own: backslashes, minus signs, and
// points and apostrophes that begin a line.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(text)
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'") {
			lines[i] = `\&` + line
		}
	}
	return strings.Join(lines, "\n")
}
