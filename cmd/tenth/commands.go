package main

import (
	"context"
	"os"
	"reflect"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"tenthpoint/cmd/tenth/bins"
	"tenthpoint/cmd/tenth/book"
	"tenthpoint/cmd/tenth/day"
	"tenthpoint/cmd/tenth/headoffice"
	"tenthpoint/cmd/tenth/house"
	"tenthpoint/cmd/tenth/keep"
	"tenthpoint/cmd/tenth/keys"
	"tenthpoint/cmd/tenth/lab"
	"tenthpoint/cmd/tenth/money"
	"tenthpoint/cmd/tenth/program"
	"tenthpoint/cmd/tenth/rates"
	"tenthpoint/cmd/tenth/receipts"
	"tenthpoint/cmd/tenth/sums"
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/cmd/tenth/tickets"
	"tenthpoint/cmd/tenth/yard"
	"tenthpoint/internal/version"
)

// commands are all that can be typed after "tenth". A command is a file of its
// own, in the folder of its group, and a line here.
type commands struct {
	Receive  yard.Receive  `cmd:"" group:"trucks" help:"Receive one load: weigh, test, settle, print its ticket."`
	Yard     yard.List     `cmd:"" group:"trucks" help:"List the trucks that have no ticket yet."`
	Bench    lab.Bench     `cmd:"" group:"trucks" help:"The sample bench: moisture tests, meters and their checks, samples kept."`
	Open     yard.Open     `cmd:"" group:"trucks" help:"Write a truck down that has come."`
	Amend    yard.Amend    `cmd:"" group:"trucks" help:"Change what is known of a load on the yard."`
	Weigh    yard.Weigh    `cmd:"" group:"trucks" help:"Weigh a load on the yard."`
	Sample   yard.Sample   `cmd:"" group:"trucks" help:"Write down what the bench found."`
	Issue    yard.Issue    `cmd:"" group:"trucks" help:"Settle a load and print its ticket."`
	Withdraw yard.Withdraw `cmd:"" group:"trucks" help:"Take back a load that was never weighed."`
	Refuse   yard.Refuse   `cmd:"" group:"trucks" help:"Turn a load away."`

	Show      tickets.Show      `cmd:"" group:"tickets" help:"Show a ticket as it was printed."`
	Explain   tickets.Explain   `cmd:"" group:"tickets" help:"Explain every figure of a ticket, under the rates it was settled by."`
	Find      tickets.Find      `cmd:"" group:"tickets" help:"Find tickets by grower, truck, grain or day."`
	Reprint   tickets.Reprint   `cmd:"" group:"tickets" help:"Print another copy of a ticket."`
	Print     tickets.Print     `cmd:"" group:"tickets" help:"Write the slips of many tickets into files."`
	Correct   tickets.Correct   `cmd:"" group:"tickets" help:"Issue a corrected ticket in place of a wrong one."`
	Void      tickets.Void      `cmd:"" group:"tickets" help:"Cancel a ticket; its number and copies stay."`
	Reissue   tickets.Reissue   `cmd:"" group:"tickets" help:"Issue another ticket in place of a void one."`
	Shipment  tickets.Shipment  `cmd:"" group:"tickets" help:"Loads that left: bill of lading, what the destination found, the list of them."`
	Emergency tickets.Emergency `cmd:"" group:"tickets" help:"Pads of tickets for when the power is out: print them, write them down, account for every number."`

	Proof      tickets.Proof      `cmd:"" group:"tickets" help:"Show how a ticket was worked out, for the grower to follow."`
	Difference tickets.Difference `cmd:"" group:"tickets" help:"Set two tickets side by side."`
	Dispute    tickets.Dispute    `cmd:"" group:"tickets" help:"A disagreement about a ticket, from doubt to decision."`

	Day        day.Day          `cmd:"" group:"evening" help:"Show the sheet of a day, or close the day."`
	Position   day.Position     `cmd:"" group:"evening" help:"Show what is in the house."`
	Production day.Production   `cmd:"" group:"evening" help:"Show what single farms and fields have delivered, and whose it is."`
	Undecided  day.Undecided    `cmd:"" group:"evening" help:"List grain of which nobody has said what becomes of it, with its age and its day."`
	Due        day.Due          `cmd:"" group:"evening" help:"List what falls due: grain to be decided, contracts, payments, free storage, samples, disputes."`
	Account    day.Account      `cmd:"" group:"evening" help:"Show a grower's account."`
	Season     day.Season       `cmd:"" group:"evening" help:"Show a season: intake, moistures, trucks, waits, income, meters."`
	Examine    day.Examine      `cmd:"" group:"evening" help:"Write the registers and papers an examiner asks for into a folder."`
	Payment    money.Payment    `cmd:"" group:"evening" help:"What was paid on settlement sheets, and what is still to be paid."`
	Receipt    receipts.Receipt `cmd:"" group:"evening" help:"Warehouse receipts: issue, surrender, cancel, replace a lost one, the register."`
	Confirm    receipts.Confirm `cmd:"" group:"evening" help:"Letters to depositors to confirm their balances: a random sample, the answers, who did not answer."`
	Ledger     money.Ledger     `cmd:"" group:"evening" help:"Settlement sheets and payments as postings for the accountant."`
	Sheet      money.Sheet      `cmd:"" group:"evening" help:"Settlement sheets: what a grower is paid for tickets, with every line worked out."`

	Settle sums.Settle `cmd:"" group:"sums" help:"Settle a load without a book: figures in, working out."`
	Shrink sums.Shrink `cmd:"" group:"sums" help:"Work out the pure water shrink of a weight."`
	Grade  sums.Grade  `cmd:"" group:"sums" help:"Grade a sample by the published tables; advice only."`
	Keep   keep.Keep   `cmd:"" group:"sums" help:"Grain in store: moisture it comes to, days it keeps, cooling, drying, blending; advice only."`

	Setup    house.Setup    `cmd:"" group:"house" help:"Set the elevator up, or show how it is set up."`
	Grower   house.Grower   `cmd:"" group:"house" help:"Add, change or list growers and their shares."`
	Truck    house.Truck    `cmd:"" group:"house" help:"Add, change or list trucks and their stored tares."`
	Person   house.Person   `cmd:"" group:"house" help:"Add, change or list the people at the desk."`
	Contract house.Contract `cmd:"" group:"house" help:"Add, end or list the contracts of growers."`
	Price    house.Price    `cmd:"" group:"house" help:"Post the price of a grain for the day, or list the posted ones."`
	Key      keys.Key       `cmd:"" group:"house" help:"The keys that sign tickets and the book: of this computer, and of the house."`
	Rates    rates.Rates    `cmd:"" group:"house" help:"Read, check, try and compare the editions of rates."`
	Levy     money.Levy     `cmd:"" group:"house" help:"What is deducted for others: checkoffs and funds."`
	Lien     money.Lien     `cmd:"" group:"house" help:"Lenders' notices that grain of a grower is their security."`
	Tariff   money.Tariff   `cmd:"" group:"house" help:"Read, check, try and compare what is posted for storage and charges."`
	Checker  book.Checker   `cmd:"" group:"house" help:"Write the page by which a grower settles a ticket again, without the house."`
	Law      rates.Law      `cmd:"" group:"house" help:"Read and check the published rules: grades, recording, bushels, tolerances, deadlines."`
	Bin      bins.Bin       `cmd:"" group:"house" help:"Pits and bins: what lies in them, and what is done with it."`
	Scale    house.Scale    `cmd:"" group:"house" help:"The log of a truck scale: zero, check weighings, certificate, out of service."`
	Guard    house.Guard    `cmd:"" group:"house" help:"Decide what the house asks about before a ticket."`

	Verify  book.Verify  `cmd:"" group:"book" help:"Check the whole book, or the code on a slip."`
	Backup  book.Backup  `cmd:"" group:"book" help:"Copy the book to a file, and check the copy."`
	Restore book.Restore `cmd:"" group:"book" help:"Make the book again from a copy, and enter its lost tickets from their slips."`
	Import  book.Import  `cmd:"" group:"book" help:"Take lists over that were kept elsewhere: growers, trucks, past loads."`
	Opening book.Opening `cmd:"" group:"book" help:"Begin the books in mid-season: what lies in the bins, whose it is, where numbers begin."`
	LetIn   book.LetIn   `cmd:"" group:"book" help:"Let a user of a server into a book."`
	Demo    book.Demo    `cmd:"" group:"book" help:"Make the book of an invented elevator."`

	Office headoffice.Office `cmd:"" group:"book" help:"The head office of several sites: send this book's chain to it, or look at all of them there."`

	Manual     program.Manual     `cmd:"" group:"program" help:"Write the manual page of all commands."`
	Completion program.Completion `cmd:"" group:"program" help:"Write the script that completes commands in a shell."`
	Complete   program.Complete   `cmd:"" hidden:"" help:"Say what can follow the words typed so far; the scripts of completion ask it."`

	Version kong.VersionFlag `help:"Say which version this is, and of which commit."`
}

