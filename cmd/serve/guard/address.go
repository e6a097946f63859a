package guard

import (
	"fmt"
	"net"
	"net/netip"
	"slices"
	"strings"

	"maltwright/lang/sorted"
)

// Interface is an address of this machine by which others reach it.
type Interface struct {
	Name    string
	Address netip.Addr
}

// Interfaces lists the addresses of this machine by which others of its network reach it, those of IPv4 first.
func Interfaces() ([]Interface, error) {
	all, err := net.Interfaces()
	if err != nil {
		return nil, err
	}
	var list []Interface
	for _, i := range all {
		if i.Flags&net.FlagUp == 0 {
			continue
		}
		addresses, err := i.Addrs()
		if err != nil {
			return nil, err
		}
		for _, a := range addresses {
			if network, is := a.(*net.IPNet); is {
				if address, ok := netip.AddrFromSlice(network.IP); ok {
					list = append(list, Interface{i.Name, address.Unmap()})
				}
			}
		}
	}
	return reached(list), nil
}

// reached leaves out what nobody else reaches, and what a browser cannot be told.
func reached(list []Interface) []Interface {
	list = slices.DeleteFunc(list, func(i Interface) bool { return i.Address.IsLoopback() || i.Address.IsLinkLocalUnicast() })
	sorted.Stable(list, func(a, b Interface) int { return a.Address.Compare(b.Address) })
	return list
}

// Reached checks an address by which others are to reach this machine. It must be one of those listed: an address that
// stands for all interfaces would open the page to networks that nobody thought of.
func Reached(text string, list []Interface) (netip.Addr, error) {
	address, err := netip.ParseAddr(strings.Trim(text, "[]"))
	switch {
	case err != nil:
		return address, fmt.Errorf("%q is no address, as 192.168.1.20 is; %s", text, those(list))
	case address.IsUnspecified():
		return address, fmt.Errorf("%s stands for every network this machine is in; name one address: %s", address, those(list))
	case address.IsLoopback():
		return address, fmt.Errorf("%s is reached from this machine alone, and that is so without --lan; %s", address, those(list))
	case address.IsLinkLocalUnicast():
		return address, fmt.Errorf("%s holds for one cable alone, and a browser cannot be told which; %s", address, those(list))
	}
	address = address.Unmap()
	if !slices.ContainsFunc(list, func(i Interface) bool { return i.Address == address }) {
		return address, fmt.Errorf("%s is no address of this machine; %s", address, those(list))
	}
	return address, nil
}

// those names the addresses that there are.
func those(list []Interface) string {
	if len(list) == 0 {
		return "this machine is in no network now"
	}
	var names []string
	for _, i := range list {
		names = append(names, fmt.Sprintf("%s (%s)", i.Address, i.Name))
	}
	return "this machine has " + strings.Join(names, ", ")
}

// Home tells whether an address is one of a network of its own, which the internet does not reach.
func Home(a netip.Addr) bool { return a.IsPrivate() || carrier.Contains(a) }

// carrier are the addresses that providers, and networks laid over others, share (RFC 6598).
var carrier = netip.MustParsePrefix("100.64.0.0/10")
