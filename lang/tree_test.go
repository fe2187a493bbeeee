// Helpers of the tests that look at whole trees.

package lang

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
)

var nodeType = reflect.TypeFor[Node]()

// meaning writes a tree without its positions.
func meaning(f *File) string {
	var b strings.Builder
	list := func(body []Statement) {
		for _, s := range body {
			write(&b, reflect.ValueOf(s))
			b.WriteByte('\n')
		}
	}
	list(f.Body)
	for _, s := range f.Sections {
		b.WriteString("== ")
		list([]Statement{s.Head})
		list(s.Body)
	}
	return b.String()
}

// meaningOf writes a statement without its positions.
func meaningOf(s Statement) string {
	var b strings.Builder
	write(&b, reflect.ValueOf(s))
	return b.String()
}

func write(b *strings.Builder, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			b.WriteByte('-')
			return
		}
		write(b, v.Elem())
	case reflect.Slice:
		b.WriteByte('[')
		for i := range v.Len() {
			write(b, v.Index(i))
		}
		b.WriteByte(']')
	case reflect.Struct:
		b.WriteString(v.Type().Name() + "{")
		for i := range v.NumField() {
			if v.Type().Field(i).Type != nodeType {
				write(b, v.Field(i))
				b.WriteByte(' ')
			}
		}
		b.WriteByte('}')
	default:
		fmt.Fprintf(b, "%#v", v.Interface())
	}
}

// nodes calls visit for every node of a tree with its parent's place.
func nodes(v reflect.Value, parent *Node, visit func(parent, n *Node)) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			nodes(v.Elem(), parent, visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			nodes(v.Index(i), parent, visit)
		}
	case reflect.Struct:
		if f := v.FieldByName("Node"); f.IsValid() {
			n := f.Addr().Interface().(*Node)
			visit(parent, n)
			parent = n
		}
		for i := range v.NumField() {
			if t := v.Type().Field(i); t.IsExported() && t.Type != nodeType && t.Name != "Source" {
				nodes(v.Field(i), parent, visit)
			}
		}
	}
}

// checkPlaces checks that every node of a tree stands where it says.
func checkPlaces(t *testing.T, f *File) {
	t.Helper()
	nodes(reflect.ValueOf(f), nil, func(parent, n *Node) {
		start, end := n.Pos, n.EndPos
		if start.Offset >= end.Offset || end.Offset > len(f.Source) {
			t.Errorf("node from %v to %v is empty or outside the file", start, end)
			return
		}
		text := string(f.Source[start.Offset:end.Offset])
		if strings.TrimFunc(text, isBlank) != text || strings.ContainsAny(text[len(text)-1:], "\r\n") {
			t.Errorf("node at %v has blanks around it: %q", start, text)
		}
		for _, p := range []Pos{at(start), at(end)} {
			if want := placeOf(f.Source, p.Offset); p != want {
				t.Errorf("place %v of %q should be %v", p, text, want)
			}
		}
		if parent != nil && (start.Offset < parent.Pos.Offset || end.Offset > parent.EndPos.Offset) {
			t.Errorf("node %q at %v is outside its parent at %v", text, start, parent.Pos)
		}
	})
}

// placeOf counts lines and characters up to an offset.
func placeOf(src []byte, offset int) Pos {
	before := strings.TrimPrefix(string(src[:offset]), byteOrderMark)
	before = strings.ReplaceAll(strings.ReplaceAll(before, "\r\n", "\n"), "\r", "\n")
	line := before[strings.LastIndex(before, "\n")+1:]
	return Pos{offset, strings.Count(before, "\n") + 1, len([]rune(line)) + 1}
}
