// Command wardleaf makes teaching material for newborn care: it checks a pack of
// lesson modules and assembles it, in every language, into a site and printed pieces.
//
// Exit codes: 0 done; 1 the pack has errors; 2 the command line or the environment is wrong.
package main

import (
	"errors"
	"fmt"
	"os"
)

// errPack means that the pack has errors; they have been shown already.
var errPack = errors.New("the pack has errors")

func main() {
	err := root().Execute()
	switch {
	case err == nil:
	case errors.Is(err, errPack):
		os.Exit(1)
	default:
		fmt.Fprintln(os.Stderr, "wardleaf:", err)
		os.Exit(2)
	}
}
