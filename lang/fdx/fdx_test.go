package fdx

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"pullscore/lang/fountain"
	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
)

func decode(name, src string) *lines.Text {
	t, _ := lines.Decode(name, []byte(src))
	return t
}

// read returns the scenes of a page, with what is told of it.
func read(src string) (scenes []fountain.Scene, told string) {
	var faults lines.Faults
	scenes = fountain.Collect(Beats(decode("f.fdx", src), &faults))
	for _, d := range faults.List() {
		told += fmt.Sprintf("%d:%d %s %s: %s; ", d.Range.Start.Line, d.Range.Start.Column, d.Severity, d.Code, d.Message)
	}
	return scenes, told
}

// The samples by their paragraphs: what is a heading, a cue, a speech or action.
func TestSamples(t *testing.T) {
	type expected struct {
		Paragraphs [][]any `json:"paragraphs_type_number_text_dual_revisions"`
		Scenes     [][]any `json:"scenes_number_heading"`
		Speeches   [][]any `json:"speeches_scene_speaker_extension_text_revision_dual"`
		Active     string  `json:"active_revision"`
	}
	samples.EachCut(t, "fdx/", func(t *testing.T, name string, src []byte, want expected) {
		scenes, told := read(string(src))
		if told != "" {
			t.Error(told)
		}
		if want.Paragraphs != nil {
			comparePlain(t, scenes, want.Paragraphs)
			return
		}
		var got, speeches [][]any
		for _, s := range scenes {
			got = append(got, []any{s.Number, s.Heading})
			said := slicesOf(s.Beats)
			for i, b := range said {
				var set any
				if b.Revision.Name != "" {
					set = b.Revision.Name
				}
				dual := b.Dual || i+1 < len(said) && said[i+1].Dual // there both have the mark
				speeches = append(speeches, []any{s.Number, b.Who, b.Text(), set, dual})
			}
		}
		for i, w := range want.Speeches {
			want.Speeches[i] = append(w[:2:2], w[3:]...)
		}
		if fmt.Sprint(got) != fmt.Sprint(want.Scenes) || fmt.Sprint(speeches) != fmt.Sprint(want.Speeches) {
			t.Errorf("got  %v %v\nwant %v %v", got, speeches, want.Scenes, want.Speeches)
		}
		h := Revisions(decode(name, string(src)))
		if active := byNumber(h.Sets)[h.Active]; active != want.Active {
			t.Errorf("revision %q is running, want %q", active, want.Active)
		}
	})
}

// slicesOf returns the speeches among beats.
func slicesOf(beats []fountain.Beat) (said []fountain.Beat) {
	for _, b := range beats {
		if b.Who != "" {
			said = append(said, b)
		}
	}
	return said
}

// comparePlain compares a page with its paragraphs, transitions left out.
func comparePlain(t *testing.T, scenes []fountain.Scene, paragraphs [][]any) {
	var got, want []string
	for _, s := range scenes {
		got = append(got, "Scene Heading "+s.Number+" "+s.Heading)
		for _, b := range s.Beats {
			if b.Who != "" {
				off := ""
				if b.Off {
					off = " (O.S.)"
				}
				got = append(got, "Character  "+b.Who+off)
			}
			for _, p := range b.Parts {
				kind := map[fountain.Kind]string{fountain.Action: "Action", fountain.Dialogue: "Dialogue", fountain.Parenthetical: "Parenthetical"}[p.Kind]
				got = append(got, kind+"  "+fountain.Plain(p.Text))
			}
		}
	}
	for _, p := range paragraphs {
		if p[1] == nil {
			p[1] = ""
		}
		if p[0] != "Transition" {
			want = append(want, fmt.Sprintf("%s %s %s", p[0], p[1], p[2]))
		}
	}
	if a, b := strings.Join(got, "\n"), strings.Join(want, "\n"); a != b {
		t.Errorf("got\n%s\nwant\n%s", a, b)
	}
}

func page(content string) string {
	return `<?xml version="1.0" encoding="UTF-16"?>` + "\n" + `<FinalDraft DocumentType="Script"><Content>` + "\n" + content +
		`</Content><Revisions ActiveSet="1"><Revision ID="1" Name="Blue"/><Revision ID="3" Name="Pink"></Revision></Revisions></FinalDraft>`
}

func para(kind, text string) string {
	return fmt.Sprintf(`<Paragraph Type=%q><Text>%s</Text></Paragraph>`, kind, text)
}

