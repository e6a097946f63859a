package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

func seconds(s float64) *model.Quantity {
	return &model.Quantity{Quantity: quantity.Quantity{SI: s, Dimension: quantity.Time}}
}

func TestStagesAreFoundByTheirType(t *testing.T) {
	first, second := &model.Germination{}, &model.Germination{}
	p := &model.Process{Stages: []model.Stage{&model.Steep{}, first, second}}
	assert.Same(t, first, model.First[*model.Germination](p))
	assert.Nil(t, model.First[*model.Kilning](p))
	assert.Same(t, first, p.Stage(model.GerminateStage))
	assert.True(t, p.Stage(model.KilnStage) == nil, "no stage is a nil interface, not a nil pointer in one")
}

func TestWhatAStageCannotSayIsNil(t *testing.T) {
	gate := &model.Gate{}
	for _, c := range []struct {
		stage model.Stage
		piece bool
		steps int
	}{
		{nil, false, 0},
		{&model.Steep{Steps: []model.Step{gate}}, false, 1},
		{&model.Germination{Piece: model.Piece{Steps: []model.Step{gate, gate}}}, true, 2},
		{&model.Withering{Piece: model.Piece{Steps: []model.Step{gate}}}, true, 1},
		{&model.Kilning{Steps: []model.Step{gate}}, false, 1},
		{&model.Deculming{}, false, 0},
		{&model.Storing{}, false, 0},
	} {
		assert.Equal(t, c.piece, model.PieceOf(c.stage) != nil, "%T", c.stage)
		assert.Len(t, model.StepsOf(c.stage), c.steps, "%T", c.stage)
	}
}

func TestAPieceIsThatOfItsStageAndNoCopy(t *testing.T) {
	st := &model.Germination{}
	model.PieceOf(st).Turn = seconds(60)
	assert.Equal(t, 60.0, st.Turn.SI)
}

func TestCommonThingsAreAskedOfEveryStep(t *testing.T) {
	at, end := &model.Temperature{Where: "malt"}, model.Ending{For: seconds(3600)}
	guard, until := &model.Guard{Latest: seconds(60)}, &model.Condition{}
	heat := model.Heated{Ending: end, Warming: model.Warming{From: at, Over: seconds(60)}, Airflow: seconds(1)}
	for kind, c := range map[model.StepKind]struct {
		step model.Step
		ends model.Ending
		warm model.Warming
	}{
		model.SoakStep:   {&model.Soak{Ending: end, At: at}, end, model.Warming{At: at}},
		model.RestStep:   {&model.Rest{Ending: end, At: at}, end, model.Warming{At: at}},
		model.HoldStep:   {&model.Hold{Ending: end, Warming: model.Warming{At: at}}, end, model.Warming{At: at}},
		model.DryStep:    {&model.Dry{Heated: heat}, end, heat.Warming},
		model.StewStep:   {&model.Stew{Heated: heat}, end, heat.Warming},
		model.CureStep:   {&model.Cure{Heated: heat}, end, heat.Warming},
		model.RoastStep:  {&model.Roast{Heated: heat}, end, heat.Warming},
		model.CoolStep:   {&model.Cool{To: at, Allow: guard}, model.Ending{Allow: guard}, model.Warming{At: at}},
		model.GateStep:   {&model.Gate{Asks: until, Allow: guard}, model.Ending{Allow: guard}, model.Warming{}},
		model.RepeatStep: {&model.Repeat{Until: until}, model.Ending{Until: until}, model.Warming{}},
	} {
		assert.Equal(t, kind, c.step.Kind())
		assert.Equal(t, c.ends, c.step.Ends(), kind)
		assert.Equal(t, c.warm, c.step.Warmth(), kind)
		assert.Equal(t, c.warm.Over != nil, model.HeatedOf(c.step) != nil, kind)
		assert.Equal(t, c.warm.Over != nil, model.Airflow(c.step) != nil, kind)
		assert.Equal(t, kind == model.GateStep, model.Asked(c.step) != nil, kind)
	}
}

func TestEveryStepIsListedOnceThroughRepeats(t *testing.T) {
	soak, rest := &model.Soak{}, &model.Rest{}
	inner := &model.Repeat{Steps: []model.Step{rest}}
	outer := &model.Repeat{Steps: []model.Step{soak, inner}}
	assert.Equal(t, []model.Step{outer, soak, inner, rest}, model.EveryStep([]model.Step{outer}))
	assert.Equal(t, []*model.Repeat{outer}, model.Only[*model.Repeat]([]model.Step{soak, outer}))
}
