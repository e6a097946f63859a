package rewrite

import (
	"os"

	"golang.org/x/sys/windows"
)

// ownership is left to the folder, from which a new file inherits its rights.
type ownership struct{}

// ownershipOf tells how many names a file has.
func ownershipOf(f *os.File, _ os.FileInfo) (ownership, int, error) {
	var info windows.ByHandleFileInformation
	if err := windows.GetFileInformationByHandle(windows.Handle(f.Fd()), &info); err != nil {
		return ownership{}, 0, err
	}
	return ownership{}, int(info.NumberOfLinks), nil
}

func (ownership) give(*os.File) error { return nil }
