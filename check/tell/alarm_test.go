package tell

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAlarmsAreKnownByTheirWords(t *testing.T) {
	for text, want := range map[string][]AlarmKind{
		"pink mould all over, smells rotten":         {AlarmMould, AlarmSour},
		"Mold on a few grains":                       {AlarmMould},
		"black horns found in it":                    {AlarmErgot},
		"smells sour and slimy":                      {AlarmSour},
		"the CO alarm went off":                      {AlarmGas},
		"the carbon dioxide alarm beeps":             {AlarmGas},
		"carbon monoxide 80 ppm":                     {AlarmGas},
		"smoke from the oven":                        {AlarmSmoke},
		"not sure whether it is mould":               {AlarmMould},
		"no doubt mould":                             {AlarmMould},
		"don't know if that is mould":                {AlarmMould},
		"no smell, mould found":                      {AlarmMould},
		"no mould, but smells sour":                  {AlarmSour},
		"not turned at night, mouldy in the morning": {AlarmMould},
		"mould found, no ergot":                      {AlarmMould},
		"mould, no smell":                            {AlarmMould},
		"pests seen":                                 {AlarmPests},
		"weevils in the sack, mouse droppings":       {AlarmPests},
		"no weevils":                                 nil,
		"no mould":                                   nil,
		"mould-free":                                 nil,
		"mould free":                                 nil,
		"no mould, ergot found":                      {AlarmErgot},
		"no mould or ergot":                          nil,
		"no mould, slime or rot":                     nil,
		"no sign of mould":                           nil,
		"does not smell sour":                        nil,
		"not slimy, not sour":                        nil,
		"looked for mould: none":                     nil,
		"ergot none":                                 nil,
		"mould not seen":                             nil,
		"checked for ergot, none found":              nil,
		"smells of cucumber":                         nil,
		"my phone's alarm woke me":                   nil,
		"resources are short":                        nil,
		"the rootlets are fuzzy and white":           nil,
		"CO2 bubbles in the steep":                   nil,
		"the bed is free of mould and smells of hay": nil,
	} {
		var got []AlarmKind
		for _, a := range Alarms(text) {
			got = append(got, a.Kind)
			assert.NotEmpty(t, a.Word, text)
			assert.Equal(t, a.Kind != AlarmSour && a.Kind != AlarmPests, a.People, text)
		}
		assert.Equal(t, want, got, text)
	}
}
