package rewrite

import (
	"fmt"
	"os"
)

// noLocks says that without a lock nothing is written.
const noLocks Refusal = "there are no locks where it lies, so it could not be written safely; copy it to another disk and change it there"

// belongings is what belongs to a file beside its text and its mode.
type belongings struct {
	owner ownership
	attrs []attribute
}

// attribute is an extended attribute, among which Linux keeps the rights of single
// persons.
type attribute struct {
	name  string
	value []byte
}

// belongingsOf gives what belongs to a file, and refuses one that has several names: all
// but one would keep the old text.
func belongingsOf(f *os.File, info os.FileInfo) (belongings, error) {
	owner, names, err := ownershipOf(f, info)
	if err != nil {
		return belongings{}, err
	}
	if names > 1 {
		return belongings{}, Refusal(fmt.Sprintf("it has %d names (hard links), and only this one would get the new text; put a copy in its place first, and it has one", names))
	}
	attrs, err := attributesOf(f)
	return belongings{owner, attrs}, err
}

// give puts all of it to the new file, and refuses where something would be lost.
func (b belongings) give(f *os.File) error {
	if err := b.owner.give(f); err != nil {
		return err
	}
	return giveAttributes(f, b.attrs)
}
