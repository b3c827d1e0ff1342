package ledger

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Between are the transactions of a span in the order of their days, sheets before payments.
func Between(all []Transaction, from, to quantity.Date) []Transaction {
	out := slices.DeleteFunc(slices.Clone(all), func(t Transaction) bool { return !t.Day.Between(from, to) })
	slices.SortStableFunc(out, func(a, b Transaction) int {
		return cmp.Or(a.Day.Cmp(b.Day), -cmp.Compare(a.Of, b.Of), cmp.Compare(a.Number, b.Number))
	})
	return out
}

// Totals are the sums of the accounts, in the order of their names.
func Totals(all []Transaction) []Posting {
	sums := map[string]quantity.Amount{}
	for _, t := range all {
		for _, p := range t.Postings {
			if sum, has := sums[p.Account]; has {
				p.Amount = p.Amount.Add(sum)
			}
			sums[p.Account] = p.Amount
		}
	}
	var out []Posting
	for account, sum := range sums {
		out = append(out, Posting{account, sum})
	}
	slices.SortFunc(out, func(a, b Posting) int { return cmp.Compare(a.Account, b.Account) })
	return out
}

// Said is the description of a transaction.
func (t Transaction) Said() message.Text {
	switch {
	case t.Of == Settled && t.Void:
		return message.New("Settlement sheet %d is void", t.Number)
	case t.Of == Settled:
		return message.New("Settlement sheet %d", t.Number)
	case t.Void:
		return message.New("Payment %d is void", t.Number)
	}
	return message.New("Payment %d", t.Number)
}

// Journal is transactions as a plain-text journal, the format that hledger documents: a day, a
// description, then each account with its amount, two blanks between them.
func Journal(all []Transaction, say func(message.Sayable) string) string {
	var b strings.Builder
	for _, t := range all {
		fmt.Fprintf(&b, "%s (%s-%d) %s | %s\n", t.Day, t.Of, t.Number, plain(t.Grower+" "+t.Name), plain(say(t.Said())))
		for _, p := range t.Postings {
			fmt.Fprintf(&b, "    %s  $%s\n", p.Account, strings.ReplaceAll(p.Amount.Fixed(2), ",", ""))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// plain is a text without the letters that end a description.
func plain(s string) string {
	return strings.Join(strings.Fields(strings.NewReplacer(";", ",", "|", "/").Replace(s)), " ")
}
