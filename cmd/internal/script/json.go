// What was read of a page, as data.

package script

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"iter"

	"pullscore/lang/fountain"
)

// WriteJSON writes what a page says as JSON: its scenes, and in each the
// speeches, whose text is without emphasis and whose line is that of the cue.
// A scene without a heading in which nobody speaks is left out: it is only what
// stands above the first heading. A page of any length takes no memory.
func WriteJSON(w io.Writer, beats iter.Seq2[fountain.Scene, fountain.Beat]) error {
	j := newJSONWriter(w)
	j.raw("{\n  \"scenes\": [")
	for scene, beat := range beats {
		j.beat(scene, beat)
	}
	j.endScene()
	if j.scenes > 0 {
		j.raw("\n  ")
	}
	j.raw("]\n}\n")
	return j.out.Flush() // which tells an earlier error too
}

// A jsonWriter writes scene after scene.
type jsonWriter struct {
	out    *bufio.Writer
	quoted bytes.Buffer // one text
	quote  *json.Encoder

	scenes, speeches int // written so far; speeches of this scene
	position         int // of the scene that is open
}

func newJSONWriter(w io.Writer) *jsonWriter {
	j := &jsonWriter{out: bufio.NewWriter(w)}
	j.quote = json.NewEncoder(&j.quoted)
	j.quote.SetEscapeHTML(false)
	return j
}

func (j *jsonWriter) raw(s string) { j.out.WriteString(s) }

// text writes a text in quotes.
func (j *jsonWriter) text(s string) {
	j.quoted.Reset()
	j.quote.Encode(s) // a text can always be written to a buffer
	j.out.Write(bytes.TrimSuffix(j.quoted.Bytes(), []byte("\n")))
}

// beat writes what is new: a scene, or a speech in it.
func (j *jsonWriter) beat(scene fountain.Scene, beat fountain.Beat) {
	spoken := beat.Who != ""
	if scene.Position != j.position && (spoken || scene.Heading != "") {
		j.beginScene(scene)
	}
	if spoken {
		j.speech(beat)
	}
}

func (j *jsonWriter) beginScene(scene fountain.Scene) {
	j.endScene()
	if j.scenes++; j.scenes > 1 {
		j.raw(",")
	}
	j.raw("\n    {\n      \"number\": ")
	j.text(scene.Number)
	j.raw(",\n      \"heading\": ")
	j.text(scene.Heading)
	j.raw(",\n      \"lines\": [")
	j.position, j.speeches = scene.Position, 0
}

func (j *jsonWriter) endScene() {
	switch {
	case j.scenes == 0:
		return
	case j.speeches > 0:
		j.raw("\n      ")
	}
	j.raw("]\n    }")
}

func (j *jsonWriter) speech(beat fountain.Beat) {
	if j.speeches++; j.speeches > 1 {
		j.raw(",")
	}
	j.raw("\n        {\n          \"who\": ")
	j.text(beat.Who)
	j.raw(",\n          \"text\": ")
	j.text(beat.Text())
	fmt.Fprintf(j.out, ",\n          \"line\": %d", beat.Line)
	if beat.Revision.Name != "" {
		j.raw(",\n          \"revision\": ")
		j.text(beat.Revision.Name)
	}
	j.raw("\n        }")
}
