package serve

import (
	"net/http"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// The clock of a phone may go by another zone than the machine that keeps the records: the time is that of the machine, in what is written and in
// the form that is shown again.
func TestAPhoneOfAnotherZoneSaysWhenAReadingWasTaken(t *testing.T) {
	s, batch := growing(t)
	taken := time.Date(2026, 4, 14, 10, 15, 0, 0, time.Local)
	elsewhere := taken.In(time.FixedZone("", int((5*time.Hour + 45*time.Minute).Seconds()))).Format("2006-01-02T15:04:05.000Z07:00")
	s.wrote(batch, "kind", "temperature", "place", "bed", "value", "16.5", "unit", "°C", "at", elsewhere)
	assert.Contains(t, s.squeezed("26-05.malt"), "read bed 16.5 °C at 2026-04-14 10:15")
	a := s.post(batch+"/reading", "kind", "temperature", "place", "bed", "value", "1650", "unit", "°C", "at", elsewhere)
	assert.NotEqual(t, http.StatusOK, a.status)
	assert.Contains(t, a.body, `value="2026-04-14T10:15"`)
}