var groups = kong.Groups{
	"trucks":  "Trucks",
	"tickets": "Tickets",
	"evening": "End of the day",
	"sums":    "Sums, without a book",
	"house":   "The elevator",
	"book":    "The book",
	"program": "The program",

	"whose":   "Whose grain, and where it goes",
	"weights": "Weights",
	"sample":  "The sample",
	"papers":  "Where it grew, and the papers that go with it",
	"paper":   "Paper",
}

const about = `The scale house from a terminal.

Type "tenth COMMAND --help" to see what a command takes, with examples.
Commands that use a book take --book PATH, or the book that TENTHPOINT_BOOK
names, or the one in your data folder. Every command answers in the language
of the house, or in that of --language, such as --language es.`

// named are the values that tags of commands name.
var named = kong.Vars{"version": version.Line("tenth"), "languages": strings.Join(terminal.Languages(), ",")}

// run runs one command line and returns the exit status.
func run(ctx context.Context, args []string, t *terminal.Terminal) (status int) {
	t.Context = ctx
	defer func() {
		if fault := recover(); fault != nil {
			terminal.Complain(t.Stderr, t.Printer, failed(fault))
			status = 3
		}
	}()
	if len(args) == 0 {
		args = []string{"--help"}
	}
	var c commands
	parser, err := kong.New(&c, kong.Name("tenth"), kong.Description(about), kong.Writers(t.Stdout, t.Stderr), kong.Exit(os.Exit),
		groups, kong.Help(func(o kong.HelpOptions, line *kong.Context) error { return printHelp(o, line, t.Printer) }), named, kong.Bind(t), kong.ConfigureHelp(kong.HelpOptions{Compact: true, NoExpandSubcommands: true, WrapUpperBound: 88, NoAppDescFormat: true}))
	if err != nil {
		panic(err) // the commands themselves are written wrongly
	}
	args, in, asked, wrong := terminal.SpokenLanguage(args, choosesLanguage(parser.Model, args))
	if t.Printer = in; !asked {
		t.Printer = terminal.HouseLanguage(ctx, args)
	}
	if wrong != nil {
		terminal.Complain(t.Stderr, t.Printer, wrong)
		return 2
	}
	translate(parser.Model, t.Printer)
	line, err := parser.Parse(args)
	if err != nil {
		terminal.Complain(t.Stderr, t.Printer, mistyped(err))
		return 2
	}
	if err := givenTwice(line); err != nil {
		terminal.Complain(t.Stderr, t.Printer, err)
		return 2
	}
	if err := terminal.ReadSigns(line, t.Printer.Figures()); err != nil {
		terminal.Complain(t.Stderr, t.Printer, err)
		return 2
	}
	if err := line.Run(); err != nil {
		terminal.Complain(t.Stderr, t.Printer, err)
		return 1
	}
	return 0
}

