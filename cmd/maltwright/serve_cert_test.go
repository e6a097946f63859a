package main

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"math/big"
	"net"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

// certify writes malt.pem and malt.key for addresses and names into a folder; they hold for a year from now on.
func certify(t testing.TB, folder string, hosts ...string) {
	t.Helper()
	certifyFor(t, folder, time.Now().Add(365*24*time.Hour), hosts...)
}

func certifyFor(t testing.TB, folder string, until time.Time, hosts ...string) {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	c := &x509.Certificate{SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "malt"}, NotBefore: until.Add(-2 * 365 * 24 * time.Hour), NotAfter: until}
	for _, host := range hosts {
		if ip := net.ParseIP(host); ip != nil {
			c.IPAddresses = append(c.IPAddresses, ip)
		} else {
			c.DNSNames = append(c.DNSNames, host)
		}
	}
	der, err := x509.CreateCertificate(rand.Reader, c, c, &key.PublicKey, key)
	require.NoError(t, err)
	secret, err := x509.MarshalPKCS8PrivateKey(key)
	require.NoError(t, err)
	for name, block := range map[string]*pem.Block{"malt.pem": {Type: "CERTIFICATE", Bytes: der}, "malt.key": {Type: "PRIVATE KEY", Bytes: secret}} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), pem.EncodeToMemory(block), 0o600))
	}
}

func TestACertificateMustBeThatOfTheAddress(t *testing.T) {
	folder := browsertest.Folder(t, "home")
	own := ownAddress(t).String()
	said := func() (int, string) {
		code, _, errs := runIn(folder, "serve", "--lan", own, "--cert", "malt.pem", "--key", "malt.key")
		return code, errs
	}
	certify(t, folder, "192.0.2.99", "malt.invalid")
	code, errs := said()
	assert.Equal(t, ExitFailed, code)
	assert.Equal(t, "maltwright: malt.pem: the certificate is for malt.invalid, 192.0.2.99, and not for "+own+" nor for a name that leads there\n", errs)

	certifyFor(t, folder, time.Now().Add(-time.Hour), own)
	code, errs = said()
	assert.Equal(t, ExitFailed, code)
	assert.Contains(t, errs, "the certificate ran out on ")

	certifyFor(t, folder, time.Now().Add(3*365*24*time.Hour), own)
	code, errs = said()
	assert.Equal(t, ExitFailed, code)
	assert.Contains(t, errs, "the certificate holds from ")

	other := t.TempDir()
	certify(t, other, own)
	key, err := os.ReadFile(filepath.Join(other, "malt.key"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "malt.key"), key, 0o600))
	code, errs = said()
	assert.Equal(t, ExitFailed, code)
	assert.Contains(t, errs, "certificate and key do not fit: ")
	assert.NotContains(t, errs, "BEGIN")

	certifyFor(t, folder, time.Now().Add(9*24*time.Hour+time.Hour), own)
	s := servingFolder(t, folder, nil, "--lan", own, "--cert", "malt.pem", "--key", "malt.key")
	assert.Contains(t, s.said.String(), "Nobody overhears it. The certificate runs out on ")
	assert.Contains(t, s.said.String(), ", in 9 days.")
	assert.Contains(t, s.page, "https://")
}
