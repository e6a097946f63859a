package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAPageThatIsNotThereIsToldWithTheOneThatWasMeant(t *testing.T) {
	for _, c := range []struct {
		asked []string
		told  string
	}{
		{[]string{"forcast"}, "there is no page of forcast; did you mean forecast?"},
		{[]string{"langage"}, "there is no page of langage; did you mean language?"},
		{[]string{"reckon", "tarket"}, "there is no page of reckon tarket; did you mean reckon target?"},
		{[]string{"nonsense"}, "there is no page of nonsense; each command has one"},
	} {
		out, errs, code := run(append([]string{"man"}, c.asked...)...)
		assert.Equal(t, ExitUsage, code)
		assert.Empty(t, out)
		assert.Contains(t, errs, c.told)
	}
}
