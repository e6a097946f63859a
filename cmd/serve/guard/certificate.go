package guard

import (
	"crypto/tls"
	"crypto/x509"
	"errors"
	"fmt"
	"net/netip"
	"slices"
	"strings"
	"time"
)

// Certified is a certificate that fits an address.
type Certified struct {
	Certificate *tls.Certificate
	Host        string    // by which the page is opened: the address, or a name that leads to it
	Names       []string  // all names it vouches for that a browser may ask by
	Ends        time.Time // when it runs out
}

// Certify reads a certificate and its key, in the form PEM, and checks that they fit each other, that the certificate holds at
// a time, and that it is for the address, or for a name that leads to it.
func Certify(cert, key []byte, address netip.Addr, now time.Time, lookup func(name string) ([]netip.Addr, error)) (Certified, error) {
	pair, err := tls.X509KeyPair(cert, key)
	if err != nil {
		return Certified{}, fmt.Errorf("certificate and key do not fit: %s", strings.TrimPrefix(err.Error(), "tls: "))
	}
	leaf, err := x509.ParseCertificate(pair.Certificate[0])
	if err != nil {
		return Certified{}, errors.New("the certificate cannot be read")
	}
	c := Certified{Certificate: &pair, Ends: leaf.NotAfter}
	switch {
	case now.After(leaf.NotAfter):
		return c, fmt.Errorf("the certificate ran out on %s", leaf.NotAfter.Local().Format("2006-01-02 15:04"))
	case now.Before(leaf.NotBefore):
		return c, fmt.Errorf("the certificate holds from %s on", leaf.NotBefore.Local().Format("2006-01-02 15:04"))
	}
	for _, ip := range leaf.IPAddresses {
		if a, ok := netip.AddrFromSlice(ip); ok && a.Unmap() == address {
			c.Host = Host(address)
		}
	}
	for _, name := range leaf.DNSNames {
		if strings.Contains(name, "*") {
			continue // it does not say which
		}
		found, err := lookup(name)
		if err == nil && slices.ContainsFunc(found, func(a netip.Addr) bool { return a.Unmap() == address }) {
			c.Names = append(c.Names, name)
		}
	}
	if c.Host == "" && len(c.Names) > 0 {
		c.Host = c.Names[0]
	}
	if c.Host == "" {
		return c, fmt.Errorf("the certificate is for %s, and not for %s nor for a name that leads there", vouched(leaf), address)
	}
	return c, nil
}

// vouched are the names that a certificate is for.
func vouched(leaf *x509.Certificate) string {
	names := slices.Clone(leaf.DNSNames)
	for _, ip := range leaf.IPAddresses {
		names = append(names, ip.String())
	}
	if len(names) == 0 {
		return "no name"
	}
	return strings.Join(names, ", ")
}

// Host is an address as the host of a URL, in brackets where it is one of IPv6.
func Host(a netip.Addr) string {
	if a.Is6() {
		return "[" + a.String() + "]"
	}
	return a.String()
}

// Names gives the names with their port by which a page may be asked for: those of this machine itself, the address it listens on, and those of its
// certificate. A browser leaves the port of its scheme out, as 80 of http, and is known without it.
func Names(address netip.Addr, port int, more ...string) []string {
	var hosts []string
	for _, name := range append([]string{Host(address), "127.0.0.1", "localhost", "[::1]"}, more...) {
		host := fmt.Sprintf("%s:%d", name, port)
		if !slices.Contains(hosts, host) {
			hosts = append(hosts, host)
		}
	}
	if port == 80 || port == 443 {
		for _, host := range slices.Clone(hosts) {
			hosts = append(hosts, strings.TrimSuffix(host, fmt.Sprintf(":%d", port)))
		}
	}
	return hosts
}
