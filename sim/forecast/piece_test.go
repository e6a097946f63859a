package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

func growTextIn(humidity, end string) string {
	return `germinate on "tray" { hold bed at 14 to 16 °C; turn every 8 h; ` + end + `; humidity ` + humidity + ` }
`
}

func TestPiecesAreThoseOfTheFloors(t *testing.T) {
	f := run1(t, steepText+growText+"wither on \"tray\" { air at 18 to 20 °C; until moisture at most 36 %; allow 0 to 40 h }\n"+kilnText)
	require.Len(t, f.Pieces, 2)
	grew, withered := f.Pieces[0], f.Pieces[1]
	assert.Equal(t, []model.StageKind{model.GerminateStage, model.WitherStage}, []model.StageKind{grew.Stage, withered.Stage})
	assert.InDelta(t, f.Stages[1].Steps[0].Start, grew.Began, 1e-6)
	assert.InDelta(t, f.Stages[1].Steps[0].End-grew.Began, grew.Took, 1e-6)
	assert.InDelta(t, grew.Began+grew.Took, withered.Began, 1e-6)
	assert.InDelta(t, f.Stages[1].Steps[0].MoistureStart, grew.MoistureAt, 1e-12)
	assert.InDelta(t, 0.75, grew.Acrospire, 0.001)
	assert.Greater(t, withered.Acrospire, grew.Acrospire, "it grows on while it withers")
	assert.InDelta(t, 0.36, withered.Driest, 0.001)
	assert.Equal(t, 0.4, grew.Area)
	assert.Greater(t, grew.Deepest, grew.Depth, "rootlets make it rise")
	// 5 kg fill some 7.7 l as raw grain of 650 kg/m³, and two fifths more when wet.
	assert.InDelta(t, 5.0/650*1.4/0.4, grew.Depth, 0.003)
}

func TestADryRoomSlowsThePiece(t *testing.T) {
	moist := run1(t, steepText+growTextIn("98 %", "for 6 days")+kilnText).Pieces[0]
	dry := run1(t, steepText+growTextIn("50 %", "for 6 days")+kilnText).Pieces[0]
	assert.Zero(t, moist.Slowed)
	assert.Greater(t, dry.Slowed, 24*3600.0)
	assert.Less(t, dry.Driest, 0.32)
	assert.Less(t, dry.Acrospire, moist.Acrospire)
	assert.InDelta(t, dry.Began+dry.Took, dry.DriestAt, 3600, "it is driest at the end")
}
