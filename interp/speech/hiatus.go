// Vowels that meet: one syllable or two.

package speech

import "strings"

// nuclei returns the vowels that are sounded in a word without a silent end.
func nuclei(w string) int {
	n := 0
	for i := 0; i < len(w); {
		if !vowel(w[i]) || consonantal(w, i) {
			i++
			continue
		}
		n++
		i += glide(w, i)
	}
	return n
}

// consonantal reports whether the vowel letter at i stands for a consonant: y
// at the start, and u after q, before another.
func consonantal(w string, i int) bool {
	if i+1 >= len(w) || !vowel(w[i+1]) {
		return false
	}
	return w[i] == 'y' && i == 0 || w[i] == 'u' && i > 0 && w[i-1] == 'q'
}

// glide returns how many letters belong to the vowel at i: more than one where
// it runs into the next without a break.
func glide(w string, i int) int {
	if i+1 >= len(w) || !vowel(w[i+1]) || meet(w, i).splits() {
		return 1
	}
	if i+2 < len(w) {
		switch w[i : i+3] {
		case "eau", "iou", "eou", "ieu", "uee", "uea":
			return 3
		}
	}
	return 2
}

// A meeting is two vowel letters and what stands round them.
type meeting struct {
	head   string // all before them
	pair   string
	rest   string // all after them
	before byte   // the letter before them, or 0
	first  bool   // no vowel stands before them
}

func meet(w string, i int) meeting {
	m := meeting{head: w[:i], pair: w[i : i+2], rest: w[i+2:], first: !hasVowel(w[:i])}
	if i > 0 {
		m.before = w[i-1]
	}
	return m
}

// goesOn reports whether one of some texts stands right after the pair.
func (m meeting) goesOn(texts ...string) bool {
	for _, t := range texts {
		if strings.HasPrefix(m.rest, t) {
			return true
		}
	}
	return false
}

// splits reports whether the two vowels are two syllables. The words in the
// comments are such as a line below them is there for.
func (m meeting) splits() bool {
	switch {
	case m.pair[0] < 'a':
		return m.pair != "Ee" // fiancée
	case m.pair[1] < 'a':
		return true // naïve
	case m.pair[1] == 'i' && m.goesOn("ng"):
		return true // going, flying
	}
	switch m.pair[0] {
	case 'a':
		return m.pair == "ai" && m.rest == "c" // archaic
	case 'e':
		return m.splitsE()
	case 'i':
		return m.splitsI()
	case 'o':
		return m.splitsO()
	case 'u':
		return m.splitsU()
	case 'y':
		return m.splitsY()
	}
	return false
}

func (m meeting) splitsE() bool {
	if m.again() {
		return true // react, preempt
	}
	switch m.pair[1] {
	case 'a':
		if m.goesOn("t") {
			cr := strings.HasSuffix(m.head, "cr") && m.rest != "t" && !m.goesOn("tion", "tu")
			return cr || m.head == "th" // creative, theatre
		}
		return m.rest == "" && !m.first // area, but not sea
	case 'o':
		switch {
		case m.goesOn("u"):
			return !m.soft() // gorgeous
		case m.goesOn("p"):
			return m.before == 'g' || m.before == 'n' || m.before == 'r' // not people
		}
		return m.before != 'g' || m.first && !m.goesOn("r") // pigeon, George
	case 'u':
		return m.rest == "m" // museum
	}
	return false
}

func (m meeting) splitsI() bool {
	switch m.pair[1] {
	case 'a':
		if m.before == 'l' || m.before == 'i' {
			return !m.goesOn("m", "r") || m.first && m.goesOn("r") // not William, familiar
		}
		if m.first && m.goesOn("nt") {
			return true // giant
		}
		return !m.soft() || m.before == 'x' || m.goesOn("t", "sm", "st") || m.rest == "k"
	case 'e':
		if m.goesOn("nc", "nt") {
			return m.first || !m.soft() && m.before != 'n' // science, client, but not patience
		}
		if m.goesOn("l") {
			return m.goesOn("ll") || !m.first && m.before == 'r' // Gabriel
		}
		return m.goesOn("t", "nn") || !m.first && (m.rest == "r" || m.rest == "st")
	case 'o':
		if m.goesOn("n") && (m.before == 'l' || m.before == 'n' || strings.HasSuffix(m.head, "sh")) {
			return m.first // lion, but not million, onion, fashion
		}
		if m.rest == "" || m.goesOn("l") {
			return true // studio, violin
		}
		return !m.soft() && !(m.before == 'v' && m.goesOn("r")) // behaviour
	case 'u':
		return m.before != 'g'
	}
	return false
}

func (m meeting) splitsO() bool {
	switch m.pair[1] {
	case 'a':
		return m.rest == "" && !m.first || m.rest == "h" // protozoa, Noah
	case 'e':
		return m.rest == "r" || m.head == "c" || m.head == "p" // doer, coed, poet
	case 'i':
		if m.head == "c" {
			return m.goesOn("nc") // coincide
		}
		return m.rest == "c" && (m.before == 'r' || m.before == 't' || m.before == 'z') // heroic
	case 'o':
		return m.head == "c" && m.goesOn("rd", "pera") // coordinate, cooperate
	}
	return false
}

func (m meeting) splitsU() bool {
	if m.before == 'g' || m.before == 'q' {
		return false // language, guest
	}
	switch m.pair[1] {
	case 'a':
		return !(m.before == 's' && m.goesOn("d", "s")) // not persuade
	case 'e':
		return m.goesOn("n") || m.goesOn("l") && !m.goesOn("la") // fluent, cruel
	case 'i':
		return m.before == 't' || m.before == 'r' && m.goesOn("n") || m.goesOn("d") // tuition, ruin, fluid
	case 'o':
		return !m.goesOn("r") // duo, but not fluoride
	}
	return false
}

func (m meeting) splitsY() bool {
	switch m.pair[1] {
	case 'a', 'o':
		return m.first && m.head != "" // cyan, lyon
	case 'e':
		return m.head != "" && m.before != 'w' && m.goesOn("r") // flyer, but not lawyer
	}
	return false
}

// soft reports whether the consonant before turns soft before i or e and takes
// it in, as in -tion, -cial and -gion.
func (m meeting) soft() bool {
	switch m.before {
	case 't', 'c', 's', 'g', 'x':
		return true
	}
	return false
}

// again reports whether the word is re- or pre- before a word with a vowel.
func (m meeting) again() bool {
	if m.head != "r" && m.head != "pr" {
		return false
	}
	for _, r := range restarts {
		if r[0] == m.pair[1] && strings.HasPrefix(m.rest, r[1:]) {
			return true
		}
	}
	return false
}
