package main

import (
	"os/exec"
	"runtime"
)

// browse opens an address in the browser of the person, where there is one to see. What goes wrong there is no matter: the address is printed.
func (w World) browse(address string) {
	name, args := opener(runtime.GOOS, w.Env)
	if w.browser != nil {
		w.browser(address)
		return
	}
	if name == "" {
		return
	}
	cmd := exec.Command(name, append(args, address)...)
	apart(cmd)
	if cmd.Start() == nil {
		go func() { _ = cmd.Wait() }()
	}
}

// opener is the program that opens an address: none over ssh, for the screen is elsewhere, nor without a screen.
func opener(system string, env func(string) string) (name string, args []string) {
	switch {
	case env("SSH_CONNECTION") != "" || env("SSH_TTY") != "":
		return "", nil
	case system == "darwin":
		return "open", nil
	case system == "windows":
		return "rundll32", []string{"url.dll,FileProtocolHandler"}
	case env("DISPLAY") == "" && env("WAYLAND_DISPLAY") == "":
		return "", nil
	}
	return "xdg-open", nil
}
