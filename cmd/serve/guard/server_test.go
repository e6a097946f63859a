package guard

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hung is how long a test waits for what does not come; it is no measure of speed.
const hung = time.Minute

// running is a guard that is served on loopback.
type running struct {
	*Server
	guard *Guard
	base  string
	addr  string
	ended chan error
}

func serve(t testing.TB, h http.Handler, limits Limits, room Room, pace Pace) *running {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	g := Around(h, Options{Hosts: []string{l.Addr().String()}, Write: NewToken(), Read: NewToken(), Calendar: NewToken(), Limits: limits})
	s := &running{NewServer(g, l, room, pace, nil, func(line string) { t.Log(line) }), g, "http://" + l.Addr().String(), l.Addr().String(), make(chan error, 1)}
	go func() { s.ended <- s.Serve() }()
	t.Cleanup(func() {
		ctx, cancel := context.WithCancel(context.Background())
		cancel()
		s.Stop(ctx)
		assert.NoError(t, <-s.ended)
	})
	return s
}

// opened is a client that came by the link.
func (s *running) opened(t testing.TB, token Token) *http.Client {
	t.Helper()
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	c := &http.Client{Jar: jar, Transport: &http.Transport{MaxIdleConnsPerHost: 300}, Timeout: hung}
	t.Cleanup(c.CloseIdleConnections)
	r, err := c.Get(Link(s.base, token))
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, r.StatusCode)
	r.Body.Close()
	return c
}

var hello = http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { fmt.Fprint(w, "hello") })

// cookieLine is the header with which a client of bare bytes is known.
func (s *running) cookieLine() string {
	return "Cookie: " + s.guard.cookies.name + "=" + string(s.guard.cookies.known[writer]) + "\r\n"
}

func TestSlowClientsAreCutOff(t *testing.T) {
	s := serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if _, err := io.ReadAll(r.Body); err != nil {
			http.Error(w, "not read", http.StatusBadRequest)
			return
		}
		fmt.Fprint(w, "written")
	}), Limits{}, Room{}, Pace{Headers: 200 * time.Millisecond, Request: 400 * time.Millisecond, Answer: hung, Idle: 200 * time.Millisecond})
	for name, begin := range map[string]string{
		"nothing":      "",
		"slow headers": "GET / HTTP/1.1\r\nHost: " + s.addr + "\r\nX-Slow: ",
		"slow body":    "POST / HTTP/1.1\r\nHost: " + s.addr + "\r\n" + s.cookieLine() + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\nwords=",
		"idle":         "GET / HTTP/1.1\r\nHost: " + s.addr + "\r\n" + s.cookieLine() + "\r\n",
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			c, err := net.Dial("tcp", s.addr)
			require.NoError(t, err)
			defer c.Close()
			_, err = io.WriteString(c, begin)
			require.NoError(t, err)
			if strings.HasPrefix(name, "slow") {
				drip(t, c)
			}
			require.NoError(t, c.SetReadDeadline(time.Now().Add(hung)))
			answer, err := io.ReadAll(c)
			assert.False(t, errors.Is(err, os.ErrDeadlineExceeded), "the connection stays open")
			assert.Equal(t, name == "idle", strings.Contains(string(answer), "written"))
		})
	}
}

// drip sends a letter now and then, until nobody takes it.
func drip(t *testing.T, c net.Conn) {
	ended := make(chan struct{})
	t.Cleanup(func() { <-ended })
	go func() {
		defer close(ended)
		for range 1000 {
			if _, err := io.WriteString(c, "a"); err != nil {
				return
			}
			time.Sleep(50 * time.Millisecond)
		}
	}()
}

