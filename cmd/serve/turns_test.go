package serve

import (
	"context"
	"net/http"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
	"maltwright/cmd/report"
)

// slow is a folder whose reports take as long as those who ask for them wait.
type slow struct {
	keeper
	begun chan struct{}
}

func (k slow) Report(ctx context.Context, _ folder.ID, _ time.Time) (report.Report, error) {
	k.begun <- struct{}{}
	<-ctx.Done()
	return report.Report{}, ctx.Err()
}

// Reports that are asked for all at once take few of the places that a reading needs too: the rest is told at once to come again.
func TestReportsLeaveRoomForReadings(t *testing.T) {
	k := slow{begun: make(chan struct{}, 100)}
	s := &server{Options: Options{Clock: time.Now}, keep: k, turns: newTurns()}
	ctx, end := context.WithCancel(t.Context())
	defer end()
	var all sync.WaitGroup
	told := make(chan error, 100)
	for range 32 {
		all.Go(func() {
			r, err := http.NewRequestWithContext(ctx, http.MethodGet, "/batch/1/report", nil)
			if err == nil {
				err = s.report(nil, r)
			}
			told <- err
		})
	}
	for range 32 - atOnce - waiting {
		require.ErrorIs(t, <-told, errMuch)
	}
	for range atOnce {
		<-k.begun
	}
	end()
	all.Wait()
	assert.Empty(t, s.turns.line)
	assert.Empty(t, s.turns.at)
	status, _ := statusOf(errMuch)
	assert.Equal(t, http.StatusServiceUnavailable, status)
}

// full is a folder on a disk that is full.
type full struct{ keeper }

func (full) Note(context.Context, folder.ID, folder.Reading, bool) (folder.Answer, error) {
	return folder.Answer{}, &folder.Failed{File: "26-05.malt", Says: "no space left on device"}
}

func TestOnAFullDiskWhatWasTypedStaysInTheForm(t *testing.T) {
	s, batch := growing(t)
	d, err := folder.Open(s.folder, folder.Options{Clock: s.now})
	require.NoError(t, err)
	defer d.Close()
	s.Handler = handler(full{d}, Options{Clock: s.now, MayWrite: s.mayWrite})
	a := s.post(batch+"/reading", "kind", "remark", "text", "warm at the wall", "write", "sure")
	assert.Equal(t, http.StatusInternalServerError, a.status)
	assert.Contains(t, plain(a.body), "not written 26-05.malt: no space left on device")
	assert.Contains(t, a.body, `value="warm at the wall"`)
}