// show shows scenes in one line.
func show(scenes []fountain.Scene) string {
	var b strings.Builder
	for _, s := range scenes {
		fmt.Fprintf(&b, "[%s|%s]", s.Number, s.Heading)
		for _, beat := range s.Beats {
			fmt.Fprintf(&b, " %s", beat.Who)
			if beat.Off {
				b.WriteString("(off)")
			}
			if beat.Dual {
				b.WriteString("^")
			}
			fmt.Fprintf(&b, ":%s", beat.Text())
			if beat.Revision.Number > 0 {
				fmt.Fprintf(&b, "{%s}", beat.Revision.Name)
			}
		}
	}
	return b.String()
}

// Pages of our own, a rule or a fault each.
func TestRules(t *testing.T) {
	const ada = `<Paragraph Type="Character"><Text>Ada</Text></Paragraph>`
	for _, c := range []struct{ name, src, want string }{
		{"a speech", page(para("Scene Heading", "INT. A") + ada + para("Parenthetical", "(low)") + para("Dialogue", "Aye.")), "[|INT. A] ADA:Aye."},
		{"texts are joined as they stand", page(ada + `<Paragraph Type="Dialogue"><Text>Un</Text><Text Style="Bold">til </Text>between<Text>now.</Text></Paragraph>`), "[|] ADA:Until now."},
		{"signs that are marks elsewhere", page(ada + para("Dialogue", "*so* _it_ is \\")), `[|] ADA:*so* _it_ is \`},
		{"the five entities", page(ada + para("Dialogue", "&lt;&amp;&gt;&quot;&apos;&#233;")), `[|] ADA:<&>"'é`},
		{"extensions", page(para("Character", "Bo (V.O.)") + para("Dialogue", "A.") + para("Character", "CY (CONT'D)") + para("Dialogue", "B.")), "[|] BO(off):A. CY:B."},
		{"numbers", page(`<Paragraph Type="Scene Heading" Number="27pt"><Text>EXT. B</Text></Paragraph><Paragraph Type="Scene Heading" Number="1234567890123"><Text>EXT. C</Text></Paragraph>`), "[27pt|EXT. B][|EXT. C]"},
		{"omitted", page(`<Paragraph Type="Scene Heading" Number="A28"><Text>Omitted</Text></Paragraph>` + ada + para("Dialogue", "No.") + para("Scene Heading", "INT. D") + ada + para("Dialogue", "Aye.")),
			"[A28|Omitted][|INT. D] ADA:Aye."},
		{"what is action", page(para("Shot", "CLOSE") + para("General", "g") + para("Cast List", "c") + para("Transition", "CUT TO:") + para("Action", "FADE IN:")), "[|] :CLOSE :g :c"},
		{"nothing in a paragraph", page(para("Action", " ") + `<Paragraph/>` + para("Character", "(O.S.)")), ""},
		{"together, in a paragraph and without one", page(`<Paragraph><DualDialogue>` + ada + para("Dialogue", "A.") + para("Character", "BO") + para("Dialogue", "B.") + `</DualDialogue></Paragraph>` +
			`<DualDialogue>` + ada + para("Dialogue", "C.") + para("Character", "BO") + para("Dialogue", "D.") + `</DualDialogue>`), "[|] ADA:A. BO^:B. ADA:C. BO^:D."},
		{"notes are no text", page(ada + `<Paragraph Type="Dialogue"><ScriptNote><Paragraph><Text>why</Text></Paragraph></ScriptNote><Text>Aye.</Text><Summary><Paragraph><Text>s</Text></Paragraph></Summary></Paragraph>`), "[|] ADA:Aye."},
		{"the highest revision", page(ada + `<Paragraph Type="Dialogue"><Text RevisionID="3">A</Text><Text RevisionID="1">b.</Text></Paragraph>` +
			`<Paragraph Type="Action"><Text RevisionID="1">c</Text></Paragraph>` + para("Action", "d")), "[|] ADA:Ab.{Pink} :c{Blue} :d"},
		{"dialogue of nobody", page(para("Dialogue", "Aye.")), "[|] :Aye."},
		{"a template", `<FinalDraft DocumentType="Template"><Content>` + para("Action", "A") + `</Content></FinalDraft>`,
			"[|] :A / 1:1 warning not-a-script: DocumentType is Template, and Script is read; "},
		{"other XML", "<?xml version=\"1.0\"?>\n<svg></svg>", " / 2:1 error not-a-script: this XML has no FinalDraft at its top; "},
		{"nothing", "<?xml version=\"1.0\"?>", " / 1:1 error not-a-script: this XML has no FinalDraft at its top; "},
		{"cut off", "<FinalDraft><Content>\n" + para("Action", "A") + "\n <Paragraph Type=\"Action\"><Text>B",
			"[|] :A / 3:34 error bad-xml: this XML ends within <Text>; "},
		{"wrong end", "<FinalDraft><Content>\n</Paragraph>", " / 2:1 error bad-xml: this is no whole XML: element <Content> closed by </Paragraph>; "},
		{"an entity of its own", `<!DOCTYPE x [<!ENTITY e SYSTEM "/etc/hosts">]>` + "\n<FinalDraft><Content>" + para("Action", "&e;"),
			" / 2:53 error bad-xml: this is no whole XML: invalid character entity &e;; "},
		{"too deep", "<FinalDraft><Content>" + strings.Repeat("<a>", 200), " / 1:316 error bad-xml: the file is nested more than 100 deep; "},
		{"more behind the end", page(para("Action", "A")) + "<b/>", "[|] :A"},
	} {
		t.Run(c.name, func(t *testing.T) {
			scenes, told := read(c.src)
			got := show(scenes)
			if told != "" {
				got += " / " + told
			}
			if got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// The sets of revisions and the title stand behind the page.
func TestBehind(t *testing.T) {
	text := decode("f.fdx", strings.Replace(page(""), "</Content>", "</Content><TitlePage><Content><Paragraph><Text> </Text></Paragraph><Paragraph><Text>THE </Text></Paragraph></Content></TitlePage>", 1))
	if h := Revisions(text); h.Active != 1 || len(h.Sets) != 2 || h.Sets[1] != (fountain.Revision{Number: 3, Name: "Pink"}) {
		t.Errorf("%+v", h)
	}
	if title := Title(text); title != "THE" {
		t.Errorf("title %q", title)
	}
	for _, src := range []string{"", "<FinalDraft/>", "<Revisions", "<TitlePage", "<TitlePage><Text>", "<Revisions ActiveSet='x'><Revision ID='-1'/>"} {
		if h := Revisions(decode("f.fdx", src)); h.Active != 0 || h.Sets != nil || Title(decode("f.fdx", src)) != "" {
			t.Errorf("%q: %+v %q", src, h, Title(decode("f.fdx", src)))
		}
	}
}

// While a page is read, what is in use beside its text is a small part of that.
func TestMemory(t *testing.T) {
	for name, piece := range map[string]string{
		"speeches":  para("Character", "ADA") + para("Dialogue", "Who is there?") + "\n",
		"one text":  "and so on and on",
		"one scene": `<Paragraph Type="Scene Heading" Number="1"><Text>INT. A</Text></Paragraph>`,
	} {
		content := strings.Repeat(piece, 2<<20/len(piece))
		if name == "one text" {
			content = para("Action", content)
		}
		text := &lines.Text{Name: "f.fdx", Content: page(content)}
		start, most := inUse(), 0
		text.Progress = func(_, _ int) { most = max(most, inUse()-start) }
		var faults lines.Faults
		for range Beats(text, &faults) {
		}
		if most = max(most, inUse()-start); most > 4*len(text.Content) || len(faults.List()) > 0 {
			t.Errorf("%s: %d kB are in use for %d kB; %v", name, most>>10, len(text.Content)>>10, faults.List())
		}
		runtime.KeepAlive(text)
	}
}

func inUse() int {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}

// Whatever the file, every line lies in it, what is no script is told, and its tokens are
// those of the decoder.
func FuzzBeats(f *testing.F) {
	f.Add(page(para("Character", "ADA (V.O.)") + para("Dialogue", "Aye &amp; no.")))
	f.Add("<FinalDraft><Content><DualDialogue><Paragraph Type='Character'><Text>A</Text><DualDialogue><Paragraph>")
	f.Add("<?xml version='1.0' encoding='x'?><a>&b;</a>")
	f.Fuzz(func(t *testing.T, src string) {
		text := decode("f.fdx", src)
		var faults lines.Faults
		n := 0
		for _, beat := range Beats(text, &faults) {
			if n++; beat.Line < 0 || beat.Line > 1+strings.Count(text.Content, "\n") {
				t.Errorf("line %d", beat.Line)
			}
		}
		if list := faults.List(); n == 0 && len(list) == 0 && !strings.Contains(src, root) {
			t.Error("nothing was read, and nothing is told")
		}
		Title(text)
		Revisions(text)
		compareRuns(t, text.Content)
	})
}