// choosesLanguage reports whether the command that a line names has the flag --language for something of
// its own, such as the language of the house.
func choosesLanguage(app *kong.Application, args []string) bool {
	node := app.Node
	for _, arg := range args {
		at := slices.IndexFunc(node.Children, func(n *kong.Node) bool { return n.Name == arg })
		if at >= 0 {
			node = node.Children[at]
		}
	}
	flags := node.Flags
	if node.DefaultCmd != nil {
		flags = node.DefaultCmd.Flags
	}
	return slices.ContainsFunc(flags, func(f *kong.Flag) bool {
		return f.Name == "language" && f.Target.Type() != reflect.TypeFor[terminal.LanguageCode]()
	})
}

// failed reports a panic in a sentence instead of a stack trace.
func failed(fault any) error {
	if os.Getenv(traceVariable) != "" {
		panic(fault)
	}
	return terminal.Refusal("Keep the command and its files as they are, and tell whoever looks after the program; with "+traceVariable+"=1 it says where it stopped",
		"the program stopped at a fault of its own: %v", fault)
}

// traceVariable enables the stack trace of a panic, for debugging.
const traceVariable = "TENTHPOINT_TRACE"

// givenTwice refuses a flag given twice that takes one value: the second would
// silently take the place of the first.
func givenTwice(line *kong.Context) error {
	seen := map[*kong.Flag]bool{}
	for _, part := range line.Path {
		flag := part.Flag
		if flag == nil || flag.IsSlice() || flag.IsMap() || flag.IsCumulative() {
			continue
		}
		if seen[flag] {
			return terminal.Refusal("Give it once", "--%s is given twice", flag.Name)
		}
		seen[flag] = true
	}
	return nil
}
