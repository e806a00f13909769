package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"wardleaf/internal/assemble"
	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/publish"
	"wardleaf/internal/review"
	"wardleaf/internal/translate"
)

func signoffCommand(s *settings) *cobra.Command {
	var role, date string
	c := &cobra.Command{
		Use:   "signoff MODULE --lang LANG --role ROLE",
		Short: "Record that a clinician has read a lesson and approves it",
		Long: `Signoff records in the module's module.yaml that a clinician has read its lesson in
one language and approves exactly what stands there: the words, the numbers they link
to and the figures. When any of them is changed the sign-off no longer stands, and the
pages say again that they await review. A lesson with errors cannot be signed off.

Give the role of the reviewer, not a name: a pack may be published.`,
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			o, err := s.options()
			if err != nil {
				return err
			}
			if s.pack == "" && o.Name == starterName {
				return fmt.Errorf("the starter pack in the program cannot be signed off, since nothing can be written to it; make a pack with: wardleaf start DIR, and give it with --pack DIR")
			}
			if len(o.Langs) != 1 {
				return fmt.Errorf("a sign-off is for one language, since only what was read can be approved; give it with --lang, such as --lang en")
			}
			off := pack.SignOff{Role: role, Lang: o.Langs[0], Date: pack.Date{Time: o.Today}}
			if date != "" {
				if off.Date.Time, err = time.Parse(time.DateOnly, date); err != nil {
					return fmt.Errorf("--date %s: write a date as YYYY-MM-DD, such as 2026-11-25", date)
				}
			}
			if off.Date.Time.After(o.Today) {
				return fmt.Errorf("--date %s has not come yet; give the day on which the lesson was read", date)
			}
			return signOff(c, s, o, args[0], off)
		},
	}
	c.Flags().StringVar(&role, "role", "", `what the reviewer is, such as "Neonatal nurse in charge"`)
	c.Flags().StringVar(&date, "date", "", "day on which the lesson was read, as YYYY-MM-DD (default: today)")
	if err := c.MarkFlagRequired("role"); err != nil {
		panic(err) // the flag is named two lines above
	}
	return c
}

// signOff checks the pack and adds the sign-off to the module's record.
func signOff(c *cobra.Command, s *settings, o assemble.Options, module string, off pack.SignOff) error {
	o.Pieces, o.Strict = nil, false // every page is checked, whatever the options
	r, err := assemble.Run(o)       // with no folder to write to
	if err != nil {
		return err
	}
	m, err := moduleOf(r.Pack, module)
	if err != nil {
		return err
	}
	var errs []finding.Finding
	for _, f := range r.Findings {
		if f.Level == finding.Error && (f.Module == "" || f.Module == module) && (f.Lang == "" || f.Lang == off.Lang) {
			errs = append(errs, f)
		}
	}
	if len(errs) > 0 {
		if err := finding.Text(c.ErrOrStderr(), errs, o.Name); err != nil {
			return err
		}
		fmt.Fprintf(c.ErrOrStderr(), "nothing was signed off: %s in %s; mend them, and have the lesson read again\n", count(len(errs), "error"), module)
		return errPack
	}
	if off.Digest = translate.Digest(r.Pack, m, off.Lang); off.Digest == "" {
		return fmt.Errorf("%s has no lesson in %s, so there is nothing to sign off; write %s/%s.md first", module, off.Lang, module, off.Lang)
	}
	path := filepath.Join(filepath.FromSlash(o.Name), module, "module.yaml")
	already := slices.ContainsFunc(m.Record.SignOffs, func(b pack.SignOff) bool {
		return b.Role == off.Role && b.Lang == off.Lang && b.Digest == off.Digest && b.Date.Time.Equal(off.Date.Time)
	})
	if !already {
		if err := writeSignOff(path, m, off); err != nil {
			return err
		}
	}
	if s.quiet {
		return nil
	}
	done := "signed off"
	if already {
		done = "signed off already, nothing changed"
	}
	l := m.Lessons[off.Lang]
	numbers, figures := translate.Covers(r.Pack, l)
	fmt.Fprintf(c.OutOrStdout(), "%s: %s (%s)\n  role    %s\n  date    %s\n  covers  %s/%s, %s, %s\n  digest  %s\n  kept in %s\nAny change to what it covers voids it.\n",
		done, m.Title(off.Lang), off.Lang, off.Role, off.Date.Time.Format(time.DateOnly),
		filepath.ToSlash(o.Name), l.File.Path, count(len(numbers), "number"), count(len(figures), "figure"), off.Digest, filepath.ToSlash(path))
	return nil
}

func writeSignOff(path string, m *pack.Module, off pack.SignOff) error {
	record, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("cannot read the record again: %w; nothing was signed off", err)
	}
	if !bytes.HasSuffix(record, m.File.Bytes) { // a byte order mark may stand before them
		return fmt.Errorf("%s was changed while the pack was checked, and nothing was signed off; run the command again", filepath.ToSlash(path))
	}
	if record, err = review.Append(m.ID, record, off); err != nil {
		return err
	}
	return publish.Replace(path, record)
}

func moduleOf(p *pack.Pack, id string) (*pack.Module, error) {
	var ids []string
	for _, m := range p.Modules {
		if m.ID == id {
			return m, nil
		}
		ids = append(ids, m.ID)
	}
	return nil, fmt.Errorf("the pack has no module %q; %suse one of: %s", id, finding.Meant(id, ids), strings.Join(ids, ", "))
}
