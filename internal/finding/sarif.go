package finding

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"
	"net/url"
	"path"
	"strings"
)

// The parts of SARIF 2.1.0 (OASIS) that a log of ours holds.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool       sarifTool     `json:"tool"`
		ColumnKind string        `json:"columnKind"`
		Results    []sarifResult `json:"results"`
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name  string      `json:"name"`
		Rules []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID      string       `json:"id"`
		Short   sarifMessage `json:"shortDescription"`
		Full    sarifMessage `json:"fullDescription"`
		Help    sarifMessage `json:"help"`
		Default sarifDefault `json:"defaultConfiguration"`
	}
	sarifDefault struct {
		Level string `json:"level"`
	}
	sarifMessage struct {
		Text string `json:"text"`
	}
	sarifResult struct {
		RuleID       string             `json:"ruleId"`
		RuleIndex    *int               `json:"ruleIndex,omitempty"`
		Level        string             `json:"level"`
		Message      sarifMessage       `json:"message"`
		Locations    []sarifLocation    `json:"locations,omitempty"`
		Related      []sarifLocation    `json:"relatedLocations,omitempty"`
		Fingerprints map[string]string  `json:"partialFingerprints"`
		Properties   map[string]string  `json:"properties,omitempty"`
		Suppressions []sarifSuppression `json:"suppressions,omitempty"`
		Fixes        []sarifFix         `json:"fixes,omitempty"`
	}
	sarifSuppression struct {
		Kind          string `json:"kind"` // external: by pack.yaml, not in the lesson
		Justification string `json:"justification"`
	}
	sarifFix struct {
		Description sarifMessage  `json:"description"`
		Changes     []sarifChange `json:"artifactChanges"`
	}
	sarifChange struct {
		Artifact     sarifArtifact      `json:"artifactLocation"`
		Replacements []sarifReplacement `json:"replacements"`
	}
	sarifReplacement struct {
		Deleted  sarifRegion   `json:"deletedRegion"`
		Inserted *sarifContent `json:"insertedContent,omitempty"`
	}
	sarifContent struct {
		Text string `json:"text"`
	}
	sarifLocation struct {
		ID       *int           `json:"id,omitempty"`
		Physical *sarifPhysical `json:"physicalLocation,omitempty"`
		Message  *sarifMessage  `json:"message,omitempty"`
	}
	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   *sarifRegion  `json:"region,omitempty"`
	}
	sarifArtifact struct {
		URI string `json:"uri"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
		EndLine     int `json:"endLine"`
		EndColumn   int `json:"endColumn"` // of the first code point after the place
	}
)

const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// fingerprintName has a version, to be raised when the way of making one changes.
const fingerprintName = "ruleFileLine/v1"

// SARIF prints findings as a SARIF 2.1.0 log, in the order given, with the rules they
// may come from. The log's addresses are relative; folder, which may be empty, stands
// before every path. Columns count code points.
func SARIF(w io.Writer, fs []Finding, rules []RuleDoc, folder string) error {
	run := sarifRun{
		Tool:       sarifTool{sarifDriver{Name: "wardleaf", Rules: []sarifRule{}}},
		ColumnKind: "unicodeCodePoints",
		Results:    []sarifResult{},
	}
	index := map[string]int{}
	for i, d := range rules {
		index[d.Name] = i
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRule{
			ID: d.Name, Short: sarifMessage{d.Title + "."}, Full: sarifMessage{d.Why},
			Help: sarifMessage{d.Explain()}, Default: sarifDefault{d.Level.String()},
		})
	}
	seen := map[string]int{}
	for _, f := range fs {
		r := sarifResult{
			RuleID: f.Rule, Level: f.Level.String(),
			Message:    sarifMessage{fmt.Sprintf("%s\nWhy: %s\nMend: %s", f.What, f.Why, f.Mend)},
			Properties: map[string]string{},
		}
		if i, known := index[f.Rule]; known {
			r.RuleIndex = &i
		}
		if p := f.Place.sarif(folder); p != nil {
			r.Locations = []sarifLocation{{Physical: p}}
		}
		for i, rel := range f.Related {
			r.Related = append(r.Related, sarifLocation{
				ID: &i, Physical: rel.Place.sarif(folder), Message: &sarifMessage{rel.Text},
			})
		}
		mark := f.fingerprint()
		seen[mark]++
		r.Fingerprints = map[string]string{fingerprintName: fmt.Sprintf("%s:%d", mark, seen[mark])}
		if f.Lang != "" {
			r.Properties["language"] = f.Lang
		}
		if f.Module != "" {
			r.Properties["module"] = f.Module
		}
		if f.Silenced != "" {
			r.Suppressions = []sarifSuppression{{"external", f.Silenced}}
		}
		if len(f.Edits) > 0 {
			r.Fixes = []sarifFix{f.fix(folder)}
		}
		run.Results = append(run.Results, r)
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(sarifLog{sarifSchema, "2.1.0", []sarifRun{run}})
}

// fix is what the edits of a finding do.
func (f Finding) fix(folder string) sarifFix {
	change := sarifChange{Artifact: f.Place.sarif(folder).Artifact}
	for _, e := range f.Edits {
		r := sarifReplacement{}
		r.Deleted.StartLine, r.Deleted.StartColumn = f.Place.File.Position(e.Span.Start)
		r.Deleted.EndLine, r.Deleted.EndColumn = f.Place.File.Position(e.Span.End)
		if e.Text != "" {
			r.Inserted = &sarifContent{e.Text}
		}
		change.Replacements = append(change.Replacements, r)
	}
	return sarifFix{sarifMessage{f.Mend}, []sarifChange{change}}
}

func (p Place) sarif(folder string) *sarifPhysical {
	if p.File == nil {
		return nil
	}
	address := url.URL{Path: path.Join(folder, p.File.Path)}
	ph := &sarifPhysical{Artifact: sarifArtifact{address.String()}}
	if p.positioned() {
		ph.Region = &sarifRegion{}
		ph.Region.StartLine, ph.Region.StartColumn = p.File.Position(p.Span.Start)
		ph.Region.EndLine, ph.Region.EndColumn = p.File.Position(p.Span.End)
	}
	return ph
}

// fingerprint is a digest of the rule, the path and the text of the line, so that
// lines put in or taken out elsewhere do not make an old finding look new.
func (f Finding) fingerprint() string {
	text := ""
	if f.Place.positioned() {
		line, _ := f.Place.File.Position(f.Place.Span.Start)
		text = strings.TrimSpace(f.Place.File.Line(line))
	}
	sum := sha256.Sum256([]byte(f.Rule + "\x00" + f.path() + "\x00" + text))
	return hex.EncodeToString(sum[:])
}
