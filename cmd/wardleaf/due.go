package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/rivo/uniseg"
	"github.com/spf13/cobra"

	"wardleaf/internal/finding"
	"wardleaf/internal/load"
	"wardleaf/internal/publish"
	"wardleaf/internal/review"
)

func dueCommand(s *settings) *cobra.Command {
	var within, ics string
	c := &cobra.Command{
		Use:   "due",
		Short: "List the lessons that must be read again soon, as a table or a calendar",
		Long: `Due lists the lessons whose review is overdue or due within a number of days, the
earliest first, and the languages that await a sign-off. With --ics it also writes the
reviews as a calendar file (iCalendar); taken into a calendar again later, its events
replace those from before.`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			o, err := s.options()
			if err != nil {
				return err
			}
			n, err := strconv.Atoi(strings.TrimSuffix(within, "d"))
			if err != nil || n < 0 || n > 36500 {
				return fmt.Errorf("--within %s: give days from 0 to 36500, such as 90d", within)
			}
			p, findings, err := load.Pack(o.Pack, o.Name)
			if err != nil {
				return err
			}
			rows := review.Due(p, o.Today, n)
			if ics != "" {
				if err := writeCalendar(c, ics, review.ICS(p, rows, o.Today), n); err != nil {
					return err
				}
			}
			if ics != "-" {
				dueTable(c.OutOrStdout(), rows, n)
			}
			// Dates may be missing from a pack that could not be read whole.
			if errs := finding.Count(findings, finding.Error); errs > 0 {
				fmt.Fprintf(c.ErrOrStderr(), "the pack could not be read whole, and reviews may be missing here: %s; wardleaf check shows them\n", count(errs, "error"))
				return errPack
			}
			return nil
		},
	}
	c.Flags().StringVar(&within, "within", "90d", "how many days ahead to look")
	c.Flags().StringVar(&ics, "ics", "", "also write a calendar to this file, - for standard output in place of the table")
	return c
}

// writeCalendar writes a calendar, unless there is nothing to put in it.
func writeCalendar(c *cobra.Command, name string, calendar []byte, within int) error {
	switch {
	case calendar == nil:
		_, err := fmt.Fprintf(c.ErrOrStderr(), "no calendar was written, since it would be empty: no review is due within %s; look further ahead with --within\n", count(within, "day"))
		return err
	case name == "-":
		_, err := c.OutOrStdout().Write(calendar)
		return err
	}
	if err := publish.File(name, calendar); err != nil {
		return fmt.Errorf("--ics: %w", err)
	}
	return nil
}

// dueTable writes rows in columns as wide as their widest cell on a terminal.
func dueTable(w io.Writer, rows []review.Row, within int) {
	if len(rows) == 0 {
		fmt.Fprintf(w, "no review is due within %s\n", count(within, "day"))
		return
	}
	table := [][]string{{"due", "days left", "state", "module", "awaits sign-off", "title"}}
	for _, r := range rows {
		due, days, unsigned := "-", "-", "-"
		if r.State != review.NoDate {
			due, days = r.Due.Format(time.DateOnly), fmt.Sprintf("%9d", r.Days)
		}
		if len(r.Unsigned) > 0 {
			unsigned = strings.Join(r.Unsigned, " ")
		}
		table = append(table, []string{due, days, string(r.State), r.Module, unsigned, r.Title})
	}
	widths := make([]int, len(table[0]))
	for _, row := range table {
		for i, cell := range row {
			widths[i] = max(widths[i], uniseg.StringWidth(cell))
		}
	}
	for _, row := range table {
		var b strings.Builder
		for i, cell := range row {
			b.WriteString(pad(cell, widths[i]) + "  ")
		}
		fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
	}
}
