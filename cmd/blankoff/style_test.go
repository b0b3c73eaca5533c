package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The style sheet of messages: an error or a fault begins in lower case (unless
// with a name, a sign or a value), ends without a full stop, says what is wrong in
// plain words and what to do, and neither begs nor shouts.
var (
	saysError = map[string]bool{"New": true, "Errorf": true, "Fault": true, "Problem": true, "fault": true, "refuse": true, "Require": true, "bad": true}
	notOurs   = regexp.MustCompile(`(?i)\b(invalid|illegal|please|sorry|oops|failed to|unable to|cannot|could not|bad value|wrong value|abort|fatal|unexpected|must not|error:)\b|!$|! `)
	opensBig  = regexp.MustCompile(`^(CSV|TSV|XLSX|TOML|JSON|PDF|UTF-16|EN|XML|RFC|ISO|S\d)\b`)
)

// messages calls f with every text that an error or a fault is made of.
func messages(t *testing.T, f func(at, text string)) {
	t.Helper()
	fset := token.NewFileSet()
	eachSource(t, func(path string) {
		file, err := parser.ParseFile(fset, filepath.Join("..", "..", path), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		literals := func(list ...ast.Expr) {
			for _, e := range list {
				ast.Inspect(e, func(n ast.Node) bool {
					if _, isCall := n.(*ast.CallExpr); isCall && n != e {
						return false // looked at by itself
					}
					if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
						if text, err := strconv.Unquote(lit.Value); err == nil && strings.Contains(text, " ") {
							f(path+":"+strconv.Itoa(fset.Position(lit.Pos()).Line), text)
						}
					}
					return true
				})
			}
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				name := ""
				switch fun := n.Fun.(type) {
				case *ast.SelectorExpr:
					name = fun.Sel.Name
				case *ast.Ident:
					name = fun.Name
				}
				if saysError[name] {
					literals(n.Args...)
				}
			case *ast.CompositeLit:
				if id, ok := n.Type.(*ast.Ident); ok && (id.Name == "hint" || strings.HasSuffix(id.Name, "Fault") || id.Name == "Problem") {
					for _, e := range n.Elts {
						if kv, ok := e.(*ast.KeyValueExpr); ok {
							e = kv.Value
						}
						literals(e)
					}
				}
			}
			return true
		})
	})
}

func TestMessagesKeepToTheStyle(t *testing.T) {
	n := 0
	messages(t, func(at, text string) {
		n++
		if m := notOurs.FindString(text); m != "" {
			t.Errorf("%s: %q in %q: say what is wrong in plain words and what to do", at, m, text)
		}
		if strings.HasSuffix(text, ".") {
			t.Errorf("%s: %q ends with a full stop", at, text)
		}
		if c := text[0]; c >= 'A' && c <= 'Z' && !opensBig.MatchString(text) {
			t.Errorf("%s: %q begins with a capital", at, text)
		}
		if strings.Contains(text, "  ") || strings.Contains(text, " ;") || strings.Contains(text, " ,") || strings.Contains(text, "\t") {
			t.Errorf("%s: %q has white space where none belongs", at, text)
		}
	})
	if n < 250 {
		t.Errorf("only %d messages found", n)
	}
	t.Logf("%d messages", n)
}

// What the packages below say of flags is said in our words too.
func TestFlagMessages(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule})
	for line, want := range map[string]string{
		"plan good.csv --headroom lots": `--headroom "lots": expected a number`, "plan good.csv --seed -1": `--seed "-1": expected a whole number`, "plan good.csv --hold-both=perhaps": `--hold-both "perhaps": expected no value`,
		"takeoff good.csv --nothing": "--nothing", "plan good.csv --rig": "--rig", "plan good.csv --headrooms": "--headrooms", "compare good.csv --headrooms 1,x": `--headrooms "1,x": expected a number`,
	} {
		code, _, talk := typed(t, line)
		if code != exitMisuse || !strings.Contains(talk, want) || notOurs.MatchString(talk) || strings.Contains(talk, "strconv") {
			t.Errorf("%s: exit %d, %q", line, code, talk)
		}
	}
}
