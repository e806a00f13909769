package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"wardleaf/internal/assemble"
	"wardleaf/internal/check"
	"wardleaf/internal/finding"
	"wardleaf/internal/publish"
)

var checkFormats = []string{"text", "json", "sarif", "junit"}

func checkCommand(s *settings) *cobra.Command {
	var format, out, explain string
	var notes, fix bool
	c := &cobra.Command{
		Use:   "check",
		Short: "Run every rule over the pack and say what is wrong, why it matters and how to mend it",
		Long: `Check runs every rule over the pack, the pages of its pieces included, and writes
nothing but its findings. Each gives file, line and column, what is wrong, why it
matters and how to mend it. With --explain it tells about one rule instead.

With --fix it first mends in place what is mechanical: a space between an amount and
its unit, a hidden character, digits of another script. It changes no amount and no
word; those are for a person to decide.`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if c.Flags().Changed("explain") {
				text, err := explainRule(explain)
				if err != nil {
					return err
				}
				return deliver(c, out, []byte(text))
			}
			if !slices.Contains(checkFormats, format) {
				return fmt.Errorf("--format %s: choose text, json, sarif or junit", format)
			}
			o, err := s.options()
			if err != nil {
				return err
			}
			if fix {
				if err := mend(c, s, o); err != nil {
					return err
				}
			}
			r, err := assemble.Run(o) // with no folder to write to
			if err != nil {
				return err
			}
			shown := r.Findings
			if format == "text" && !notes {
				shown = slices.DeleteFunc(slices.Clone(shown), func(f finding.Finding) bool { return f.Level == finding.Note || f.Silenced != "" })
			}
			text, err := printed(shown, format, o.Name)
			if err != nil {
				return err
			}
			if err := deliver(c, out, text); err != nil {
				return err
			}
			errs, warns := finding.Count(r.Findings, finding.Error), finding.Count(r.Findings, finding.Warning)
			if !s.quiet && (format == "text" || out != "-") {
				tail := ""
				if n := finding.Count(r.Findings, finding.Note); n > 0 {
					tail = ", " + count(n, "note")
				}
				if n := silenced(r.Findings); n > 0 {
					tail += fmt.Sprintf(", %d silenced", n)
				}
				if tail != "" && !notes {
					tail += " (--notes shows them)"
				}
				fmt.Fprintf(c.OutOrStdout(), "%s: %s, %s%s\n", o.Name, count(errs, "error"), count(warns, "warning"), tail)
			}
			if errs > 0 || s.strict && warns > 0 {
				return errPack
			}
			return nil
		},
	}
	c.Flags().StringVar(&format, "format", "text", "text, json, sarif or junit")
	c.Flags().StringVarP(&out, "output", "o", "-", "file to write to, - for standard output")
	c.Flags().BoolVar(&notes, "notes", false, "show notes, too: what may be better, and hurts nobody as it is")
	c.Flags().BoolVar(&fix, "fix", false, "first mend in place what can be mended without anyone having to decide")
	c.Flags().StringVar(&explain, "explain", "", "tell about one rule, by name, such as caution-missing")
	c.MarkFlagsMutuallyExclusive("explain", "format")
	c.MarkFlagsMutuallyExclusive("explain", "fix")
	return c
}

// printed returns findings in a format of checkFormats. name is that of the pack.
func printed(fs []finding.Finding, format, name string) ([]byte, error) {
	var b bytes.Buffer
	var err error
	switch format {
	case "json":
		err = finding.JSON(&b, fs)
	case "sarif":
		folder := name // addresses in a log are relative: to this folder, or else to the pack
		if name == starterName || !filepath.IsLocal(name) {
			folder = ""
		}
		err = finding.SARIF(&b, fs, ruleDocs(), folder)
	case "junit":
		err = finding.JUnit(&b, fs, name)
	default:
		err = finding.Text(&b, fs, name)
	}
	return b.Bytes(), err
}

// deliver writes a single output to a file, whole or not at all, or to standard output.
func deliver(c *cobra.Command, out string, text []byte) error {
	if out == "-" {
		_, err := c.OutOrStdout().Write(text)
		return err
	}
	return publish.File(out, text)
}

func ruleDocs() []finding.RuleDoc {
	var docs []finding.RuleDoc
	for _, r := range check.All() {
		docs = append(docs, finding.RuleDoc{
			Name: r.Name, Title: r.Title, Why: r.Why, Level: r.Level, Before: r.Before, After: r.After,
		})
	}
	return docs
}

func explainRule(name string) (string, error) {
	var names []string
	for _, d := range ruleDocs() {
		if d.Name == name {
			return d.Explain(), nil
		}
		names = append(names, d.Name)
	}
	choose := "choose one of " + strings.Join(names, ", ")
	if near := finding.Nearest(name, names); near != "" {
		choose = "perhaps " + near + " was meant"
	}
	return "", fmt.Errorf("--explain %s: there is no rule of that name, so nothing can be told about it; %s", name, choose)
}

// mendings is how often --fix starts again: mending one thing can show another, as
// when a file can be read at last.
const mendings = 10

// mend makes the edits that findings carry in the files of the pack.
func mend(c *cobra.Command, s *settings, o assemble.Options) error {
	if s.pack == "" && o.Name == starterName {
		return fmt.Errorf("--fix: the starter pack in the program cannot be mended, since nothing can be written to it; make a pack with: wardleaf start DIR, and give it with --pack DIR")
	}
	done, files := 0, map[string]bool{}
	for range mendings {
		r, err := assemble.Run(o)
		if err != nil {
			return err
		}
		mended := finding.Mend(r.Findings)
		if len(mended) == 0 {
			break
		}
		for _, m := range mended {
			path := filepath.Join(filepath.FromSlash(o.Name), filepath.FromSlash(m.File.Path))
			if err := replaceMended(path, m); err != nil {
				return err
			}
			files[path] = true
			done += m.Count
		}
	}
	if !s.quiet && done > 0 {
		fmt.Fprintf(c.ErrOrStderr(), "mended %s in %s; read them again before you print\n", count(done, "finding"), count(len(files), "file"))
	}
	return nil
}

// replaceMended writes a mended file in the place of the one that was read, unless it
// has been changed since. A byte order mark before the text stays.
func replaceMended(path string, m finding.Mended) error {
	now, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("cannot read the file again: %w; it was not mended", err)
	}
	mark, ok := bytes.CutSuffix(now, m.File.Bytes)
	if !ok {
		return fmt.Errorf("%s was changed while the pack was checked, and was not mended; run the command again", filepath.ToSlash(path))
	}
	return publish.Replace(path, slices.Concat(mark, m.Bytes))
}

func silenced(fs []finding.Finding) int {
	n := 0
	for _, f := range fs {
		if f.Silenced != "" {
			n++
		}
	}
	return n
}
