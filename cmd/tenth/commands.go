package main

import (
	"context"
	"errors"
	"os"

	"github.com/alecthomas/kong"
)

// commands are all that can be typed after "tenth". A command is a file of its
// own and a line here.
type commands struct {
	Receive receiveCommand `cmd:"" group:"trucks" help:"Receive one load: weigh, test, settle, print its ticket."`
	Yard    yardCommand    `cmd:"" group:"trucks" help:"List the trucks that have no ticket yet."`
	Bench   benchCommand   `cmd:"" group:"trucks" help:"The sample bench: moisture tests, meters and their checks, samples kept."`
	Open    openCommand    `cmd:"" group:"trucks" help:"Write a truck down that has come."`
	Amend   amendCommand   `cmd:"" group:"trucks" help:"Change what is known of a load on the yard."`
	Weigh   weighCommand   `cmd:"" group:"trucks" help:"Weigh a load on the yard."`
	Sample  sampleCommand  `cmd:"" group:"trucks" help:"Write down what the bench found."`
	Issue   issueCommand   `cmd:"" group:"trucks" help:"Settle a load and print its ticket."`
	Refuse  refuseCommand  `cmd:"" group:"trucks" help:"Turn a load away."`

	Show    showCommand    `cmd:"" group:"tickets" help:"Show a ticket as it was printed."`
	Explain explainCommand `cmd:"" group:"tickets" help:"Explain every figure of a ticket, under the rates it was settled by."`
	Find    findCommand    `cmd:"" group:"tickets" help:"Find tickets by grower, truck, grain or day."`
	Reprint reprintCommand `cmd:"" group:"tickets" help:"Print another copy of a ticket."`
	Correct correctCommand `cmd:"" group:"tickets" help:"Issue a corrected ticket in place of a wrong one."`
	Void    voidCommand    `cmd:"" group:"tickets" help:"Cancel a ticket; its number and copies stay."`
	Reissue reissueCommand `cmd:"" group:"tickets" help:"Issue another ticket in place of a void one."`

	Proof      proofCommand      `cmd:"" group:"tickets" help:"Show how a ticket was worked out, for the grower to follow."`
	Difference differenceCommand `cmd:"" group:"tickets" help:"Set two tickets side by side."`
	Dispute    disputeCommand    `cmd:"" group:"tickets" help:"A disagreement about a ticket, from doubt to decision."`

	Day      dayCommand      `cmd:"" group:"evening" help:"Show the sheet of a day, or close the day."`
	Position positionCommand `cmd:"" group:"evening" help:"Show what is in the house."`
	Account  accountCommand  `cmd:"" group:"evening" help:"Show a grower's account."`
	Examine  examineCommand  `cmd:"" group:"evening" help:"Write the registers and papers an examiner asks for into a folder."`

	Settle settleCommand `cmd:"" group:"sums" help:"Settle a load without a book: figures in, working out."`
	Shrink shrinkCommand `cmd:"" group:"sums" help:"Work out the bare water shrink of a weight."`
	Grade  gradeCommand  `cmd:"" group:"sums" help:"Grade a sample by the published tables; advice only."`

	Setup  setupCommand  `cmd:"" group:"house" help:"Set the elevator up, or show how it is set up."`
	Grower growerCommand `cmd:"" group:"house" help:"Add, change or list growers and their shares."`
	Truck  truckCommand  `cmd:"" group:"house" help:"Add, change or list trucks and their stored tares."`
	Person personCommand `cmd:"" group:"house" help:"Add, change or list the people at the desk."`
	Rates  ratesCommand  `cmd:"" group:"house" help:"Read, check, try and compare the editions of rates."`
	Bin    binCommand    `cmd:"" group:"house" help:"Add, change or list pits and bins."`

	Verify verifyCommand `cmd:"" group:"book" help:"Check the whole book, or the code on a slip."`
	Backup backupCommand `cmd:"" group:"book" help:"Copy the book to a file, and check the copy."`
	Import importCommand `cmd:"" group:"book" help:"Take lists over that were kept elsewhere: growers, trucks, past loads."`
	Demo   demoCommand   `cmd:"" group:"book" help:"Make the book of an invented elevator."`
}

var groups = kong.Groups{
	"trucks":  "Trucks",
	"tickets": "Tickets",
	"evening": "End of the day",
	"sums":    "Sums, without a book",
	"house":   "The elevator",
	"book":    "The book",

	"whose":   "Whose grain, and where it goes",
	"weights": "Weights",
	"sample":  "The sample",
	"paper":   "Paper",
}

const about = `The scale house from a terminal.

Type "tenth COMMAND --help" to see what a command takes, with examples.
Commands that use a book take --book PATH, or the book that TENTHPOINT_BOOK
names, or the one in your data folder.`

// run does one command line and gives the exit status.
func run(ctx context.Context, args []string, t *terminal) int {
	t.Context = ctx
	if len(args) == 0 {
		args = []string{"--help"}
	}
	var c commands
	parser, err := kong.New(&c, kong.Name("tenth"), kong.Description(about), kong.Writers(t.out, t.err), kong.Exit(os.Exit),
		groups, kong.Bind(t), kong.ConfigureHelp(kong.HelpOptions{Compact: true, NoExpandSubcommands: true, WrapUpperBound: 88, NoAppDescFormat: true}))
	if err != nil {
		panic(err) // the commands themselves are written wrongly
	}
	line, err := parser.Parse(args)
	if err != nil {
		complain(t.err, mistyped(err))
		return 2
	}
	if err := line.Run(); err != nil {
		complain(t.err, err)
		return 1
	}
	return 0
}

// mistyped turns a fault of the command line into a complaint with the way to
// the command's help.
func mistyped(err error) error {
	name := "tenth"
	var parse *kong.ParseError
	if errors.As(err, &parse) && parse.Context != nil && parse.Context.Selected() != nil {
		name = "tenth " + parse.Context.Selected().Path()
	}
	return complaint{what: err.Error(), hint: "Type \"" + name + " --help\" to see what it takes"}
}
