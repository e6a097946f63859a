package talk

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestALineIsEdited(t *testing.T) {
	for _, c := range []struct {
		keys []string
		want string
		at   int
	}{
		{[]string{"1", "2", " ", "°", "C"}, "12 °C", 5},
		{[]string{"1", "2", "left", "backspace"}, "2", 0},
		{[]string{"1", "2", "home", "delete", "end", "5"}, "25", 2},
		{[]string{"backspace", "left", "delete"}, "", 0},
		{[]string{"1", "2", "left", "ctrl+u"}, "2", 0},
		{[]string{"1", "2", "left", "ctrl+k", "right"}, "1", 1},
	} {
		l := line{}
		for _, key := range c.keys {
			text := ""
			if len([]rune(key)) == 1 {
				text = key
			}
			l.press(key, text)
		}
		assert.Equal(t, c.want, l.String(), c.keys)
		assert.Equal(t, c.at, l.at, c.keys)
	}
}

func TestALineIsShownAroundItsCursor(t *testing.T) {
	l := line{}
	l.insert("a long name that is wider\nthan the window\x1b")
	assert.Equal(t, "> an the window"+reversed(" "), l.view("", 16))
	l.press("home", "")
	assert.Equal(t, "> "+reversed("a")+" long name t", l.view("", 16))
	empty := line{}
	assert.Equal(t, "> "+reversed("1")+faint("2 % "), empty.view("12 %", 40))
}
