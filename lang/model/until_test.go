package model_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
)

func TestARecordAsItWasHasNothingOfLater(t *testing.T) {
	at := func(hour int) model.Seen {
		return model.Seen{At: model.Instant{Time: time.Date(2026, 3, 6, hour, 0, 0, 0, time.UTC)}}
	}
	b := &model.Batch{Readings: []model.Reading{&model.Turned{Seen: at(8)}, &model.Turned{}, &model.Turned{Seen: at(10)}},
		Remarks: []model.Remark{{Seen: at(9)}, {Seen: at(11)}}, Tested: []model.Tested{{Seen: at(12)}}}
	then := b.Until(at(9).At.Time)
	assert.Len(t, then.Readings, 2, "a line that does not say when it was stays")
	assert.Len(t, then.Remarks, 1)
	assert.Empty(t, then.Tested)
	assert.Len(t, b.Lines(), 6, "the record itself is as it was")
}
