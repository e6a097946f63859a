package browsertest

import (
	"io"
	"os"
	"os/exec"
)

// sweep waits for the end of what is written to it: the pipe closes when the tests are over, be it by a
// panic, by Ctrl-C or by force. Then it ends the browser, if that still has the profile, and takes the profile away.
const sweep = `trap "" INT TERM HUP
pid=
while read -r line; do pid=$line; done
if [ -n "$pid" ] && ps -o args= -p "$pid" 2>/dev/null | grep -qF -- "--user-data-dir=$1"; then kill -9 "$pid"; fi
gone=0
for i in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20; do
	if rm -rf -- "$1" 2>/dev/null && [ ! -e "$1" ]; then gone=$((gone + 1)); else gone=0; fi
	[ "$gone" -ge 3 ] && exit 0
	sleep 0.1
done`

// sweeper starts a process that outlives this one, to tidy up behind it. It gives what the number of
// the browser's process is to be written to; nil where there is no shell.
func sweeper(profile string) (io.Writer, error) {
	shell, err := exec.LookPath("sh")
	if err != nil {
		return nil, nil // then each test ends its own browser
	}
	read, write, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	defer read.Close()
	c := exec.Command(shell, "-c", sweep, "sh", profile)
	c.Stdin, c.Dir = read, os.TempDir()
	return write, c.Start()
}
