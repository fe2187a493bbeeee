// Package chunk reads test files that are divided into plans by lines of ---.
// A faulty line ends in ### and, for each of its diagnostics, a regular
// expression in quotes:
//
//	rack to DORE  ### "DORE is no subject" "did you mean DOOR"
//
// Only \" is an escape there: other backslashes belong to the expression.
package chunk

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"strings"
)

// A Chunk is one plan of a test file.
type Chunk struct {
	Name   string // the file and the line of its first line, as file:line
	Source []byte // the plan, without what is expected of it
	want   map[int][]string
}

var quoted = regexp.MustCompile(`"((?:[^"\\]|\\.)*)"`)

// Read reads the chunks of a file.
func Read(path string) ([]*Chunk, error) {
	src, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	var chunks []*Chunk
	line := 1
	for part := range bytes.SplitSeq(src, []byte("---\n")) {
		c, err := parse(fmt.Sprintf("%s:%d", path, line), string(part))
		if err != nil {
			return nil, err
		}
		chunks = append(chunks, c)
		line += bytes.Count(part, []byte("\n")) + 1
	}
	return chunks, nil
}

func parse(name, text string) (*Chunk, error) {
	c := &Chunk{Name: name, want: map[int][]string{}}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		plan, patterns, found := strings.Cut(line, "###")
		if !found {
			continue
		}
		lines[i] = strings.TrimRight(plan, " ")
		for _, m := range quoted.FindAllStringSubmatch(patterns, -1) {
			c.want[i+1] = append(c.want[i+1], strings.ReplaceAll(m[1], `\"`, `"`))
		}
		if len(c.want[i+1]) == 0 {
			return nil, fmt.Errorf("%s: nothing expected in %q", name, patterns)
		}
	}
	c.Source = []byte(strings.Join(lines, "\n"))
	return c, nil
}

// Take strikes the first expectation of a line that matches the text; false
// where none does.
func (c *Chunk) Take(line int, text string) bool {
	for i, p := range c.want[line] {
		if regexp.MustCompile(p).MatchString(text) {
			c.want[line] = append(c.want[line][:i:i], c.want[line][i+1:]...)
			return true
		}
	}
	return false
}

// Left lists the expectations that nothing has matched.
func (c *Chunk) Left() []string {
	var left []string
	for line, patterns := range c.want {
		for _, p := range patterns {
			left = append(left, fmt.Sprintf("line %d: %q", line, p))
		}
	}
	return left
}
