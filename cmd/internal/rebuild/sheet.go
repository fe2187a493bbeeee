// Sheets: what is kept of a drawing, which is little, and drawing it again when
// somebody looks.

package rebuild

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"reflect"
	"weak"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score"
	"pullscore/render/sheet"
	"pullscore/render/svg"
)

// A Sheet is one page of a drawing. A film has thousands, of which one is
// looked at, so a sheet keeps the shot that it is drawn from and no drawing.
type Sheet struct {
	// File is the path on disk.
	File string
	// Tag tells a page from others: the same page has the same tag.
	Tag string

	shot  *plan.Shot // as it is drawn: without its place in the text
	basis basis      // of what its cures come to together
	paper sheet.Paper
	index int                     // of the page, among those of the shot
	page  weak.Pointer[draw.Page] // as long as there is room for it
	kept  *draw.Page              // the same, held while its plan is being worked on
	fresh []byte                  // the SVG, until it is written and published
}

// Score draws the score of a shot; old are the sheets of what it was before on
// the same paper. Where that was the same, so are the sheets, and nothing is
// drawn. A page that comes out as it was, while that is still at hand, is not
// written as SVG again, which takes as long as drawing it.
func Score(shot *plan.Shot, old []*Sheet, paper sheet.Paper) []*Sheet {
	shot = unplaced(shot)
	if len(old) > 0 && old[0].paper == paper && identical(old[0].shot, shot) {
		return again(old)
	}
	var list []*Sheet
	inOrder(score.Score(shot, sheet.Options{Paper: paper}), func(i int, page *draw.Page) *Sheet {
		s := &Sheet{shot: shot, paper: paper, index: i, page: weak.Make(page), kept: page}
		if i < len(old) && reflect.DeepEqual(old[i].page.Value(), page) {
			s.Tag = old[i].Tag
			return s
		}
		s.fresh = toSVG(page)
		s.Tag = tag(s.fresh)
		return s
	}, func(_ int, s *Sheet) {
		list = append(list, s)
	})
	return list
}

// again returns new sheets of the same pages. The old ones are published, and
// are not changed any more.
func again(old []*Sheet) []*Sheet {
	list := make([]*Sheet, len(old))
	for i, o := range old {
		list[i] = &Sheet{Tag: o.Tag, shot: o.shot, paper: o.paper, index: o.index, page: o.page, kept: o.page.Value()}
	}
	return list
}

// Page returns the page, which is drawn again if it is no longer at hand.
func (s *Sheet) Page() *draw.Page {
	if page := s.page.Value(); page != nil {
		return page
	}
	return score.Score(s.shot, sheet.Options{Paper: s.paper})[s.index]
}

// Shot returns the shot as it is drawn. It is the same as long as nothing of it changes.
func (s *Sheet) Shot() *plan.Shot { return s.shot }

// SVG returns the page as its file holds it.
func (s *Sheet) SVG() []byte {
	if s.fresh != nil {
		return s.fresh
	}
	return toSVG(s.Page())
}

func toSVG(page *draw.Page) []byte {
	var b bytes.Buffer
	svg.Write(&b, page) // a buffer takes everything
	return b.Bytes()
}

func tag(svg []byte) string {
	sum := sha256.Sum256(svg)
	return hex.EncodeToString(sum[:])
}
