// The guard: what may come in. A page on another site can make a browser send
// requests here, and a name that is made to point here can make it believe
// that it reads its own site; neither gets further than this file.

package preview

import (
	"crypto/sha256"
	"crypto/subtle"
	"mime"
	"net"
	"net/http"
	"net/netip"
	"os"
	"strings"
)

const (
	accessParam = "token"             // in the address, where it is not loopback
	tokenHeader = "X-Pullscore-Token" // with every request that writes
	maxBody     = 64 << 10            // bytes of a request's body
	maxQuery    = 12 << 10            // bytes of a request's address: names of many letters, each of up to 12
)

// policy lets the page load from here alone: scripts, styles and fonts from
// their own files, none within the page, and no other page may frame it.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; " +
	"connect-src 'self'; media-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// harden sets the headers that every answer carries.
func harden(h http.Header) {
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Embedder-Policy", "require-corp")
	h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=(), midi=(self)")
}

// guard lets through what the page itself asks for, and answers all else.
func (s *Server) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		harden(w.Header())
		switch {
		case !s.hosts.allow(r.Host):
			http.Error(w, "This page answers only to the address that was printed.", http.StatusForbidden)
		case foreign(r):
			http.Error(w, "Another site asked for this. Paste the printed address into the address bar.", http.StatusForbidden)
		case len(r.URL.RawQuery) > maxQuery || len(r.URL.Path) > maxQuery:
			http.Error(w, "The address is too long.", http.StatusRequestURITooLong)
		case s.enters(w, r):
		case r.Method != http.MethodGet && r.Method != http.MethodHead && !s.mayWrite(w, r):
		default:
			r.Body = http.MaxBytesReader(w, r.Body, maxBody)
			next.ServeHTTP(w, r)
		}
	})
}

// foreign reports whether a browser says that a page of another origin asks.
func foreign(r *http.Request) bool {
	if origin := r.Header.Get("Origin"); origin != "" && origin != "http://"+r.Host {
		return true
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "none", "same-origin":
		return false
	}
	return true
}

// enters sees to the token of an address that others can reach. A request that
// brings it in the address gets it as a cookie and is sent on without it, so
// that it stays out of the history; one that brings neither is turned away.
// It reports whether the request is answered.
func (s *Server) enters(w http.ResponseWriter, r *http.Request) bool {
	if s.access == "" {
		return false
	}
	if token := r.URL.Query().Get(accessParam); token != "" && same(token, s.access) {
		http.SetCookie(w, &http.Cookie{Name: s.cookieName(), Value: s.access, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
		http.Redirect(w, r, "/", http.StatusSeeOther)
		return true
	}
	if c, err := r.Cookie(s.cookieName()); err == nil && same(c.Value, s.access) {
		return false
	}
	http.Error(w, "Open the address that was printed, with its token.", http.StatusForbidden)
	return true
}

// cookieName keeps two programs on one host apart: cookies know no ports.
func (s *Server) cookieName() string { return "pullscore-" + s.hosts.port }

// mayWrite reports whether a request may write: it must be a POST of JSON with
// the page's token. It answers those that may not.
func (s *Server) mayWrite(w http.ResponseWriter, r *http.Request) bool {
	if r.Method != http.MethodPost {
		w.Header().Set("Allow", "GET, HEAD, POST")
		http.Error(w, "That method is not known here.", http.StatusMethodNotAllowed)
		return false
	}
	if !same(r.Header.Get(tokenHeader), s.token) {
		http.Error(w, "The page is of an earlier run. Load it again.", http.StatusForbidden)
		return false
	}
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		http.Error(w, "Only JSON is read here.", http.StatusUnsupportedMediaType)
		return false
	}
	return true
}

// same compares secrets in a time that tells nothing of them, nor of their
// lengths.
func same(a, b string) bool {
	x, y := sha256.Sum256([]byte(a)), sha256.Sum256([]byte(b))
	return subtle.ConstantTimeCompare(x[:], y[:]) == 1
}

// hosts tells which names of this server a request may use.
type hosts struct {
	named string // the host that was asked for
	port  string
	open  bool // others can reach it: not on loopback
}

// authority returns the host and port of the address to open.
func (h hosts) authority() string {
	host := h.named
	if ip, err := netip.ParseAddr(host); host == "" || err == nil && ip.IsUnspecified() {
		host = "localhost"
		if name, err := os.Hostname(); err == nil {
			host = name
		}
	}
	return net.JoinHostPort(host, h.port)
}

// allow reports whether a request's Host is one of ours. A name that someone
// else has made to point here is none. An open server is also reached by
// number: a number cannot be made to point elsewhere.
func (h hosts) allow(host string) bool {
	name, port, err := net.SplitHostPort(host)
	if err != nil {
		name, port = strings.Trim(host, "[]"), "80"
	}
	if port != h.port {
		return false
	}
	if ip, err := netip.ParseAddr(name); err == nil {
		return h.open || ip.IsLoopback()
	}
	if strings.EqualFold(name, "localhost") || h.named != "" && strings.EqualFold(name, h.named) {
		return true
	}
	own, err := os.Hostname()
	return h.open && err == nil && strings.EqualFold(name, own)
}