func TestABodyThatIsTooLargeIsNotRead(t *testing.T) {
	var most atomic.Int64
	s := serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		n, err := io.Copy(io.Discard, r.Body)
		most.Store(max(most.Load(), n))
		if err != nil {
			http.Error(w, "too large", http.StatusRequestEntityTooLarge)
		}
	}), Limits{}, Room{}, Unhurried)
	c := s.opened(t, s.guard.Write)
	most.Store(0)
	for name, body := range map[string]io.Reader{
		"said":    strings.NewReader(strings.Repeat("a", 1<<20)),
		"chunked": io.MultiReader(strings.NewReader(strings.Repeat("a", 1<<20)), strings.NewReader("b")),
	} {
		r, err := c.Post(s.base+"/batch/1/reading", "application/x-www-form-urlencoded", body)
		if err == nil { // else the server closed before all of it was sent
			assert.Equal(t, http.StatusRequestEntityTooLarge, r.StatusCode, name)
			r.Body.Close()
		}
	}
	assert.LessOrEqual(t, most.Load(), Usual.Body)
	r, err := c.Get(s.base)
	require.NoError(t, err)
	defer r.Body.Close()
	assert.Equal(t, http.StatusOK, r.StatusCode, "and the next is served")

	bare, err := net.Dial("tcp", s.addr)
	require.NoError(t, err)
	defer bare.Close()
	go func() {
		_, _ = io.WriteString(bare, "GET / HTTP/1.1\r\nHost: "+s.addr+"\r\nX-Long: "+strings.Repeat("a", 30<<10)+"\r\n\r\n")
	}()
	line, err := bufio.NewReader(bare).ReadString('\n')
	require.NoError(t, err)
	assert.Contains(t, line, "431", "headers are bounded too")
}

// Two hundred at once are answered, or told to come again, and what they take is given back.
func TestTwoHundredClientsAtOnce(t *testing.T) {
	for name, limits := range map[string]struct {
		limits Limits
		room   Room
	}{
		"room for all":  {Limits{Burst: 1000}, Room{Client: 1000}},
		"room for some": {Limits{Burst: 1000, AtOnce: 4, Wait: 20 * time.Millisecond}, Room{All: 60, Client: 60}},
		"as usual":      {},
	} {
		t.Run(name, func(t *testing.T) {
			s := serve(t, http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
				time.Sleep(5 * time.Millisecond)
				_, _ = w.Write(make([]byte, 32<<10))
			}), limits.limits, limits.room, Unhurried)
			c := s.opened(t, s.guard.Write)
			var before, after runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&before)
			var served, again, cut atomic.Int64
			var all sync.WaitGroup
			for range 200 {
				all.Go(func() {
					r, err := c.Get(s.base)
					if err != nil {
						cut.Add(1)
						return
					}
					defer r.Body.Close()
					_, _ = io.Copy(io.Discard, r.Body)
					switch r.StatusCode {
					case http.StatusOK:
						served.Add(1)
					case http.StatusServiceUnavailable, http.StatusTooManyRequests:
						assert.NotEmpty(t, r.Header.Get("Retry-After"))
						again.Add(1)
					default:
						t.Errorf("answered with %d", r.StatusCode)
					}
				})
			}
			all.Wait()
			runtime.ReadMemStats(&after)
			t.Logf("%d served, %d told to come again, %d closed at once; %d KiB more in use", served.Load(), again.Load(), cut.Load(), (int64(after.Sys)-int64(before.Sys))>>10)
			assert.Equal(t, int64(200), served.Load()+again.Load()+cut.Load())
			assert.NotZero(t, served.Load())
			if name == "room for all" {
				assert.Equal(t, int64(200), served.Load())
			}
			assert.Less(t, int64(after.Sys)-int64(before.Sys), int64(64<<20), "clients and server together")
			c.CloseIdleConnections()
			assert.Eventually(t, func() bool {
				r, err := c.Get(s.base)
				if err != nil {
					return false
				}
				defer r.Body.Close()
				return r.StatusCode == http.StatusOK
			}, hung, 50*time.Millisecond, "and then there is room again")
		})
	}
}

