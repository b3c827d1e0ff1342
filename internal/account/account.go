// Package account names the account and the computer that a program runs at, for the facts it writes.
package account

import (
	"os"
	"os/user"
	"strings"
	"unicode"
)

// Here is "mae@scale1", as much of it as this computer knows.
func Here() string {
	var name string
	if who, err := user.Current(); err == nil {
		name = who.Username
	}
	host, _ := os.Hostname() // else the account stands alone
	return named(name, host)
}

// mostLetters keeps the name short beside that of the desk.
const mostLetters = 60

// named sets account and computer side by side, without what a fact does not hold.
func named(account, host string) string {
	if _, name, domain := strings.Cut(account, `\`); domain { // of Windows: DOMAIN\mae
		account = name
	}
	account, host = plain(account), plain(host)
	if account == "" || host == "" {
		return account + host
	}
	return account + "@" + host
}

func plain(text string) string {
	text = strings.TrimSpace(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == unicode.ReplacementChar {
			return -1
		}
		return r
	}, text))
	if letters := []rune(text); len(letters) > mostLetters {
		text = strings.TrimSpace(string(letters[:mostLetters]))
	}
	return text
}
