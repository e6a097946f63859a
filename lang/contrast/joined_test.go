package contrast

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTheOrderOfWhatIsJoinedByAndMeansNothing(t *testing.T) {
	with := func(what string) string {
		return "process \"p\" { steep { soak 7 h in water at 13 °C with " + what + " } }\n"
	}
	assert.Empty(t, told(with("lime and overflow 2 l/min"), with("overflow 0.12 m3/h and lime")))
	assert.Equal(t, "changed process \"p\" / steep: soak 7 h in water at 13 °C with lime {with lime and air -> lime}\n", told(with("lime and air"), with("lime")))
	assert.Equal(t, "changed process \"p\" / steep: soak 7 h in water at 13 °C with overflow 3 l/min {with overflow 2 l/min -> overflow 3 l/min}\n",
		told(with("overflow 2 l/min"), with("overflow 3 l/min")))
}

func TestTheOrderOfVesselsIsNoChange(t *testing.T) {
	with := func(in string) string { return "process \"p\" { steep in " + in + " { soak 7 h } }\n" }
	assert.Empty(t, told(with("\"tub 1\" and \"tub 2\""), with("\"tub 2\" and \"tub 1\"")))
	assert.Equal(t, "changed process \"p\": steep in \"tub 1\" {in \"tub 1\" and \"tub 2\" -> \"tub 1\"}\n", told(with("\"tub 1\" and \"tub 2\""), with("\"tub 1\"")))
}

func TestEachLotIsAThingOfItsOwn(t *testing.T) {
	with := func(from string) string { return "process \"p\" { " + from + " }\n" }
	assert.Empty(t, told(with("from 3 kg of \"A\"; from 1 kg of \"B\""), with("from 1000 g of \"B\"; from 3 kg of \"A\"")))
	assert.Equal(t, "new process \"p\": from 1 kg of \"B\"\n", told(with("from 3 kg of \"A\""), with("from 3 kg of \"A\"; from 1 kg of \"B\"")))
	assert.Equal(t, "changed process \"p\": from 2 kg of \"B\" { 1 kg -> 2 kg}\n", told(with("from 3 kg of \"A\"; from 1 kg of \"B\""), with("from 3 kg of \"A\"; from 2 kg of \"B\"")))
}

func TestTurnsAtTheSameTimesOfDayAreNoChange(t *testing.T) {
	with := func(turn string) string {
		return "process \"p\" { germinate on \"t\" { " + turn + " } }\n"
	}
	assert.Empty(t, told(with("turn at 07:00 and 19:00"), with("turn at 7 pm and 7 am")))
	assert.Equal(t, "changed process \"p\" / germinate: turn at 07:00 and 20:00 {at 07:00 and 19:00 -> 07:00 and 20:00}\n", told(with("turn at 07:00 and 19:00"), with("turn at 07:00 and 20:00")))
}

func TestEachShiftIsAThingOfItsOwn(t *testing.T) {
	site := func(lines string) string { return "site \"Hall\" { air 8 °C; " + lines + " }\n" }
	two := "awake 06:00 to 14:00 with 2 hands; awake 14:00 to 22:00"
	assert.Empty(t, told(site(two), site("awake 2 pm to 10 pm; awake 6 am to 2 pm with 2 hands")))
	assert.Equal(t, "new site \"Hall\": away 2026-04-03 to 2026-04-06\n", told(site(two), site(two+"; away 2026-04-03 to 2026-04-06")))
	assert.Equal(t, "changed site \"Hall\": awake 06:00 to 14:00 with 3 hands {with 2 hands -> 3 hands}\n", told(site(two), site("awake 06:00 to 14:00 with 3 hands; awake 14:00 to 22:00")))
	assert.Equal(t, "gone site \"Hall\": awake 14:00 to 22:00\n", told(site(two), site("awake 06:00 to 14:00 with 2 hands")))
}
