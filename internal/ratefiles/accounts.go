package ratefiles

import (
	"tenthpoint/internal/ledger"
	"tenthpoint/internal/message"
	"tenthpoint/schedules"
)

// OpenAccounts reads the accountant's file of accounts.
func OpenAccounts(path string) (ledger.Accounts, error) {
	text, err := ReadText(path)
	if err != nil {
		return ledger.Accounts{}, message.Errorf("the accounts in %s cannot be read: %w", path, err)
	}
	return ledger.ReadAccounts(path, text)
}

// ExampleAccounts is a file of accounts to begin with.
func ExampleAccounts() ([]byte, error) { return schedules.Files.ReadFile("accounts/example.toml") }
