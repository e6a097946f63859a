package wire

import "time"

// DueParams ask what is due in the folders that are open; there is nothing to say.
type DueParams struct{}

// Due is something to be done at a batch: the answer to maltwright/due is a list of it, the earliest first.
type Due struct {
	Text  string    `json:"text"` // what to do, and what the scale should show
	Time  string    `json:"time"` // seen from now: at 23:00, on Sat at 06:30
	Left  string    `json:"left"` // how long until then, or since then: 3 h 10 min
	At    time.Time `json:"at"`
	Late  bool      `json:"late"`  // it is over, and nothing in the record tells of it
	Night bool      `json:"night"` // nobody is awake then
	Batch string    `json:"batch"`
	URI   string    `json:"uri"` // of its record
}

// DrawOptions are the second argument of maltwright.chart and of maltwright.sheet; the first is the address of a file.
type DrawOptions struct {
	Name string `json:"name,omitempty"` // of the process or the batch, where the file holds several
	Of   string `json:"of,omitempty"`   // what to draw: moisture, weight, heat, growth, bed; moisture where nothing is said
	Wide int    `json:"wide,omitempty"` // of a chart, in px; as wide as for a desk where nothing is said
}
