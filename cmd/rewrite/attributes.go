//go:build linux || darwin

package rewrite

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"slices"

	"golang.org/x/sys/unix"
)

// systemsOwn are attributes that the system itself sets to each file, by its text or by
// the program that wrote it: those of the old text would be wrong for the new one.
var systemsOwn = []string{"security.ima", "security.evm", "com.apple.provenance"}

// attributesOf reads the extended attributes of a file.
func attributesOf(f *os.File) ([]attribute, error) {
	list, err := sized(func(to []byte) (int, error) { return unix.Flistxattr(int(f.Fd()), to) })
	if errors.Is(err, unix.ENOTSUP) || errors.Is(err, unix.ENOSYS) {
		return nil, nil // there are none where the file lies
	}
	if err != nil {
		return nil, fmt.Errorf("its extended attributes cannot be read: %w", err)
	}
	var all []attribute
	for name := range bytes.SplitSeq(list, []byte{0}) {
		if len(name) == 0 || slices.Contains(systemsOwn, string(name)) {
			continue
		}
		value, err := attributeOf(f, string(name))
		if err != nil {
			return nil, fmt.Errorf("its extended attribute %s cannot be read: %w", name, err)
		}
		all = append(all, attribute{string(name), value})
	}
	return all, nil
}

func attributeOf(f *os.File, name string) ([]byte, error) {
	return sized(func(to []byte) (int, error) { return unix.Fgetxattr(int(f.Fd()), name, to) })
}

// sized asks for the size of something, and then for it, until the two agree.
func sized(read func(to []byte) (int, error)) ([]byte, error) {
	for {
		n, err := read(nil)
		if err != nil || n == 0 {
			return nil, err
		}
		value := make([]byte, n)
		if n, err = read(value); !errors.Is(err, unix.ERANGE) {
			return value[:max(n, 0)], err
		}
	}
}

// giveAttributes puts the attributes to another file, and refuses where that cannot be.
func giveAttributes(f *os.File, all []attribute) error {
	for _, a := range all {
		if now, err := attributeOf(f, a.name); err == nil && bytes.Equal(now, a.value) {
			continue // the system gave the new file the same
		}
		if unix.Fsetxattr(int(f.Fd()), a.name, a.value, 0) != nil {
			return Refusal(fmt.Sprintf("its extended attribute %s would be lost, since you may not set it; ask its owner, or work on a copy", a.name))
		}
	}
	return nil
}
