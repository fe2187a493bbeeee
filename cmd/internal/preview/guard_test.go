package preview

import (
	"net/http"
	"strings"
	"testing"
)

func TestWhoMayAsk(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "lantern.pull"))
	port := s.hosts.port
	for _, c := range []struct {
		what   string
		header map[string]string
		want   int
	}{
		{"a plain request", nil, http.StatusOK},
		{"by name", map[string]string{"Host": "localhost:" + port}, http.StatusOK},
		{"by another loopback address", map[string]string{"Host": "127.0.0.2:" + port}, http.StatusOK},
		{"by IPv6", map[string]string{"Host": "[::1]:" + port}, http.StatusOK},
		{"typed into the address bar", map[string]string{"Sec-Fetch-Site": "none"}, http.StatusOK},
		{"from the page", map[string]string{"Sec-Fetch-Site": "same-origin", "Origin": "http://127.0.0.1:" + port}, http.StatusOK},
		{"a name that was made to point here", map[string]string{"Host": "rebound.example:" + port}, http.StatusForbidden},
		{"a name that begins like ours", map[string]string{"Host": "localhost.example:" + port}, http.StatusForbidden},
		{"a name that ends like ours", map[string]string{"Host": "example.localhost:" + port}, http.StatusForbidden},
		{"an address of elsewhere", map[string]string{"Host": "192.0.2.7:" + port}, http.StatusForbidden},
		{"another port", map[string]string{"Host": "127.0.0.1:1"}, http.StatusForbidden},
		{"no port", map[string]string{"Host": "127.0.0.1"}, http.StatusForbidden},
		{"a host that is none", map[string]string{"Host": "[::1"}, http.StatusForbidden},
		{"another origin", map[string]string{"Origin": "http://other.example"}, http.StatusForbidden},
		{"an origin that is hidden", map[string]string{"Origin": "null"}, http.StatusForbidden},
		{"another program on this machine", map[string]string{"Origin": "http://127.0.0.1:1"}, http.StatusForbidden},
		{"our host, encrypted", map[string]string{"Origin": "https://127.0.0.1:" + port}, http.StatusForbidden},
		{"another site, as the browser says", map[string]string{"Sec-Fetch-Site": "cross-site"}, http.StatusForbidden},
		{"another port, as the browser says", map[string]string{"Sec-Fetch-Site": "same-site"}, http.StatusForbidden},
		{"a site of a kind yet unknown", map[string]string{"Sec-Fetch-Site": "elsewhere"}, http.StatusForbidden},
	} {
		for _, path := range []string{"", "api/state", "page.js", "api/score?plan=kl&shot=31C&page=1"} {
			if res, body := ask(t, "GET", s.URL()+path, c.header, ""); res.StatusCode != c.want {
				t.Errorf("%s: /%s: %d %q, want %d", c.what, path, res.StatusCode, body, c.want)
			}
		}
	}
}

func TestEveryAnswerIsHardened(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "lantern.pull"))
	for _, path := range []string{"", "page.js", "no-such-file", "api/state", "api/score?plan=kl&shot=31C&page=1"} {
		res, _ := ask(t, "GET", s.URL()+path, nil, "")
		for name, want := range map[string]string{
			"X-Content-Type-Options":       "nosniff",
			"Referrer-Policy":              "no-referrer",
			"Cross-Origin-Opener-Policy":   "same-origin",
			"Cross-Origin-Resource-Policy": "same-origin",
			"Content-Security-Policy":      policy,
		} {
			if got := res.Header.Get(name); got != want {
				t.Errorf("/%s: %s is %q, want %q", path, name, got, want)
			}
		}
		if got := res.Header.Get("Access-Control-Allow-Origin"); got != "" {
			t.Errorf("/%s lets %s read", path, got)
		}
	}
	for _, not := range []string{"unsafe", "*", "http:", "data:", "blob:"} {
		if strings.Contains(policy, not) {
			t.Errorf("the policy has %s", not)
		}
	}
	for _, want := range []string{"default-src 'none'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'none'"} {
		if !strings.Contains(policy, want) {
			t.Errorf("the policy has no %s", want)
		}
	}
}

func TestNothingButThePagesFilesIsRead(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "lantern.pull"))
	for _, path := range []string{
		"/../server.go", "/..%2fserver.go", "/%2e%2e/server.go", "/web/page.js", "//etc/passwd", "/%2fetc%2fpasswd", "/page.js/",
		"/page.js%00", `/..\server.go`, "/api", "/api/", "/api/score/../../server.go", "/.", "/index.html%3f", "/lantern.pull", "/examples/lantern.pull",
		"/api/score?plan=../../examples&shot=31C", "/api/score?plan=kl&shot=../31C", "/api/score?plan=kl&shot=31C&page=../1",
		"/api/score?plan=kl&shot=31C&page=0", "/api/score?plan=kl&shot=31C&page=2", "/api/score?plan=kl&shot=31C&page=-1", "/api/score?plan=kl&shot=31C", "/api/score",
	} {
		res, body := ask(t, "GET", strings.TrimSuffix(s.URL(), "/")+path, nil, "")
		if res.StatusCode < 300 || strings.Contains(body, "package preview") || strings.Contains(body, "root:") {
			t.Errorf("%s is answered with %d %.60q", path, res.StatusCode, body)
		}
	}
}

