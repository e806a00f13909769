// Package wardleaf carries the starter pack, the program's own labels, and the
// templates and fonts of its output, so that one binary is all that is needed.
package wardleaf

import (
	"embed"
	"io/fs"
)

//go:embed content locales templates
var files embed.FS

// Content is the starter pack.
func Content() fs.FS { return sub("content") }

// Locales holds the message file of each language and the facts of languages.json.
func Locales() fs.FS { return sub("locales") }

// Templates holds the HTML templates and the style sheet.
func Templates() fs.FS { return sub("templates") }

// Fonts holds the faces that pieces are set in, with their licences.
func Fonts() fs.FS { return sub("templates/fonts") }

func sub(dir string) fs.FS {
	f, err := fs.Sub(files, dir)
	if err != nil {
		panic(err) // the folder is part of the program
	}
	return f
}
