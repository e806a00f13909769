package check

import "wardleaf/internal/finding"

// reading describes the rules that package load says while it reads, package exchange
// of a file that comes back from a translator, and assemble when it meets a language
// that it cannot print. They have no Run.
var reading = []*Rule{
	{
		Name: "basis-malformed", Title: "The record of what a translation was made from cannot be used", Level: finding.Error,
		Why:    "What has changed since the translation was made could not be told, and old advice would be printed as current.",
		Before: "title 0123456789ab\ntitle 89abcdef0123\n", After: "title 89abcdef0123\n",
	},
	{
		Name: "figure-unsafe", Title: "A picture holds more than a line drawing", Level: finding.Error,
		Why:    "A drawing with more in it than lines and shapes may not print, or may run a program on a page.",
		Before: "<svg><script>…</script></svg>\n", After: "<svg viewBox=\"0 0 10 10\"><path d=\"M1 1L9 9\"/></svg>\n",
	},
	{
		Name: "figure-unused", Title: "A picture lies in the pack that no lesson shows", Level: finding.Note,
		Why:    "It is not looked at in a review, and may be put into a lesson later by mistake.",
		Before: "figures/tuck.svg # and no lesson shows it\n", After: "![Tuck the edge in](figures/tuck.svg)\n",
	},
	{
		Name: "file-missing", Title: "A file that the pack needs is not there", Level: finding.Error,
		Why:    "The pack cannot be put together without it.",
		Before: "wrapping/ without module.yaml\n", After: "wrapping/module.yaml\n",
	},
	{
		Name: "file-not-text", Title: "A file is not UTF-8 text", Level: finding.Error,
		Why:    "Letters would come out wrong, or not at all, on paper.",
		Before: "a file saved in an older encoding\n", After: "the same file saved as UTF-8\n",
	},
	{
		Name: "file-too-complex", Title: "A file is too tangled to be read", Level: finding.Error,
		Why:    "No lesson needs it, and reading it would hold up everyone who prints.",
		Before: "> > > > > > > > > > > > > > deep\n", After: "> quoted\n",
	},
	{
		Name: "file-too-large", Title: "A file is larger than any lesson, record or drawing needs to be", Level: finding.Error,
		Why:    "A file of this size is nearly always a mistake, and it would hold up everyone who prints.",
		Before: "en.md of 10 MB\n", After: "en.md of 10 KB\n",
	},
	{
		Name: "file-unreadable", Title: "A file cannot be read", Level: finding.Error,
		Why:    "What it holds would be missing from every page.",
		Before: "en.md as a link to a file outside the pack\n", After: "en.md as an ordinary file\n",
	},
	{
		Name: "handback-malformed", Title: "A file that came back from a translator breaks its own format", Level: finding.Error,
		Why:    "What a file means that breaks its own format is a guess, and nothing of it is taken.",
		Before: "<!DOCTYPE xliff><xliff version=\"2.1\">\n", After: "<xliff version=\"2.1\">\n",
	},
	{
		Name: "handback-mismatch", Title: "A file that came back does not belong to this pack, or its blocks do not", Level: finding.Error,
		Why:    "A translation put in the wrong place teaches the wrong thing.",
		Before: "<unit id=\"steps.33.1\">\n", After: "<unit id=\"steps.3.1\">\n",
	},
	{
		Name: "handback-newer", Title: "A translation was changed in the pack since it was handed off", Level: finding.Warning,
		Why:    "Somebody's later correction would be lost without a word.",
		Before: "wardleaf handback hi.xlf # and hi.md was corrected meanwhile\n", After: "wardleaf handback hi.xlf --force wrapping/steps.3.1\n",
	},
	{
		Name: "handback-partial", Title: "A lesson came back with blocks missing that the pack has no translation of", Level: finding.Warning,
		Why:    "A lesson half in one language and half in another is not made.",
		Before: "79 of 80 blocks in state translated\n", After: "80 of 80 blocks in state translated\n",
	},
	{
		Name: "handback-stale", Title: "The source of a block has changed since it was handed off", Level: finding.Warning,
		Why:    "It translates what the source no longer says.",
		Before: "wardleaf handback hi.xlf # and en.md was changed meanwhile\n", After: "wardleaf handoff hi -o hi.xlf\n",
	},
	{
		Name: "handback-state", Title: "A block that came back is said to be done, and is not", Level: finding.Error,
		Why:    "A block that nobody has finished would be printed as a translation.",
		Before: "<segment state=\"translated\"><source>Rest.</source></segment>\n", After: "<segment state=\"initial\"><source>Rest.</source></segment>\n",
	},
	{
		Name: "handback-tag-lost", Title: "A tag of the source is lost, doubled or out of place in its translation", Level: finding.Error,
		Why:    "A tag stands for a number, a telephone, a source or a word in bold; a reader would be left without it.",
		Before: "Wash for <1>40 seconds</1>. -> 40 सेकंड हाथ धोएँ।\n", After: "Wash for <1>40 seconds</1>. -> <1>40 सेकंड</1> हाथ धोएँ।\n",
	},
	{
		Name: "handback-text", Title: "The words of a translation cannot be written into a lesson", Level: finding.Error,
		Why:    "The words could not be printed as the translator wrote them.",
		Before: "Give \\u202Egm 05\n", After: "Give 50 mg\n",
	},
	{
		Name: "hidden-control", Title: "An invisible control character stands in a file", Level: finding.Error,
		Why:    "It can make a line read otherwise than it is stored, so that a reviewer approves words that are not there.",
		Before: "Give \\u202Egm 05\n", After: "Give 50 mg\n",
	},
	{
		Name: "language-unknown", Title: "The program has no labels for a language of the pack", Level: finding.Error,
		Why:    "Headings, dates and page numbers would stand in another language than the lesson.",
		Before: "languages: [en, tlh]\n", After: "languages: [en]\n",
	},
	{
		Name: "module-unlisted", Title: "A module is not listed in pack.yaml", Level: finding.Warning,
		Why:    "It is left out of every page and every print.",
		Before: "modules: [feeding] # and there is a folder wrapping\n", After: "modules: [feeding, wrapping]\n",
	},
	{
		Name: "path-leaves-pack", Title: "A path leads out of the pack", Level: finding.Error,
		Why:    "What lies outside is not there on another computer, and may be private.",
		Before: "![Cloth](../../cloth.svg)\n", After: "![Cloth](figures/cloth.svg)\n",
	},
	{
		Name: "raw-html", Title: "A lesson holds HTML", Level: finding.Error,
		Why:    "It cannot be printed, and on a page it could run a program.",
		Before: "Press <b>gently</b>.\n", After: "Press **gently**.\n",
	},
	{
		Name: "milk-table", Title: "The ward's feeding table does not agree with itself", Level: finding.Error,
		Why:    "A wrong volume on the wall is given to every baby until somebody notices.",
		Before: "ml-per-feed: [12, 18, 22, 16]\n", After: "ml-per-feed: [12, 18, 22, 26]\n",
	},
	{
		Name: "milk-table-high", Title: "The ward's feeding table gives more milk than any published one", Level: finding.Warning,
		Why:    "It is more than 200 ml for each kg and day, the most that WHO, Managing newborn problems (2003), page F-30, names.",
		Before: "- {from: 1500, to: 1749, feeds-a-day: 8, ml-per-feed: [12, 18, 220]}\n", After: "- {from: 1500, to: 1749, feeds-a-day: 8, ml-per-feed: [12, 18, 22]}\n",
	},
	{
		Name: "record-key-missing", Title: "A record lacks a value that it must have", Level: finding.Error,
		Why:    "The pages that show it would have a gap.",
		Before: "small:\n  amount: 2.5\n", After: "small:\n  amount: 2.5\n  status: common-practice\n",
	},
	{
		Name: "record-key-twice", Title: "A name stands twice in a record", Level: finding.Error,
		Why:    "One of the two would be lost without a word.",
		Before: "minutes: 25\nminutes: 30\n", After: "minutes: 30\n",
	},
	{
		Name: "record-key-unknown", Title: "A record has a name that means nothing", Level: finding.Error,
		Why:    "A value that is not understood would be left out of the pages without a word.",
		Before: "minuets: 25\n", After: "minutes: 25\n",
	},
	{
		Name: "record-reference", Title: "A record shares a value by reference", Level: finding.Error,
		Why:    "A value that is used in two places changes in both, which nobody reading one of them can see; and it may refer to itself without end.",
		Before: "en: &name Ward\nhi: *name\n", After: "en: Ward\nhi: वार्ड\n",
	},
	{
		Name: "record-syntax", Title: "A record is not well-formed YAML", Level: finding.Error,
		Why:    "Nothing of the file can be used until it is.",
		Before: "audience: [families\n", After: "audience: [families]\n",
	},
	{
		Name: "record-value", Title: "A value in a record cannot be used", Level: finding.Error,
		Why:    "A value that is not understood would be left out of the pages without a word.",
		Before: "minutes: half an hour\n", After: "minutes: 30\n",
	},
	{
		Name: "translation-missing", Title: "A lesson is missing in a language of the pack", Level: finding.Warning,
		Why:    "Families who do not read the source language would hold a lesson that they cannot use.",
		Before: "languages: [en, hi] # and wrapping/hi.md is not there\n", After: "languages: [en, hi] # and wrapping/hi.md is there\n",
	},
	{
		Name: "unsafe-link", Title: "An address is not allowed", Level: finding.Error,
		Why:    "An address of this kind can run a program, or does not work without a network.",
		Before: "[more](http://example.org/)\n", After: "[more](https://example.org/)\n",
	},
}
