package main

import (
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"wardleaf"
	"wardleaf/internal/assemble"
	"wardleaf/internal/measure"
)

// settings are the options that mean the same in every command.
type settings struct {
	pack   string
	langs  []string
	pieces []string
	paper  string
	tile   string
	ink    string
	far    string
	today  string
	strict bool
	jobs   int
	quiet  bool
}

func root() *cobra.Command {
	s := &settings{}
	c := &cobra.Command{
		Use:   "wardleaf",
		Short: "Teaching material for newborn care, in every language, checked and ready to print",
		Long: `Wardleaf takes a pack of lesson modules about the care of small babies, checks it,
and assembles it in every language into a site and into pieces ready to print.

Exit codes: 0 done; 1 the pack has errors; 2 the command line or the environment is wrong.`,
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          cobra.NoArgs,
	}
	f := c.PersistentFlags()
	f.StringVar(&s.pack, "pack", "", "folder with pack.yaml (default: this folder, else its content/, else the starter pack in the program)")
	f.StringSliceVar(&s.langs, "lang", nil, "only these languages, such as en,hi")
	f.StringSliceVar(&s.pieces, "piece", nil, "only these pieces, such as booklet,handout")
	f.StringVar(&s.paper, "paper", "a4", "paper of pieces that are not folded: a4, letter, a3 or a2")
	f.StringVar(&s.far, "distance", "2m", "how far off wall checklists and flip charts are read, in metres")
	f.StringVar(&s.tile, "tile", "", "also lay wall checklists over sheets of a4 or letter, to be glued together")
	f.StringVar(&s.ink, "ink", "colour", "colour or black")
	f.StringVar(&s.today, "today", "", "date to judge review dates by, as YYYY-MM-DD (default: SOURCE_DATE_EPOCH, else the clock)")
	f.BoolVar(&s.strict, "strict", false, "let warnings stop the work, too")
	f.IntVar(&s.jobs, "jobs", runtime.NumCPU(), "pieces to work on at once")
	f.BoolVar(&s.quiet, "quiet", false, "say nothing but findings and errors")
	c.AddCommand(assembleCommand(s), checkCommand(s), startCommand(s), signoffCommand(s), dueCommand(s), redlineCommand(s),
		basisCommand(s), handoffCommand(s), handbackCommand(s), sheetCommand(s), matrixCommand(s), languageCommand(s))
	return c
}

var papers = map[string]measure.Size{"a2": measure.A2, "a3": measure.A3, "a4": measure.A4, "letter": measure.Letter}

// options turns the settings into what assembly wants.
func (s *settings) options() (assemble.Options, error) {
	o := assemble.Options{
		Langs: s.langs, Pieces: s.pieces, Strict: s.strict, Jobs: s.jobs,
		Assets: assemble.Assets{Locales: wardleaf.Locales(), Templates: wardleaf.Templates(), Fonts: wardleaf.Fonts()},
	}
	if s.jobs < 1 {
		return o, fmt.Errorf("--jobs %d: give 1 or more", s.jobs)
	}
	var known bool
	if o.Paper, known = papers[s.paper]; !known {
		return o, fmt.Errorf("--paper %s: choose a4, letter, a3 or a2", s.paper)
	}
	if o.Tile, known = papers[s.tile]; s.tile != "" && !known {
		return o, fmt.Errorf("--tile %s: choose a4 or letter", s.tile)
	}
	metres, err := strconv.ParseFloat(strings.TrimSuffix(s.far, "m"), 64)
	if err != nil || !(metres >= 0.5 && metres <= 10) {
		return o, fmt.Errorf("--distance %s: give metres from 0.5 to 10, such as 2m", s.far)
	}
	o.Distance = measure.MM(metres * 1000)
	if o.Black = s.ink == "black"; !o.Black && s.ink != "colour" {
		return o, fmt.Errorf("--ink %s: choose colour or black", s.ink)
	}
	if o.Today, err = s.date(); err != nil {
		return o, err
	}
	o.Pack, o.Name, err = openPack(s.pack)
	return o, err
}

// date is the day that review dates are judged by, as a date without a time of day.
func (s *settings) date() (time.Time, error) {
	if s.today != "" {
		t, err := time.Parse(time.DateOnly, s.today)
		if err != nil {
			return t, fmt.Errorf("--today %s: write a date as YYYY-MM-DD, such as 2026-11-25", s.today)
		}
		return t, nil
	}
	now := time.Now()
	if e := os.Getenv("SOURCE_DATE_EPOCH"); e != "" {
		n, err := strconv.ParseInt(e, 10, 64)
		if err != nil {
			return now, fmt.Errorf("SOURCE_DATE_EPOCH=%s: give seconds since 1970 as a whole number", e)
		}
		now = time.Unix(n, 0).UTC()
	}
	y, m, d := now.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC), nil
}
