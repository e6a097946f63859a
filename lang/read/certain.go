package read

import (
	"maltwright/lang/finding"
	"maltwright/lang/nearest"
	"maltwright/lang/source"
)

// certain is the repair of a misspelt word, where there is only one that can be meant.
func certain(place source.Place, written string, among []string) []finding.Edit {
	if meant, ok := nearest.Only(written, among); ok {
		return []finding.Edit{{Place: place, New: meant}}
	}
	return nil
}
