// Package history reads a folder as it was at a revision of a git repository.
//
// It asks the git program, which must be installed, and changes nothing: no file is
// checked out and no index is touched. It is not a git library, and it follows neither
// symbolic links nor submodules. Blobs are read as they are stored, so that no filter
// of the repository runs.
package history

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// Bounds on what is read of one revision.
const (
	maxFiles = 10_000
	maxBytes = 64 << 20
	patience = time.Minute // for one run of git
)

// A Repository is a git repository and a folder of its working tree.
type Repository struct {
	dir    string // the folder, on disk
	prefix string // the folder from the root of the repository, with a slash at its end, or ""
}

// A Commit is a revision that was found.
type Commit struct {
	ID   string    // the full hash
	Date time.Time // of the commit, without a time of day
}

// Open finds the repository that a folder lies in.
func Open(dir string) (*Repository, error) {
	r := &Repository{dir: dir}
	out, err := r.git(nil, 1<<20, "rev-parse", "--is-inside-work-tree", "--show-prefix")
	if err != nil {
		var git *gitError
		if errors.As(err, &git) && strings.Contains(git.said, "not a git repository") {
			return nil, fmt.Errorf("%s lies in no git repository, so there is no earlier state to compare with; put the pack under version control with: git init, git add, git commit", filepath.ToSlash(dir))
		}
		if errors.As(err, &git) && strings.Contains(git.said, "dubious ownership") {
			return nil, fmt.Errorf("git does not read %s, since the repository belongs to somebody else; if you trust it, run: git config --global --add safe.directory and its folder", filepath.ToSlash(dir))
		}
		return nil, err
	}
	inside, prefix, _ := strings.Cut(string(out), "\n")
	if inside != "true" {
		return nil, fmt.Errorf("%s is no part of a working tree of git; give a folder of a repository that is checked out", filepath.ToSlash(dir))
	}
	r.prefix = strings.TrimSuffix(prefix, "\n")
	return r, nil
}

var hash = regexp.MustCompile(`^[0-9a-f]{40}([0-9a-f]{24})?$`)

// Commit finds a revision by any name that git knows, such as a tag or HEAD~2.
func (r *Repository) Commit(name string) (Commit, error) {
	switch {
	case name == "", strings.HasPrefix(name, "-"), strings.ContainsAny(name, "\x00\r\n"):
		return Commit{}, fmt.Errorf("%q is not the name of a revision; give a tag, a branch or the start of a hash, such as v1.0 or HEAD~1", name)
	case strings.Contains(name, ".."):
		return Commit{}, fmt.Errorf("%q is a range; give the old revision and the new one as two words", name)
	}
	out, err := r.git(nil, 1<<10, "rev-parse", "--verify", "--quiet", name+"^{commit}")
	id := strings.TrimSpace(string(out))
	if err != nil || !hash.MatchString(id) {
		var git *gitError
		if err != nil && !errors.As(err, &git) {
			return Commit{}, err
		}
		return Commit{}, fmt.Errorf("the repository has no revision %q; git tag and git log show those there are", name)
	}
	out, err = r.git(nil, 1<<10, "log", "-1", "--no-show-signature", "--format=%cs", id, "--")
	if err != nil {
		return Commit{}, err
	}
	date, err := time.Parse(time.DateOnly, strings.TrimSpace(string(out)))
	return Commit{ID: id, Date: date}, err
}

// git runs git in the folder and returns what it printed, at most so many bytes.
func (r *Repository) git(stdin []byte, most int, args ...string) ([]byte, error) {
	program, err := exec.LookPath("git")
	if err != nil {
		return nil, fmt.Errorf("the git program is not installed, and earlier states of the pack are read with it; install git")
	}
	ctx, stop := context.WithTimeout(context.Background(), patience)
	defer stop()
	cmd := exec.CommandContext(ctx, program, append([]string{"--no-pager", "--literal-pathspecs", "--no-replace-objects"}, args...)...)
	cmd.Dir = r.dir
	cmd.Env = environment(os.Environ())
	cmd.Stdin = bytes.NewReader(stdin)
	out, problems := &bounded{most: most}, &bounded{most: 4 << 10}
	cmd.Stdout, cmd.Stderr = out, problems
	err = cmd.Run()
	var exit *exec.ExitError
	switch {
	case out.full:
		return nil, fmt.Errorf("git %s gave more than %d KiB, which no pack needs, and was stopped", args[0], most>>10)
	case ctx.Err() != nil:
		return nil, fmt.Errorf("git %s did not end within %v and was stopped", args[0], patience)
	case errors.As(err, &exit):
		return nil, &gitError{args[0], strings.TrimSpace(problems.String())}
	case err != nil:
		return nil, fmt.Errorf("git cannot be run: %w", err)
	}
	return out.Bytes(), nil
}

// environment leaves out what ties git to another repository than that of the folder,
// and keeps it from asking questions, from other languages and from the network.
func environment(env []string) []string {
	env = slices.DeleteFunc(env, func(e string) bool {
		name, _, _ := strings.Cut(e, "=")
		return slices.Contains([]string{"GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX", "GIT_COMMON_DIR", "GIT_NAMESPACE"}, name)
	})
	return append(env, "LC_ALL=C", "LANGUAGE=C", "GIT_TERMINAL_PROMPT=0", "GIT_OPTIONAL_LOCKS=0", "GIT_NO_LAZY_FETCH=1")
}

// A gitError is what git said when it failed.
type gitError struct{ command, said string }

func (e *gitError) Error() string {
	first, _, _ := strings.Cut(e.said, "\n")
	return fmt.Sprintf("git %s failed: %s", e.command, first)
}

// bounded is a buffer that refuses to grow beyond a size.
type bounded struct {
	bytes.Buffer
	most int
	full bool
}

func (b *bounded) Write(p []byte) (int, error) {
	if b.Len()+len(p) > b.most {
		b.full = true
		return 0, errors.New("too much")
	}
	return b.Buffer.Write(p)
}
