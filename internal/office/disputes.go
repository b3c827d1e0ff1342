package office

import (
	"cmp"
	"context"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/explanation"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

const DisputeSubject = "dispute "

func ReplayDispute(id string, facts []journal.Fact) (*dispute.Dispute, error) {
	d := &dispute.Dispute{ID: id}
	for _, fact := range facts {
		f, err := dispute.Read(fact.Kind, fact.Body)
		if err != nil {
			return nil, err
		}
		if err := d.Apply(f); err != nil {
			return nil, err
		}
	}
	return d, nil
}

// Disputes are all disputes in the order they were raised, open ones first.
func Disputes(ctx context.Context, d Desk) ([]dispute.Dispute, error) {
	var open, closed []dispute.Dispute
	for raised, err := range d.Reader().Facts(ctx, book.FactFilter{Kind: dispute.Raised{}.Kind()}) {
		if err != nil {
			return nil, err
		}
		facts, err := d.Reader().FactsOf(ctx, raised.Subject)
		if err != nil {
			return nil, err
		}
		one, err := ReplayDispute(strings.TrimPrefix(raised.Subject, DisputeSubject), facts)
		if err != nil {
			return nil, err
		}
		if one.Phase == dispute.Closed {
			closed = append(closed, *one)
		} else {
			open = append(open, *one)
		}
	}
	return append(open, closed...), nil
}

// DisputesOf are the disputes about a ticket, in the order they were raised.
func DisputesOf(ctx context.Context, d Desk, ticket int64) ([]dispute.Dispute, error) {
	all, err := Disputes(ctx, d)
	if err != nil {
		return nil, err
	}
	out := slices.DeleteFunc(all, func(one dispute.Dispute) bool { return one.Raised.Ticket != ticket })
	slices.SortFunc(out, func(a, b dispute.Dispute) int { return cmp.Compare(raisedAs(a), raisedAs(b)) })
	return out, nil
}

// raisedAs is the running number in a dispute's id.
func raisedAs(one dispute.Dispute) int {
	n, _ := strconv.Atoi(strings.TrimPrefix(one.ID, "D"))
	return n
}

// DisputesDue are the disputes that are not decided, the soonest due first.
func DisputesDue(ctx context.Context, d Desk) ([]dispute.Dispute, error) {
	all, err := Disputes(ctx, d)
	if err != nil {
		return nil, err
	}
	out := slices.DeleteFunc(all, func(one dispute.Dispute) bool { return one.Phase == dispute.Closed })
	slices.SortFunc(out, func(a, b dispute.Dispute) int {
		return cmp.Or(a.Raised.Due.Cmp(b.Raised.Due), cmp.Compare(raisedAs(a), raisedAs(b)))
	})
	return out, nil
}

// DisputeByID returns the current state of one dispute.
func DisputeByID(ctx context.Context, d Desk, id string) (dispute.Dispute, error) {
	all, err := Disputes(ctx, d)
	if err != nil {
		return dispute.Dispute{}, err
	}
	for _, one := range all {
		if one.ID == id {
			return one, nil
		}
	}
	return dispute.Dispute{}, message.NotFound.Errorf("there is no dispute %q in this book. Look it up in the list of disputes", id)
}

// DisputeRule is the deadline rule of disputes about tickets. In Canada the law says;
// elsewhere an official inspection has its own days and a house's grade those the
// house has posted, or else the days it keeps samples.
func DisputeRule(ctx context.Context, d Desk, l *load.Load, official bool) (dispute.Rule, error) {
	p := d.Profile()
	if p.Rules != "canada" && !official {
		if p.DisputeDays > 0 {
			return dispute.HouseRule(p.DisputeDays), nil
		}
		keep, err := RetentionRule(ctx, d)
		return dispute.HouseRule(keep.Days), err
	}
	tables, err := TablesFor(ctx, d, l)
	if err != nil {
		return dispute.Rule{}, err
	}
	return dispute.RuleFor(tables.Law(), p.Rules)
}

// WhenRaised are the warnings where a dispute is raised: that its day has
// passed, that no sample is left to test.
func WhenRaised(ctx context.Context, d Desk, one dispute.Dispute) ([]message.Text, error) {
	var out []message.Text
	if one.Raised.Day.After(one.Raised.Due) {
		out = append(out, message.New("The last day to ask for another test was %s and has passed. Both sides may still agree to one.", one.Raised.Due))
	}
	if one.Raised.About == "rates" || one.Raised.About == "weight" {
		return out, nil // no sample tells anything of them
	}
	chain, err := Chain(ctx, d, one.Raised.Ticket)
	if err != nil {
		return out, err
	}
	first, now := chain[0], chain[len(chain)-1]
	facts, err := d.Reader().FactsOf(ctx, SampleDiscarded{}.Kind()+" "+first.ID)
	switch {
	case err != nil:
		return out, err
	case len(facts) > 0:
		gone, err := journal.ReadBody[SampleDiscarded](facts[len(facts)-1].Body)
		if err != nil {
			return out, err
		}
		return append(out, message.New("The retained sample was thrown out on %s: nothing is left to test again.", gone.Day)), nil
	case now.Sample.Kept == "":
		return append(out, message.New("No part of the sample was kept: nothing is left to test again.")), nil
	}
	return out, nil
}

// DisputeFile returns everything about a disputed ticket: the dispute, the tickets of its chain
// with what each correction changed, and the proof of the valid one.
func DisputeFile(ctx context.Context, d Desk, id string) (report.Document, error) {
	one, err := DisputeByID(ctx, d, id)
	if err != nil {
		return report.Document{}, err
	}
	chain, err := Chain(ctx, d, one.Raised.Ticket)
	if err != nil {
		return report.Document{}, err
	}
	doc, err := Proof(ctx, d, one.Raised.Ticket, ProofOptions{})
	if err != nil {
		return report.Document{}, err
	}
	front := []report.Block{report.Pairs{Pairs: explanation.DisputePairs(one)}}
	for i := 1; i < len(chain); i++ {
		difference, err := Compare(ctx, d, chain[i-1].Number, chain[i].Number)
		if err != nil {
			return report.Document{}, err
		}
		front = append(front, report.Heading{Text: tookPlace(chain[i])}, difference.Table())
	}
	doc.Title = message.New("File of dispute %v, ticket %d", one.ID, one.Raised.Ticket)
	doc.Blocks = slices.Concat(front, []report.Block{report.Heading{Text: message.New("Ticket %d as it was issued", one.Raised.Ticket)}}, doc.Blocks)
	return doc, nil
}

// tookPlace is the heading over a ticket's changes of the one it replaced.
func tookPlace(l *load.Load) message.Text {
	if l.Reissues > 0 {
		return message.New("Ticket %d was issued in place of ticket %d, void: %v", l.Number, l.Reissues, l.Why)
	}
	return message.New("Ticket %d corrects ticket %d: %v", l.Number, l.Corrects, l.Why)
}

// overdue reports whether the last day to ask for another test has passed
// without a sample sent.
func overdue(one dispute.Dispute, today quantity.Date) bool {
	return one.Phase == dispute.Open && today.After(one.Raised.Due)
}
