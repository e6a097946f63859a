//go:build unix

package rewrite

import (
	"os"
	"syscall"
)

// ownership is whose a file is.
type ownership struct{ user, group int }

// ownershipOf gives whose a file is and how many names it has.
func ownershipOf(_ *os.File, info os.FileInfo) (ownership, int, error) {
	s, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return ownership{}, 0, Refusal("whose it is cannot be told")
	}
	return ownership{int(s.Uid), int(s.Gid)}, int(s.Nlink), nil
}

// give makes the file that of the same owner and group.
func (o ownership) give(f *os.File) error {
	info, err := f.Stat()
	if err != nil {
		return err
	}
	now, _, err := ownershipOf(f, info)
	if err != nil || now == o {
		return err
	}
	if f.Chown(o.user, o.group) == nil {
		return nil
	}
	if now.user != o.user {
		return Refusal("it belongs to another, and would become yours; ask its owner, or work on a copy")
	}
	return Refusal("it belongs to a group that you are not in, and would leave it; ask one who is, or work on a copy")
}
