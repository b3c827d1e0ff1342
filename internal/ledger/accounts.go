package ledger

import (
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/tomlfile"
)

// Role is the purpose of an account.
type Role string

// The roles. Debits are positive, so grain and money paid out before are debited, what is owed and
// what is earned is credited.
const (
	Grain     Role = "grain"    // bought
	Growers   Role = "growers"  // owed to them
	Services  Role = "services" // drying and the like, earned
	Storage   Role = "storage"  // and service charges, earned
	Levies    Role = "levies"   // owed to their funds
	Borne     Role = "borne"    // levies that the elevator pays itself
	Advances  Role = "advances" // paid before, taken off now
	Interest  Role = "interest" // on advances, earned
	Check     Role = "check"    // the bank account of checks
	Transfer  Role = "transfer" // of transfers
	CashInBox Role = "cash"
)

var roles = []Role{Grain, Growers, Services, Storage, Levies, Borne, Advances, Interest, Check, Transfer, CashInBox}

var paidFrom = map[paysheet.How]Role{paysheet.Check: Check, paysheet.Transfer: Transfer, paysheet.Cash: CashInBox}

// Accounts are the accountant's own account numbers or names by role; a grain or a levy may have its
// own.
type Accounts struct {
	roles  map[Role]string
	grains map[string]string // by commodity
	levies map[string]string // by the id of a levy
}

// ReadAccounts reads a file of accounts. The error names every mistake in it.
func ReadAccounts(name string, text []byte) (Accounts, error) {
	a := Accounts{roles: map[Role]string{}, grains: map[string]string{}, levies: map[string]string{}}
	return a, tomlfile.Parse(name, text).Read(a.read)
}

func (a Accounts) read(root *tomlfile.Table) {
	t, _ := root.Table("accounts", true)
	for _, role := range roles {
		a.roles[role] = readAccount(t, string(role))
	}
	for _, own := range root.Tables("grain") {
		id := own.Text("commodity")
		if _, err := grain.ByID(id); err != nil && id != "" {
			own.AddProblem("commodity", message.New("%s", err), message.New("Write one of those names."))
		}
		a.grains[id] = readAccount(own, "account")
	}
	for _, own := range root.Tables("levy") {
		a.levies[own.Text("id")] = readAccount(own, "account")
	}
}

// readAccount reads an account's number or name, as a plain-text journal can hold it.
func readAccount(t *tomlfile.Table, key string) string {
	text := t.Text(key)
	if strings.ContainsAny(text, ";|()[]\"\n\t") || strings.Contains(text, "  ") || strings.TrimSpace(text) != text {
		t.AddProblem(key, message.New("%s is %q", t.Name(key), text), message.New("Write a number or a name: letters, digits, colons, hyphens, single spaces."))
	}
	return text
}

func (a Accounts) of(role Role) string { return a.roles[role] }

func (a Accounts) grain(commodity string) string {
	if own, has := a.grains[commodity]; has {
		return own
	}
	return a.roles[Grain]
}

func (a Accounts) levy(id string) string {
	if own, has := a.levies[id]; has {
		return own
	}
	return a.roles[Levies]
}
