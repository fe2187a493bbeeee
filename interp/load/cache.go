// A cache: what files were parsed to, for programs that read one plan again and again.
//
// An editor reads a plan at every letter, and each time the kit, the cut and the page
// that lie beside it are the same. Whether they are is seen by their bytes and by nothing
// else: times of files lie, and the text of an open file lies on no disk. To see it in a
// cut of a hundred megabytes takes a hundredth of a second, and none where the caller
// hands over the very bytes of the last time.

package load

import (
	"container/list"
	"hash/maphash"
	"sync"
	"unsafe"
)

// A Kind is what a text is parsed to.
type Kind uint8

// The kinds.
const (
	Plans Kind = iota // plans and kits
	Texts             // decoded texts
	Cuts
	Clips
	Pages
	Logs
)

// versions is how many contents of one file are kept as one kind: the present one and
// the one before, to which who takes a change back returns.
const versions = 2

// A Cache keeps what files were parsed to, by their path and their contents. What it keeps
// is shared by all who read with it, and nobody changes it. Several goroutines may use it.
type Cache struct {
	most int64
	seed maphash.Seed

	mu     sync.Mutex
	size   int64 // bytes of the texts of all entries
	order  *list.List
	byKey  map[key]*list.Element
	sums   map[string]sum
	parses int
}

// A key says what was parsed, and to what.
type key struct {
	kind Kind
	path string
	by   string // on what else it hangs
	hash uint64
	size int
}

// A sum is the hash of the bytes that a path had last.
type sum struct {
	data []byte
	hash uint64
}

type entry struct {
	key
	value func() any
}

// NewCache returns a cache of texts that have so many bytes together. What was used least
// recently goes first.
func NewCache(most int64) *Cache {
	return &Cache{most: most, seed: maphash.MakeSeed(), order: list.New(), byKey: map[key]*list.Element{}, sums: map[string]sum{}}
}

// Parses returns how often something was parsed.
func (c *Cache) Parses() int {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.parses
}

// Size returns how many bytes the texts have of which something is kept.
func (c *Cache) Size() int64 {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.size
}

// Keeps reports whether the cache keeps what a text of so many bytes is parsed to: none
// keeps nothing, and one that is too small nothing of a large text.
func (c *Cache) Keeps(size int) bool { return c != nil && int64(size) <= c.most }

// Cached returns what parse makes of the bytes of a file, or what it made of the same
// bytes before. by says on what else the outcome hangs. Where no cache keeps it, it is parsed.
func Cached[T any](c *Cache, kind Kind, path string, data []byte, by string, parse func() T) T {
	if !c.Keeps(len(data)) {
		return parse()
	}
	return c.get(kind, path, data, by, func() any { return parse() }).(T)
}

func (c *Cache) get(kind Kind, path string, data []byte, by string, parse func() any) any {
	k := key{kind, path, by, c.hash(path, data), len(data)}
	c.mu.Lock()
	e, ok := c.byKey[k]
	if !ok {
		e = c.order.PushFront(&entry{k, sync.OnceValue(parse)})
		c.byKey[k] = e
		c.size += int64(k.size)
		c.parses++
		c.shed(k)
	}
	c.order.MoveToFront(e)
	value := e.Value.(*entry).value
	c.mu.Unlock()
	return value() // who comes meanwhile waits for it
}

// hash returns the hash of the bytes of a path.
func (c *Cache) hash(path string, data []byte) uint64 {
	c.mu.Lock()
	last, ok := c.sums[path]
	c.mu.Unlock()
	if ok && len(last.data) == len(data) && unsafe.SliceData(last.data) == unsafe.SliceData(data) {
		return last.hash
	}
	h := maphash.Bytes(c.seed, data)
	c.mu.Lock()
	defer c.mu.Unlock()
	c.sums[path] = sum{data, h}
	return h
}

// shed lets go of older contents of a file, and of what was used least recently where
// there is too much.
func (c *Cache) shed(asked key) {
	same := 0
	for e := c.order.Front(); e != nil; {
		next, k := e.Next(), e.Value.(*entry).key
		if k.path == asked.path && k.kind == asked.kind {
			if same++; same > versions {
				c.remove(e)
			}
		}
		e = next
	}
	for c.size > c.most {
		c.remove(c.order.Back())
	}
}

func (c *Cache) remove(e *list.Element) {
	k := c.order.Remove(e).(*entry).key
	delete(c.byKey, k)
	c.size -= int64(k.size)
	if !c.holds(k.path) {
		delete(c.sums, k.path)
	}
}

// holds reports whether something of a path is kept.
func (c *Cache) holds(path string) bool {
	for k := range c.byKey {
		if k.path == path {
			return true
		}
	}
	return false
}
