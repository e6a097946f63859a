package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

func to(t *testing.T, what, text string) model.Change {
	q, err := quantity.Parse(text)
	require.NoError(t, err)
	c := model.Change{What: model.Word{Text: what}}
	c.To.Low, c.To.High = q, q
	return c
}

func TestAStepIsOtherwiseInWhatWasChangedAlone(t *testing.T) {
	dry := &model.Dry{Heated: model.Heated{Airflow: seconds(1), Smoke: true}}
	done := model.Otherwise(dry, to(t, "returns", "50 %"), to(t, "airflow", "36 m3/h"))
	assert.InDelta(t, 0.5, model.Returns(done).SI, 1e-12)
	assert.InDelta(t, 0.01, model.Airflow(done).SI, 1e-12)
	assert.True(t, model.Smoked(done))
	assert.Nil(t, dry.Returns, "the process stays as it is")
	assert.Equal(t, 1.0, dry.Airflow.SI)

	assert.False(t, model.Smoked(model.Otherwise(dry, model.Change{What: model.Word{Text: "smoke"}, Without: true})))
	for _, s := range []model.Step{&model.Stew{}, &model.Cure{}, &model.Roast{}} {
		smoked := model.Otherwise(s, model.Change{What: model.Word{Text: "smoke"}})
		assert.True(t, model.Smoked(smoked), s.Kind())
		assert.Equal(t, s.Kind(), smoked.Kind())
	}
}

func TestWaterIsOfCoolAlone(t *testing.T) {
	for _, text := range []string{"2 l", "2 kg"} {
		cool := model.Otherwise(&model.Cool{}, to(t, "", text)).(*model.Cool)
		assert.Equal(t, text, cool.Water.String())
	}
	assert.Equal(t, &model.Cool{}, model.Otherwise(&model.Cool{}, to(t, "returns", "50 %")))
	assert.Equal(t, &model.Dry{}, model.Otherwise(&model.Dry{}, to(t, "", "2 l"), to(t, "", "5 h")))
	assert.Equal(t, &model.Soak{}, model.Otherwise(&model.Soak{}, to(t, "airflow", "36 m3/h")))
}

func TestAChangeSaysWhatItIsTo(t *testing.T) {
	warm := to(t, "", "55 °C")
	warm.To.Where = "air-on"
	smoke, clear := model.Change{What: model.Word{Text: "smoke"}}, model.Change{What: model.Word{Text: "smoke"}, Without: true}
	for want, c := range map[string]model.Change{"5 h": to(t, "", "5 h"), "air-on 55 °C": warm, "returns 50 %": to(t, "returns", "50 %"), "smoke": smoke, "no smoke": clear} {
		assert.Equal(t, want, c.Said())
	}
	five, six, litres := to(t, "", "5 h"), to(t, "", "6 h"), to(t, "", "2 l")
	kilos, returns := to(t, "", "2 kg"), to(t, "returns", "50 %")
	assert.True(t, five.Alike(&six))
	assert.False(t, five.Alike(&warm))
	assert.True(t, litres.Alike(&kilos))
	assert.False(t, litres.Alike(&returns))
	assert.True(t, smoke.Alike(&clear))
	assert.True(t, five.Is(quantity.Time))
	assert.False(t, smoke.Is(quantity.Number))
}
