package attacks

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"math/big"
	"net"
	"net/netip"
	"os"
	"path/filepath"
	"regexp"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
	"maltwright/cmd/serve"
	"maltwright/cmd/serve/browsertest"
	"maltwright/cmd/serve/guard"
)

// served is a folder that is served as the command does it.
type served struct {
	folder     string
	base, page string // the address, and the link that opens it
	server     *guard.Server
}

// serving serves a folder at an address of this machine as of a day on which a batch is under way.
func serving(t testing.TB, path string, address netip.Addr, cert *tls.Certificate) *served {
	t.Helper()
	began := time.Now()
	clock := func() time.Time { return time.Date(2026, 10, 30, 12, 0, 0, 0, time.Local).Add(time.Since(began)) }
	f, err := folder.Open(path, folder.Options{Clock: clock})
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, f.Close()) })
	l, err := net.Listen("tcp", netip.AddrPortFrom(address, 0).String())
	require.NoError(t, err)
	port := l.Addr().(*net.TCPAddr).Port //nolint:forcetypeassert // it was asked for by TCP
	o := guard.Options{Hosts: guard.Names(address, port), Secure: cert != nil, Write: guard.NewToken(), Read: guard.NewToken(), Calendar: guard.NewToken()}
	s := &served{folder: path, base: map[bool]string{false: "http://", true: "https://"}[cert != nil] + o.Hosts[0]}
	s.page = guard.Link(s.base, o.Write)
	s.server = guard.NewServer(guard.Around(serve.New(f, serve.Options{Clock: clock, MayWrite: guard.MayWrite, Calendar: guard.CalendarLink(s.base, o.Calendar)}), o), l, guard.Room{}, guard.Unhurried, cert, func(line string) { t.Log(line) })
	ended := make(chan error, 1)
	go func() { ended <- s.server.Serve() }()
	t.Cleanup(func() {
		ctx, cancel := context.WithCancel(context.Background())
		cancel()
		s.server.Stop(ctx)
		assert.NoError(t, <-ended)
	})
	return s
}

var loopback = netip.MustParseAddr("127.0.0.1")

// home serves a copy of a house of the examples.
func home(t testing.TB) *served {
	t.Helper()
	return serving(t, browsertest.Folder(t, "home"), loopback, nil)
}

var batchLink = regexp.MustCompile(`href="(/batch/[a-z0-9]+)"`)

// batch is the path of a batch that a tab shows.
func batch(t testing.TB, tab *browsertest.Tab) string {
	t.Helper()
	m := batchLink.FindStringSubmatch(tab.HTML())
	require.NotNil(t, m)
	return m[1]
}

// ownAddress is an address by which others reach this machine.
func ownAddress(t testing.TB) netip.Addr {
	t.Helper()
	list, err := guard.Interfaces()
	require.NoError(t, err)
	if len(list) == 0 {
		t.Skip("this machine is in no network: NOT TESTED over one")
	}
	return list[0].Address
}

// certificate vouches for an address.
func certificate(t testing.TB, address netip.Addr) *tls.Certificate {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	c := &x509.Certificate{SerialNumber: big.NewInt(1), IPAddresses: []net.IP{address.AsSlice()}, NotAfter: time.Now().Add(time.Hour)}
	der, err := x509.CreateCertificate(rand.Reader, c, c, &key.PublicKey, key)
	require.NoError(t, err)
	return &tls.Certificate{Certificate: [][]byte{der}, PrivateKey: key}
}

func filesOf(t testing.TB, folder string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		all[path] = string(text)
		return err
	}))
	return all
}
