package present

import (
	"fmt"
	"net/url"
	"strconv"
)

// checkLink says what is wrong with the link of a scale. None is a good one:
// weights are then typed.
func checkLink(link string) error {
	if link == "" || link == SimulatedLink {
		return nil
	}
	u, err := url.Parse(link)
	switch {
	case err != nil || u.Scheme != "tcp" && u.Scheme != "serial":
		return fmt.Errorf("%s", Say("%q is no link: one begins with tcp:// or serial://. Leave it empty to type weights", link))
	case u.Scheme == "serial" && u.Host+u.Path == "":
		return fmt.Errorf("%s", Say("The link %q names no port: type it as serial:///dev/name", link))
	case u.Scheme == "serial" && !isSpeed(u.Query().Get("baud")):
		return fmt.Errorf("%s", Say("The link %q has no speed of an indicator: it lies between 300 and 230400, as in serial:///dev/name?baud=9600", link))
	case u.Scheme == "tcp" && (u.Hostname() == "" || !isPort(u.Port())):
		return fmt.Errorf("%s", Say("The link %q needs the indicator's address and its port, 1 to 65535: type it as tcp://host:port", link))
	}
	return nil
}

// isSpeed reports whether a serial line may run at so many bits per second;
// none is the usual 9600.
func isSpeed(text string) bool {
	n, err := strconv.Atoi(text)
	return text == "" || err == nil && n >= 300 && n <= 230400
}

func isPort(text string) bool {
	n, err := strconv.Atoi(text)
	return err == nil && n > 0 && n < 65536
}
