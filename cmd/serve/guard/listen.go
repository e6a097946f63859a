package guard

import (
	"net"
	"sync"
	"time"
)

// Room is how many connections a listener holds.
type Room struct {
	All    int // of everybody; 0 is 256
	Client int // of one client; 0 is 100
}

// Listen bounds the connections of a listener. One more is told to come again, where that can be told before there is TLS, and closed.
func Listen(l net.Listener, room Room, secure bool) net.Listener {
	if room.All == 0 {
		room.All = 256
	}
	if room.Client == 0 {
		room.Client = 100
	}
	return &bounded{Listener: l, room: room, secure: secure, of: map[string]int{}, telling: make(chan struct{}, 256)}
}

type bounded struct {
	net.Listener
	room    Room
	secure  bool
	telling chan struct{} // who is being told to come again

	mu  sync.Mutex
	all int
	of  map[string]int // by client
}

// Accept waits for a connection for which there is room.
func (b *bounded) Accept() (net.Conn, error) {
	for {
		c, err := b.Listener.Accept()
		if err != nil {
			return nil, err
		}
		client := clientOf(ipOf(c), c.RemoteAddr().String())
		if b.enter(client) {
			return &counted{Conn: c, left: sync.OnceFunc(func() { b.leave(client) })}, nil
		}
		b.turnAway(c)
	}
}

func ipOf(c net.Conn) net.IP {
	if a, is := c.RemoteAddr().(*net.TCPAddr); is {
		return a.IP
	}
	return nil
}

func (b *bounded) enter(client string) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.all >= b.room.All || b.of[client] >= b.room.Client {
		return false
	}
	b.all++
	b.of[client]++
	return true
}

func (b *bounded) leave(client string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.all--
	if b.of[client]--; b.of[client] == 0 {
		delete(b.of, client)
	}
}

const comeAgain = "HTTP/1.1 503 Service Unavailable\r\nRetry-After: 2\r\nConnection: close\r\nContent-Type: text/plain; charset=utf-8\r\nContent-Length: 45\r\n\r\nToo much is asked at once. Come again later.\n"

// turnAway says that there is no room, behind what was asked, and waits a little for the client to go: else the answer is lost with the connection.
func (b *bounded) turnAway(c net.Conn) {
	select {
	case b.telling <- struct{}{}:
	default:
		c.Close()
		return
	}
	go func() {
		defer func() { c.Close(); <-b.telling }()
		if b.secure {
			return
		}
		_ = c.SetDeadline(time.Now().Add(2 * time.Second))
		buf := make([]byte, 4096)
		if _, err := c.Read(buf); err != nil {
			return
		}
		if _, err := c.Write([]byte(comeAgain)); err != nil {
			return
		}
		if half, is := c.(*net.TCPConn); is {
			_ = half.CloseWrite()
		}
		for range 64 {
			if _, err := c.Read(buf); err != nil {
				return
			}
		}
	}()
}

// counted is a connection that gives its room back when it is closed.
type counted struct {
	net.Conn
	left func()
}

// Close closes the connection.
func (c *counted) Close() error {
	defer c.left()
	return c.Conn.Close()
}
