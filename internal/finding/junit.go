package finding

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"unicode"
)

// The JUnit form has no standard; these are the elements and attributes that readers
// of it agree on.
type (
	junitSuites struct {
		XMLName  xml.Name      `xml:"testsuites"`
		Name     string        `xml:"name,attr"`
		Tests    int           `xml:"tests,attr"`
		Failures int           `xml:"failures,attr"`
		Errors   int           `xml:"errors,attr"`
		Suites   []*junitSuite `xml:"testsuite"`
	}
	junitSuite struct {
		Name     string      `xml:"name,attr"`
		Tests    int         `xml:"tests,attr"`
		Failures int         `xml:"failures,attr"`
		Errors   int         `xml:"errors,attr"`
		Skipped  int         `xml:"skipped,attr"`
		Time     int         `xml:"time,attr"`
		Cases    []junitCase `xml:"testcase"`
	}
	junitCase struct {
		Name    string        `xml:"name,attr"`
		Class   string        `xml:"classname,attr"`
		Time    int           `xml:"time,attr"`
		Failure *junitFailure `xml:"failure"`
		Out     string        `xml:"system-out,omitempty"`
	}
	junitFailure struct {
		Message string `xml:"message,attr"`
		Type    string `xml:"type,attr"` // error or warning
		Text    string `xml:",chardata"`
	}
)

// JUnit prints findings as JUnit XML: a suite for each file, in the order in which
// the files come first, and a case for each finding. Errors and warnings fail; a note
// passes and says what it has to say. name is that of the pack and stands before
// every path. "errors" counts tests that could not run, of which there are none.
func JUnit(w io.Writer, fs []Finding, name string) error {
	all := junitSuites{Name: legal(name)}
	suites := map[string]*junitSuite{}
	for _, f := range fs {
		file := legal(f.Place.file(name))
		s := suites[file]
		if s == nil {
			s = &junitSuite{Name: file}
			suites[file] = s
			all.Suites = append(all.Suites, s)
		}
		c := junitCase{Name: f.Rule + ": " + f.What, Class: file}
		if f.Place.positioned() {
			line, column := f.Place.File.Position(f.Place.Span.Start)
			c.Name = fmt.Sprintf("%d:%d: %s", line, column, c.Name)
		}
		c.Name = legal(c.Name)
		var long bytes.Buffer
		if err := Text(&long, []Finding{f}, name); err != nil {
			return err
		}
		if f.Level == Note {
			c.Out = legal(long.String())
		} else {
			c.Failure = &junitFailure{legal(f.What), f.Level.String(), legal(long.String())}
			s.Failures++
			all.Failures++
		}
		s.Tests++
		all.Tests++
		s.Cases = append(s.Cases, c)
	}
	b, err := xml.MarshalIndent(all, "", "  ")
	if err != nil {
		return err
	}
	_, err = w.Write([]byte(xml.Header + string(b) + "\n"))
	return err
}

// legal leaves out what XML 1.0 does not allow, and other control characters but for
// line end and tab.
func legal(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return r
		case unicode.IsControl(r) || r == 0xFFFE || r == 0xFFFF:
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}
