package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/rivo/uniseg"
	"github.com/spf13/cobra"

	"wardleaf/internal/assemble"
	"wardleaf/internal/review"
)

func matrixCommand(s *settings) *cobra.Command {
	return &cobra.Command{
		Use:   "matrix",
		Short: "Show how far every module has come in every language",
		Long: `Matrix shows a table of modules by languages: how far each translation has come, how
many of its blocks are behind the source, and what the checker found. The site has the
same table for reviewers, in reviewers.html.`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			o, err := s.options()
			if err != nil {
				return err
			}
			r, err := assemble.Run(o) // with no folder to write to
			if err != nil {
				return err
			}
			matrixTable(c.OutOrStdout(), review.NewMatrix(r.Pack, r.Findings), r.Pack.Source)
			return nil
		},
	}
}

// matrixKey explains the cells.
const matrixKey = `
source, initial, translated, reviewed, final: how far it has come; + signed off as it stands
n new, n behind (the source changed), n changed (the translation changed), n! errors, n? warnings
`

func matrixTable(w io.Writer, m review.Matrix, source string) {
	table := [][]string{append([]string{"module"}, m.Langs...)}
	for _, row := range m.Rows {
		line := []string{row.Module.ID}
		for _, c := range row.Cells {
			line = append(line, cellText(c))
		}
		table = append(table, line)
	}
	widths := make([]int, len(table[0]))
	for _, line := range table {
		for i, text := range line {
			widths[i] = max(widths[i], uniseg.StringWidth(text))
		}
	}
	for _, line := range table {
		var b strings.Builder
		for i, text := range line {
			b.WriteString(text + strings.Repeat(" ", widths[i]-uniseg.StringWidth(text)+2))
		}
		fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
	}
	fmt.Fprint(w, matrixKey)
}

// cellText is one cell in as few characters as say it all.
func cellText(c review.Cell) string {
	text := c.State
	switch {
	case c.Missing:
		return "missing"
	case c.Source:
		text = "source"
	}
	if c.Signed {
		text += "+"
	}
	for _, n := range []struct {
		n    int
		mark string
	}{{c.New, " new"}, {c.Behind, " behind"}, {c.Changed, " changed"}, {c.Errors, "!"}, {c.Warnings, "?"}} {
		if n.n > 0 {
			text += fmt.Sprintf(" %d%s", n.n, n.mark)
		}
	}
	return text
}
