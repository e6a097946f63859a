package read

import "maltwright/lang/nearest"

// certain tells whether there is only one that can be meant by a misspelt word.
func certain(written string, among []string) bool {
	_, ok := nearest.Only(written, among)
	return ok
}
