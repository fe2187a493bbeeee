package pdf

import (
	"strings"
	"testing"

	"pullscore/render/draw"
)

// A page that is drawn over an empty one later looks as if it had been added, whatever was
// drawn between them, and leads to pages that came after it.
func TestOver(t *testing.T) {
	cover := page("Pages", "Shot 1, page 2")
	link := cover.Root.Group("link")
	link.Link = "shot"
	link.Add(draw.Rect{Box: draw.Box{X: 10, Y: 40, W: 30, H: 5}, Fill: draw.Black})
	shot := page("Shot 1", "bold")
	shot.Root.ID = "shot"
	write := func(late bool) []byte {
		f := New(Info{Title: "x"})
		if late {
			f.Add(&draw.Page{W: cover.W, H: cover.H})
		} else {
			f.Add(cover)
		}
		f.Add(shot)
		if late {
			f.Over(1, cover)
			f.Name(Info{Title: "Named late"})
		}
		f.Add(page("after", "bold"))
		var b strings.Builder
		if err := f.Write(&b); err != nil {
			t.Fatal(err)
		}
		return []byte(b.String())
	}
	early, late := write(false), write(true)
	if n := len(annotation.FindAll(late, -1)); n != 1 {
		t.Errorf("%d links, want 1", n)
	}
	for _, number := range []string{"1", "2", "3"} {
		picture := func(data []byte) string {
			return reads(t, t.TempDir(), data, "pdftocairo", "-png", "-singlefile", "-r", "80", "-f", number, "-l", number)
		}
		if picture(early) != picture(late) {
			t.Errorf("page %s looks otherwise where the first is drawn late", number)
		}
	}
	if info := reads(t, t.TempDir(), late, "pdfinfo"); !strings.Contains(info, "Named late") {
		t.Errorf("its name is not there:\n%s", info)
	}
}

// No page can be drawn over that is not there or has another size.
func TestOverFails(t *testing.T) {
	for _, test := range []struct {
		number int
		page   *draw.Page
		want   string
	}{
		{2, page("x"), "page 2 of 1 cannot be drawn over"},
		{1, &draw.Page{W: 60, H: 60}, "another size"},
	} {
		f := New(Info{})
		f.Add(page("x"))
		f.Over(test.number, test.page)
		if err := f.Write(&strings.Builder{}); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%v, want %q", err, test.want)
		}
	}
}