func TestWritesNeedTheToken(t *testing.T) {
	s := serve(t, Options{})
	wrote := 0
	s.http.Handler = s.guard(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { wrote++ }))
	good := map[string]string{tokenHeader: s.token, "Content-Type": "application/json"}
	with := func(name, value string) map[string]string {
		h := map[string]string{}
		for k, v := range good {
			h[k] = v
		}
		h[name] = value
		return h
	}
	for _, c := range []struct {
		what, method string
		header       map[string]string
		want         int
	}{
		{"with the token", "POST", good, http.StatusOK},
		{"without a token", "POST", with(tokenHeader, ""), http.StatusForbidden},
		{"with part of it", "POST", with(tokenHeader, s.token[:10]), http.StatusForbidden},
		{"with another", "POST", with(tokenHeader, strings.ToLower(s.token)), http.StatusForbidden},
		{"as a form, which any page can send", "POST", with("Content-Type", "text/plain"), http.StatusUnsupportedMediaType},
		{"as nothing", "POST", with("Content-Type", ""), http.StatusUnsupportedMediaType},
		{"from elsewhere", "POST", with("Origin", "http://other.example"), http.StatusForbidden},
		{"another method", "PUT", good, http.StatusMethodNotAllowed},
		{"one that deletes", "DELETE", good, http.StatusMethodNotAllowed},
	} {
		before := wrote
		res, body := ask(t, c.method, s.URL()+"api/take", c.header, "{}")
		if res.StatusCode != c.want || (wrote > before) != (c.want == http.StatusOK) {
			t.Errorf("%s: %d %q, want %d; written: %v", c.what, res.StatusCode, body, c.want, wrote > before)
		}
	}
}

func TestBodiesAndAddressesHaveLimits(t *testing.T) {
	s := serve(t, Options{})
	s.http.Handler = s.guard(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		buf := make([]byte, 1<<10)
		for {
			if _, err := r.Body.Read(buf); err != nil {
				if err.Error() != "EOF" {
					http.Error(w, err.Error(), http.StatusRequestEntityTooLarge)
				}
				return
			}
		}
	}))
	header := map[string]string{tokenHeader: s.token, "Content-Type": "application/json"}
	for size, want := range map[int]int{maxBody: http.StatusOK, maxBody + 1: http.StatusRequestEntityTooLarge} {
		if res, _ := ask(t, "POST", s.URL(), header, strings.Repeat("x", size)); res.StatusCode != want {
			t.Errorf("%d bytes: %d, want %d", size, res.StatusCode, want)
		}
	}
	if res, _ := ask(t, "GET", s.URL()+"?plan="+strings.Repeat("x", maxQuery), nil, ""); res.StatusCode != http.StatusRequestURITooLong {
		t.Errorf("a long address: %d", res.StatusCode)
	}
}

func TestAnOpenAddressNeedsItsToken(t *testing.T) {
	s := serve(t, Options{Addr: "0.0.0.0:0"})
	base := "http://127.0.0.1:" + s.hosts.port + "/"
	if s.access == "" || !strings.Contains(s.URL(), "?token="+s.access) {
		t.Fatalf("the address %s has no token", s.URL())
	}
	for _, path := range []string{"", "?token=", "?token=" + s.access[:8], "?token=" + strings.ToLower(s.access), "events", "api/state", "page.js"} {
		if res, _ := ask(t, "GET", base+path, nil, ""); res.StatusCode != http.StatusForbidden {
			t.Errorf("/%s without the token: %d", path, res.StatusCode)
		}
	}
	if res, _ := ask(t, "GET", base, map[string]string{"Host": "rebound.example:" + s.hosts.port, "Cookie": s.cookieName() + "=" + s.access}, ""); res.StatusCode != http.StatusForbidden {
		t.Errorf("a rebound name with the cookie: %d", res.StatusCode)
	}
	res, _ := ask(t, "GET", base+"?token="+s.access, nil, "")
	cookies := res.Cookies()
	if res.StatusCode != http.StatusSeeOther || res.Header.Get("Location") != "/" || len(cookies) != 1 {
		t.Fatalf("with the token: %d to %q with cookies %v", res.StatusCode, res.Header.Get("Location"), cookies)
	}
	if c := cookies[0]; !c.HttpOnly || c.SameSite != http.SameSiteStrictMode {
		t.Errorf("the cookie %v can be read or sent by others", c)
	}
	header := map[string]string{"Cookie": cookies[0].Name + "=" + cookies[0].Value}
	if res, body := ask(t, "GET", base+"api/state", header, ""); res.StatusCode != http.StatusOK || !strings.Contains(body, s.token) {
		t.Errorf("with the cookie: %d %q", res.StatusCode, body)
	}
	header["Content-Type"] = "application/json"
	if res, _ := ask(t, "POST", base+"api/take", header, "{}"); res.StatusCode != http.StatusForbidden {
		t.Errorf("a write with the cookie alone: %d", res.StatusCode)
	}
}

func TestOnlyLoopbackUnlessAsked(t *testing.T) {
	s := serve(t, Options{})
	if s.hosts.open || !strings.HasPrefix(s.URL(), "http://127.0.0.1:") || s.access != "" {
		t.Errorf("listens at %s", s.URL())
	}
	for _, addr := range []string{"nonsense", "127.0.0.1", "127.0.0.1:99999", "[::1", "no-such-host.invalid:0"} {
		if _, err := New(Options{Addr: addr}); err == nil {
			t.Errorf("listens at %q", addr)
		}
	}
}

func TestRunsHaveTheirOwnTokens(t *testing.T) {
	a, b := serve(t, Options{}), serve(t, Options{})
	if a.token == b.token || a.run == b.run || len(a.token) < 26 {
		t.Errorf("tokens %s and %s of runs %s and %s", a.token, b.token, a.run, b.run)
	}
}