func TestConnectionsThatSayNothingKeepNobodyOut(t *testing.T) {
	s := serve(t, hello, Limits{}, Room{All: 20, Client: 20}, Pace{Headers: 300 * time.Millisecond, Request: time.Second, Answer: time.Second, Idle: 300 * time.Millisecond})
	for range 60 {
		c, err := net.Dial("tcp", s.addr)
		require.NoError(t, err)
		defer c.Close()
	}
	var said string
	require.Eventually(t, func() bool { // the kernel takes them before the server does
		c, err := net.Dial("tcp", s.addr)
		if err != nil {
			return false
		}
		defer c.Close()
		_ = c.SetDeadline(time.Now().Add(hung))
		_, _ = io.WriteString(c, "GET / HTTP/1.1\r\nHost: "+s.addr+"\r\n"+s.cookieLine()+"Connection: close\r\n\r\n")
		b, _ := io.ReadAll(c)
		said = string(b)
		return strings.HasSuffix(said, "hello")
	}, hung, 100*time.Millisecond, "last was %q", said)
}

func TestOneClientLeavesRoomForOthers(t *testing.T) {
	b := &bounded{room: Room{All: 10, Client: 4}, of: map[string]int{}}
	for range 4 {
		assert.True(t, b.enter("a"))
	}
	assert.False(t, b.enter("a"))
	assert.True(t, b.enter("b"))
	b.leave("a")
	assert.True(t, b.enter("a"))
	for i := range 5 {
		assert.True(t, b.enter(string(rune('c'+i))))
	}
	assert.False(t, b.enter("x"), "ten in all")
	b.leave("b")
	assert.True(t, b.enter("x"))
	for _, ip := range []string{"2001:db8:1:2::1", "2001:db8:1:2:ffff::9"} {
		assert.Equal(t, "2001:db8:1:2::", clientOf(net.ParseIP(ip), ""), "a machine chooses its address within its network")
	}
	assert.Equal(t, "192.0.2.1", clientOf(net.ParseIP("::ffff:192.0.2.1"), ""))
}

// What was asked when the server is stopped is written and answered; what was not is neither.
func TestStoppingLosesNothing(t *testing.T) {
	for round := range 10 {
		var mu sync.Mutex
		written := map[string]int{}
		s := serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if err := r.ParseForm(); err != nil || r.Method != http.MethodPost {
				return
			}
			time.Sleep(time.Duration(round) * time.Millisecond)
			mu.Lock()
			defer mu.Unlock()
			written[r.PostForm.Get("words")]++
			fmt.Fprint(w, "written")
		}), Limits{Burst: 10000, PerSecond: 10000}, Room{}, Unhurried)
		c := s.opened(t, s.guard.Write)
		answered := map[string]int{}
		var posts sync.WaitGroup
		for who := range 8 {
			posts.Go(func() {
				for n := range 1000 {
					words := fmt.Sprintf("%d-%d", who, n)
					r, err := c.PostForm(s.base+"/batch/1/reading", url.Values{"words": {words}})
					if err != nil {
						return // refused
					}
					b, err := io.ReadAll(r.Body)
					r.Body.Close()
					if err == nil && string(b) == "written" {
						mu.Lock()
						answered[words]++
						mu.Unlock()
					}
				}
			})
		}
		require.Eventually(t, func() bool { mu.Lock(); defer mu.Unlock(); return len(answered) > 8*round }, hung, time.Millisecond)
		idle, err := net.Dial("tcp", s.addr) // as browsers open them in advance
		require.NoError(t, err)
		ctx, cancel := context.WithTimeout(t.Context(), hung)
		assert.True(t, s.Stop(ctx), "all was answered in time")
		posts.Wait()
		mu.Lock()
		assert.NotEmpty(t, answered)
		assert.Equal(t, answered, written, "what is written was answered, and once")
		mu.Unlock()
		cancel()
		idle.Close()
		_, err = net.Dial("tcp", s.addr)
		assert.Error(t, err, "nobody listens any more")
	}
}

func TestWhatDoesNotEndIsCutWhenThePatienceEnds(t *testing.T) {
	begun, free := make(chan struct{}), make(chan struct{})
	s := serve(t, http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodPost {
			close(begun)
			<-free
		}
	}), Limits{}, Room{}, Unhurried)
	defer close(free)
	c := s.opened(t, s.guard.Write)
	go func() {
		r, err := c.PostForm(s.base+"/", url.Values{})
		if err == nil {
			r.Body.Close()
		}
	}()
	<-begun
	ctx, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer cancel()
	assert.False(t, s.Stop(ctx))
}
