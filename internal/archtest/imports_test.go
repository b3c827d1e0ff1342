package archtest

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// The core, innermost first. It has no clock, files, network, randomness,
// logging or window: the same facts always give the same figures.
var core = inside(
	"message", "i18n", "fault", "textwrap", "flatjson", "digest", "quantity", "tomlfile", "dated", "worksheet",
	"law", "grain", "grain/look", "rates", "rates/draft", "rates/rule", "rates/shrink", "rates/handling", "rates/drying", "rates/discount",
	"moisture", "moisture/chart", "moisture/meter", "keeping", "keeping/blend", "dryness",
	"title", "numbering", "deadline", "tariff", "levy", "paysheet", "ledger", "spelled", "settle", "settle/trial", "slipcode",
	"bin/shape", "bin", "position", "receipt", "elevator", "contract", "truckscale",
	"journal", "load", "opening", "confirmation", "dispute", "guard", "imports", "entry", "entry/typed", "entry/moving", "entry/settling", "entry/contracting", "signing", "pin", "published", "shipment", "entry/shipping", "entry/storing",
)

// papers are the documents made from what the core has worked out.
var papers = inside("paper", "paper/pdf", "paper/plain", "paper/roll", "scaleticket", "scaleticket/barcode", "scaleticket/sheet", "report", "daysheet", "season", "explanation")

// rooms are the packages of use cases, queries and files of an elevator.
var rooms = inside(
	"scalehouse", "scalehouse/intake", "scalehouse/money", "scalehouse/receipts", "scalehouse/openings", "scalehouse/confirming", "scalehouse/instruments", "scalehouse/disputes", "scalehouse/restoring", "scalehouse/publishing", "scalehouse/shipments", "scalehouse/emergency",
	"office", "office/scalelog", "office/binlog", "office/money", "office/receipts", "office/openings", "office/confirming", "office/rests", "office/terms", "office/duelist", "office/growing", "office/shipments", "office/emergency", "office/storing", "office/examiner", "office/seasons",
	"audit", "ratefiles",
)

// devices are the doors to the world: the book on disk, the scale, the printer.
var devices = inside("book", "book/engines", "book/place", "scalelink", "printing", "atomicfile", "keyfile", "account")

// everywhere lists the packages that every package may import: errors and names are messages, and a
// text is known by its digest.
var everywhere = inside("message", "digest")

// mayImport lists for every package which packages of this repository it may import. Anything not
// listed is refused: a new package is entered here first, which is the moment to think about its
// place.
var mayImport = map[string][]string{
	"internal/version":           {},                // which build this is
	"internal/message":           {},                // what is said to people, as values
	"internal/message/errortest": inside("message"), // for tests: the kind of an error and what it gives
	"internal/i18n":              {},                // the language of an elevator
	"internal/textsearch":        {},                // texts that people mean alike

	"internal/i18n/unsaid": inside("i18n"), // for tests: what was left in English

	"internal/digest":         {}, // the hash of a text
	"internal/fault":          {},
	"internal/textwrap":       inside("quantity"), // text into lines
	"internal/flatjson":       {},                 // flat objects of a book, read fast
	"internal/quantity":       inside("flatjson"),
	"internal/tomlfile":       inside("quantity"),
	"internal/worksheet":      inside("textwrap", "quantity"),
	"internal/law":            append(inside("quantity", "tomlfile"), "schedules/law"), // published rules as dated files
	"internal/grain":          append(inside("quantity", "tomlfile", "law"), "schedules/factors"),
	"internal/grain/look":     {},                             // colour and hatching of every grain
	"internal/dated":          inside("quantity", "tomlfile"), // editions for a period, held against each other
	"internal/rates":          slices.Concat(inside("quantity", "tomlfile", "dated", "worksheet", "grain", "rates/rule"), ruleKinds),
	"internal/rates/draft":    inside("tomlfile", "digest", "rates"),                                                // an edition while somebody writes it
	"internal/tariff":         inside("title", "quantity", "tomlfile", "dated", "worksheet", "grain", "rates/rule"), // storage, service and interest, as dated editions
	"internal/numbering":      inside("quantity"),                                                                   // numbers given out where the book did not see it
	"internal/deadline":       inside("quantity", "tomlfile", "law", "message"),                                     // days the law gives after a ticket
	"internal/spelled":        inside("quantity"),
	"internal/ledger":         inside("quantity", "tomlfile", "message", "grain", "paysheet"),
	"internal/title":          inside("quantity", "tomlfile", "law"),                                       // whose grain it is, and under what
	"internal/levy":           inside("quantity", "tomlfile", "dated", "worksheet", "grain", "rates/rule"), // deductions for others, as dated files
	"internal/paysheet":       inside("quantity", "worksheet", "title", "tariff", "levy"),                  // what a grower is paid for tickets
	"internal/settle":         slices.Concat(inside("title", "quantity", "worksheet", "grain", "rates", "rates/rule", "moisture"), ruleKinds),
	"internal/settle/trial":   inside("quantity", "worksheet", "rates", "settle"),   // an edition tried at many moistures
	"internal/rates/rule":     inside("quantity", "tomlfile", "worksheet", "grain"), // what rules are made of
	"internal/rates/shrink":   ruleKind(),
	"internal/rates/handling": ruleKind(),
	"internal/rates/drying":   ruleKind(),
	"internal/rates/discount": ruleKind(),

	"internal/slipcode": inside("title", "quantity", "worksheet", "grain", "rates", "settle"), // the code on a slip

	"internal/checker":        inside("quantity", "worksheet", "law", "grain", "rates", "settle", "settle/trial", "slipcode", "signing", "scaleticket/barcode"), // a ticket settled again by whoever holds its slip
	"internal/checker/square": {},                                                                                                                               // the QR code in a picture
	"internal/checker/page":   inside("checker", "i18n"),                                                                                                        // the page of it
	"cmd/checker":             inside("checker", "checker/square"),                                                                                              // the engine of the page, as WebAssembly

	"internal/bin/shape": inside("quantity"),                       // the geometry of bins
	"internal/bin":       inside("quantity", "grain", "bin/shape"), // the grain in the house

	"internal/position": inside("title", "quantity", "grain", "settle", "bin"), // the daily position record

	"internal/receipt": inside("quantity", "position"), // warehouse receipts

	"internal/opening": inside("title", "quantity", "grain", "bin", "position", "receipt", "load"), // the balances a house opens its books with

	"internal/confirmation": inside("quantity"), // letters by which depositors confirm balances

	"internal/elevator":  inside("textsearch", "quantity", "grain", "bin/shape"),
	"internal/contract":  inside("title", "quantity", "worksheet", "elevator"), // prices, changes and fills of contracts
	"internal/journal":   inside("quantity"),
	"internal/pin":       {},                                                            // a name locked by a PIN
	"internal/signing":   inside("journal"),                                             // the keys of a house, and what they sign
	"internal/account":   {},                                                            // who runs a program, and where
	"internal/keyfile":   inside("signing"),                                             // the key of this computer, in a file
	"internal/keyring":   inside("book", "journal", "signing"),                          // what a book says of its keys
	"internal/published": inside("elevator", "journal", "quantity", "rates", "signing"), // what a head office lays down for its sites
	"internal/load":      inside("title", "flatjson", "quantity", "worksheet", "grain", "rates", "moisture", "moisture/chart", "moisture/meter", "settle", "elevator", "journal"),

	"internal/moisture/chart": inside("quantity", "tomlfile", "worksheet", "grain"),
	"internal/moisture/meter": inside("fault", "quantity", "tomlfile", "worksheet", "law"),
	"internal/moisture":       inside("fault", "quantity", "tomlfile", "worksheet", "law", "grain", "moisture/chart", "moisture/meter"),
	"internal/keeping":        append(inside("quantity", "tomlfile", "worksheet"), "schedules/keeping"), // what grain in store comes to, and what drying takes
	"internal/keeping/blend":  inside("quantity"),                                                       // what mix of lots meets a target
	"internal/dryness":        inside("fault", "quantity", "grain", "moisture", "moisture/meter", "keeping"),

	"schedules":         inside("quantity", "tomlfile", "grain", "rates", "tariff", "levy", "moisture/chart"), // the editions, tariffs and charts inside the program
	"schedules/factors": {},                                                                                   // results the trade tests for, as data
	"schedules/keeping": {},                                                                                   // curves and tables of storing grain, as data
	"schedules/law":     {},                                                                                   // the published rules inside the program
	"migrations":        {},                                                                                   // the text of the book's own upgrades

	"internal/guard":      inside("title", "quantity", "grain", "elevator", "load", "bin"), // what is improbable about a load
	"internal/truckscale": inside("quantity", "tomlfile", "law", "elevator", "journal"),    // the log of a truck scale
	"internal/dispute":    inside("quantity", "tomlfile", "law", "journal"),
	"internal/imports":    inside("title", "quantity", "grain", "elevator", "load", "entry", "settle", "opening", "position"),
	"internal/entry":      inside("title", "guard", "i18n", "quantity", "grain", "rates", "moisture", "moisture/meter", "settle", "elevator", "load", "textsearch"), // a load while it is entered

	"internal/guard/lookup": slices.Concat(core, inside("book")), // what the book has around a load

	"internal/entry/typed":       inside("quantity"),                                                       // what is typed of a matter, as data
	"internal/entry/moving":      inside("entry", "entry/typed", "quantity", "bin", "bin/shape"),           // what is typed of a movement of grain
	"internal/entry/contracting": inside("entry", "entry/typed", "quantity", "contract", "elevator"),       // what is typed of a contract
	"internal/entry/settling":    inside("entry", "entry/typed", "quantity", "tariff", "levy", "paysheet"), // what is typed of a settlement sheet

	// The head office and the sites that send to it.
	"internal/headoffice":            inside("elevator", "journal", "signing"),                                                    // how chains travel
	"internal/headoffice/central":    inside("headoffice", "journal", "published"),                                                // the office's side, in PostgreSQL
	"internal/headoffice/transfer":   inside("headoffice", "journal", "book", "published"),                                        // the site's side
	"internal/headoffice/mirror":     slices.Concat(core, inside("book", "office", "scalehouse/intake", "headoffice", "signing")), // a site's book made again
	"internal/headoffice/copies":     inside("book", "book/engines", "headoffice", "headoffice/mirror", "journal", "atomicfile"),  // the books of sites, kept at the office
	"internal/headoffice/across":     inside("daysheet", "contract", "position", "quantity"),                                      // what several sites have, added up
	"internal/headoffice/officetest": inside("headoffice", "headoffice/central", "journal"),                                       // for tests: an office and bad lines to it

	"internal/entrytest": slices.Concat(core, rooms, inside("book", "book/sqlite")), // for tests: one table for all who enter loads

	"internal/book":                   core,                                                                                           // what a book holds
	"internal/book/booktest":          slices.Concat(core, inside("book")),                                                            // for tests: what any engine must do
	"internal/book/postgres":          slices.Concat(core, inside("book", "book/place", "book/sqlite", "book/copying", "book/steps")), // a backup is a book of one computer
	"internal/book/copying":           slices.Concat(core, inside("book")),                                                            // from engine to engine
	"internal/book/engines":           inside("book", "book/sqlite", "book/postgres", "book/place", "audit", "scalehouse"),            // the one place that names them
	"internal/book/sqlite":            slices.Concat(core, inside("book", "book/place", "book/steps", "book/sqlite/access", "book/sqlite/filecopy", "atomicfile"), []string{"migrations"}),
	"internal/book/sqlite/access":     {},                                         // connections to the file, each for a purpose
	"internal/book/sqlite/filecopy":   inside("book/sqlite/access", "atomicfile"), // copies of a book in use
	"internal/book/steps":             {},                                         // the steps that build the tables, in any engine
	"internal/book/sqlite/sqlitetest": {},                                         // for tests: the file of a book past the program
	"internal/book/sqlite/faultdisk":  {},                                         // for tests: a disk that fails, fills up and forgets
	"internal/book/place":             inside("message"),                          // where a book may lie
	"internal/fonts":                  {},                                         // the letters on paper
	"internal/fonts/subset":           {},                                         // fonts cut down to what is printed
	"internal/paper":                  inside("fonts", "textwrap"),
	"internal/paper/pdf":              inside("fonts", "paper"),
	"internal/paper/plain":            inside("textwrap"),
	"internal/paper/roll":             {}, // the bytes of receipt printers

	"internal/paper/roll/rollread": {}, // for tests: what such a printer prints

	"internal/scaleticket": slices.Concat(core, inside("scaleticket/barcode")),
	"internal/report":      inside("elevator", "quantity", "grain/look", "textwrap", "i18n", "paper", "paper/pdf", "paper/plain"),

	"internal/scaleticket/barcode": inside("quantity"),
	"internal/scaleticket/sheet":   inside("paper", "paper/pdf", "paper/plain", "paper/roll", "scaleticket", "scaleticket/barcode", "slipcode"),
	"internal/tickettest":          slices.Concat(core, inside("scaleticket")), // for tests: the tickets they are made of

	"internal/paper/pdf/pdfwords":     {}, // for tests: the words of a paper
	"internal/daysheet":               slices.Concat(core, inside("report")),
	"internal/season":                 slices.Concat(core, inside("report")), // pictures and figures of a season
	"internal/explanation":            slices.Concat(core, inside("report")),
	"internal/scalelink":              inside("quantity", "elevator", "tomlfile"), // the limits of a scale
	"internal/atomicfile":             {},                                         // files that appear whole or not at all
	"internal/printing":               inside("atomicfile"),
	"internal/ratefiles":              slices.Concat(inside("book/place", "atomicfile", "tomlfile", "law", "title", "deadline", "grain", "rates", "tariff", "levy", "ledger", "moisture", "moisture/chart", "moisture/meter", "dispute", "truckscale"), []string{"schedules"}),
	"internal/office":                 slices.Concat(core, papers, inside("book", "textsearch", "guard/lookup", "office/terms", "office/duelist", "keyring")),
	"internal/office/posting":         slices.Concat(core, papers, inside("book", "checker", "keyring", "office")), // what a house shows to everybody
	"internal/office/scalelog":        slices.Concat(core, papers, inside("office")),                               // the logs of truck scales as papers
	"internal/office/binlog":          slices.Concat(core, papers, inside("book", "office")),                       // the bins as lists and papers
	"internal/office/growing":         slices.Concat(core, papers, inside("book", "office")),                       // production by farm
	"internal/office/seasons":         slices.Concat(core, papers, inside("book", "office", "office/money")),       // a season, read
	"internal/office/examiner":        slices.Concat(core, papers, inside("book", "office", "office/receipts")),    // what an examiner asks for
	"internal/office/money":           slices.Concat(core, papers, inside("book", "office")),                       // what follows a ticket, as lists and papers
	"internal/office/confirming":      slices.Concat(core, papers, inside("office", "office/money")),               // the letters to depositors, drawn and as papers
	"internal/office/openings":        slices.Concat(core, papers, inside("office")),                               // the opening of the books, read and as a paper
	"internal/office/receipts":        slices.Concat(core, papers, inside("office", "office/terms")),               // warehouse receipts
	"internal/office/rests":           slices.Concat(core, inside("book", "office")),                               // what rests on a ticket
	"internal/office/terms":           slices.Concat(core, papers, inside("book")),                                 // posted prices, undecided grain
	"internal/office/duelist":         slices.Concat(core, inside("book", "office/terms")),                         // what falls due
	"internal/audit":                  slices.Concat(core, inside("book", "office", "office/money", "keyring")),
	"internal/scalehouse":             slices.Concat(core, papers, inside("book", "office", "office/money", "office/receipts", "office/rests", "audit", "keyring", "guard/lookup")),
	"internal/scalehouse/housetest":   slices.Concat(core, papers, rooms, inside("message/errortest", "book", "book/sqlite", "book/sqlite/sqlitetest"), []string{"internal/paper/pdf/pdfwords", "schedules"}), // for tests: a small invented elevator
	"internal/scalehouse/intake":      slices.Concat(core, inside("office", "office/binlog", "scalehouse")),
	"internal/scalehouse/money":       slices.Concat(core, inside("book", "office", "office/money", "scalehouse")),                           // the acts on what follows a ticket
	"internal/scalehouse/confirming":  slices.Concat(core, inside("office/confirming", "scalehouse")),                                        // the acts on letters to depositors
	"internal/scalehouse/openings":    slices.Concat(core, inside("office/rests", "scalehouse", "scalehouse/money", "scalehouse/restoring")), // the acts that open the books
	"internal/scalehouse/receipts":    slices.Concat(core, inside("office/receipts", "scalehouse")),                                          // the acts on warehouse receipts
	"internal/scalehouse/instruments": slices.Concat(core, inside("office", "scalehouse")),                                                   // the acts on what a house measures with
	"internal/scalehouse/disputes":    slices.Concat(core, inside("office", "scalehouse")),                                                   // the acts on a disagreement
	"internal/demo":                   slices.Concat(core, inside("book", "book/sqlite", "office", "office/money", "scalehouse", "scalehouse/instruments", "scalehouse/money")),
	"internal/shipment":               inside("quantity", "grain"), // grain that left, against what its destination found
	"internal/entry/shipping":         inside("entry", "entry/typed", "grain", "quantity", "shipment"),
	"internal/office/shipments":       slices.Concat(core, papers, inside("book", "office", "office/binlog")), // loads that left, and their papers
	"internal/scalehouse/shipments":   slices.Concat(core, inside("office/shipments", "scalehouse")),          // what a destination found comes into the book
	"internal/entry/storing":          inside("dryness", "entry", "entry/typed", "quantity"),
	"internal/office/storing":         slices.Concat(core, papers, inside("office")),                                                              // whether grain keeps, as a paper
	"internal/office/emergency":       slices.Concat(core, papers, inside("office")),                                                              // pads of emergency tickets, and their account
	"internal/scalehouse/emergency":   slices.Concat(core, inside("scalehouse")),                                                                  // the acts on pads of emergency tickets
	"internal/scalehouse/publishing":  slices.Concat(core, inside("office", "scalehouse")),                                                        // the acts of a head office and of the sites that follow it
	"internal/scalehouse/restoring":   slices.Concat(core, papers, inside("book", "office", "scalehouse")),                                        // the acts on a book that was restored
	"internal/simulation":             slices.Concat(core, rooms, inside("book", "book/sqlite", "book/sqlite/faultdisk", "scalehouse/housetest")), // for tests: a scale house drawn from a seed

	"ui/model":               inside("textsearch", "moisture", "grain/look"),
	"ui/handbook":            inside("textsearch", "i18n", "rates"), // explains the methods of the rates
	"ui/session":             slices.Concat(core, papers, rooms, inside("book", "textsearch"), []string{"ui/model"}),
	"ui/session/sessiontest": slices.Concat(core, papers, rooms, inside("book", "book/sqlite", "demo"), []string{"schedules", "ui/model", "ui/session"}), // for tests: a window made of notes
	"ui/session/ask":         slices.Concat(core, papers, rooms, []string{"ui/model", "ui/session"}),                                                     // questions that several areas put
	"ui/apptheme":            {"ui/model", "internal/grain/look"},
	"ui/paint":               {"ui/apptheme", "internal/grain/look"},
	"ui/widgets":             {"internal/textsearch", "ui/model", "ui/apptheme", "ui/paint", "ui/widgets/status"},
	"ui/widgets/status":      {"ui/model", "ui/apptheme", "ui/paint"}, // how something is, said
	"ui/charts":              {"ui/model", "ui/apptheme", "ui/paint", "internal/grain/look"},
	"ui/paperview":           slices.Concat(inside("fonts", "paper"), []string{"ui/model", "ui/apptheme", "ui/paint", "ui/widgets"}),
	"ui/widgettest":          {"ui/model", "ui/apptheme"}, // for tests: what tests of widgets share
	"ui/gallery":             {},                          // tests of all widgets side by side
	"ui/shell":               slices.Concat(inside("i18n", "scaleticket"), []string{"ui/model", "ui/session"}, widgetPackages),
	"ui/help":                slices.Concat([]string{"ui/model", "ui/session", "ui/handbook", "ui/shell"}, widgetPackages),

	"ui/listdetail": slices.Concat(inside("paper"), []string{"ui/model", "ui/shell"}, widgetPackages), // a list with the detail of the row chosen

	// The areas of the window, each with its presenter and its screens.
	"ui/yard":            area("ui/yard/board", "ui/yard/loadfields"),
	"ui/yard/loadfields": slices.Concat(core, []string{"ui/model", "ui/session"}), // the fields of a load on its form
	"ui/yard/board":      area(),                                                  // the list of trucks, and the board
	"ui/lab":             area("ui/yard", "ui/lab/shelf"),                         // a sample's other results are typed on the form of its load
	"ui/lab/shelf":       area(),                                                  // the samples kept
	"ui/tickets":         area(),
	"ui/disputes":        area(),
	"ui/bins":            area(),
	"ui/day":             area(),
	"ui/rates":           slices.Concat(area(), inside("checker/page", "office/posting")), // also the page that growers hold beside it
	"ui/growers":         area(),
	"ui/equipment":       area("internal/keyring"),
	"ui/setup":           area(),
	"ui/sheets":          area(),
	"ui/contracts":       area(),
	"ui/prices":          area(),
	"ui/due":             area(),
	"ui/season":          area(),
	"ui/desktop":         slices.Concat(areas, widgetPackages, []string{"ui/session", "ui/shell", "ui/help"}), // the table of screens

	"cmd/tenthpoint": slices.Concat(core, papers, devices, rooms, inside("demo", "version"),
		widgetPackages, []string{"ui/yard", "schedules", "ui/model", "ui/session", "ui/shell", "ui/rates", "ui/desktop"}),

	// The terminal program: what its commands share, and a package for each group
	// of them.
	"cmd/tenth":          slices.Concat(commands, []string{"cmd/tenth/terminal", "internal/version", "internal/account"}), // the table of commands
	"cmd/tenth/terminal": slices.Concat(core, papers, rooms, inside("book", "book/engines", "book/place", "printing", "atomicfile", "textsearch", "keyfile")),
	"cmd/tenth/yard":     command(),
	"cmd/tenth/lab":      command("schedules"),
	"cmd/tenth/tickets":  command("cmd/tenth/yard", "internal/atomicfile"), // a ticket issued again may leave a load on the yard
	"cmd/tenth/day":      command("internal/atomicfile"),
	"cmd/tenth/bins":     command(),
	"cmd/tenth/sums":     command("internal/atomicfile"),
	"cmd/tenth/house":    command("internal/keyfile"),
	"cmd/tenth/keep":     command(),
	"cmd/tenth/keys":     command("internal/keyfile", "internal/keyring"),
	"cmd/tenth/money":    command(),
	"cmd/tenth/receipts": command(),
	"cmd/tenth/rates":    command(),
	"cmd/tenth/book":     command("schedules", "internal/atomicfile", "internal/book/engines", "internal/demo", "internal/keyring", "cmd/tenth/yard"), // the demo's loads are received
	"cmd/tenth/program":  {"cmd/tenth/terminal", "internal/version"},                                                                                  // what tenth says of itself

	"cmd/tenth/headoffice": command("cmd/tenth/tickets", "internal/atomicfile", "internal/version", "internal/headoffice", "internal/headoffice/central", "internal/headoffice/transfer", "internal/headoffice/copies", "internal/headoffice/across"),

	"cmd/task":            slices.Concat(inside("fonts/subset"), []string{"cmd/task/engine", "cmd/task/installer", "cmd/task/older", "cmd/task/toolchain"}),
	"cmd/task/older":      slices.Concat(inside("transcript"), []string{"cmd/task/toolchain"}),
	"cmd/task/installer":  {"cmd/task/toolchain"}, // what people install
	"cmd/task/engine":     {},                     // the engine of the checker's page
	"cmd/task/toolchain":  {},
	"internal/transcript": {}, // what the terminal program said, compared
	"internal/archtest":   {},
}

// area returns the imports allowed to an area of the window: the core through the session, and what
// all areas share.
func area(more ...string) []string {
	return slices.Concat(core, papers, rooms, inside("book", "book/place", "textsearch"), widgetPackages, []string{"ui/model", "ui/session", "ui/session/ask", "ui/shell", "ui/listdetail"}, more)
}

// commands are the groups of commands of the terminal program.
var commands = []string{"cmd/tenth/yard", "cmd/tenth/lab", "cmd/tenth/tickets", "cmd/tenth/day", "cmd/tenth/sums", "cmd/tenth/keep", "cmd/tenth/keys", "cmd/tenth/bins", "cmd/tenth/house", "cmd/tenth/money", "cmd/tenth/receipts", "cmd/tenth/rates", "cmd/tenth/book", "cmd/tenth/headoffice", "cmd/tenth/program"}

// command returns the imports allowed to a group of commands: the core through the desk at an open
// book, and what all commands share.
func command(more ...string) []string {
	return slices.Concat(core, papers, rooms, inside("book", "checker", "checker/page", "office/posting"), []string{"cmd/tenth/terminal"}, more)
}

// ruleKinds are the kinds of rule of an edition, with a file for each method.
var ruleKinds = inside("rates/shrink", "rates/handling", "rates/drying", "rates/discount")

// ruleKind returns the imports allowed to a kind of rule.
func ruleKind() []string { return inside("quantity", "tomlfile", "worksheet", "grain", "rates/rule") }

// inside spells packages below internal.
func inside(names ...string) []string {
	paths := make([]string, len(names))
	for i, name := range names {
		paths[i] = "internal/" + name
	}
	return paths
}

// importDirection compares every import inside the repository with the table.
func importDirection(sources []source) []string {
	var problems []string
	unknown := map[string]bool{}
	for _, s := range sources {
		allowed, known := mayImport[s.pkg()]
		if !known && !unknown[s.pkg()] {
			unknown[s.pkg()] = true
			problems = append(problems, fmt.Sprintf(
				"%s: this package is not in the table of imports; enter it there with what it may import", s.pkg()))
		}
		if !known || s.isTest() {
			continue
		}
		for _, i := range s.imports() {
			inner, ours := strings.CutPrefix(i.path, modulePrefix)
			if ours && !slices.Contains(allowed, inner) && !slices.Contains(everywhere, inner) {
				problems = append(problems, fmt.Sprintf(
					"%s: %s may not import %s: imports point inward", s.at(i.node), s.pkg(), inner))
			}
		}
	}
	return problems
}

// testsStayInside lets tests import what they need to set up a scene, but never from the inside the
// screens or the commands.
func testsStayInside(sources []source) []string {
	var problems []string
	for _, s := range sources {
		if !s.isTest() || !within(s.pkg(), "internal", "schedules", "migrations") {
			continue
		}
		for _, i := range s.imports() {
			inner, ours := strings.CutPrefix(i.path, modulePrefix)
			if ours && within(inner, "ui", "cmd") {
				problems = append(problems, fmt.Sprintf(
					"%s: a test of %s reaches outward to %s", s.at(i.node), s.pkg(), inner))
			}
		}
	}
	return problems
}

func TestImportDirectionCanFail(t *testing.T) {
	expectProblems(t, importDirection([]source{
		snippet(t, "internal/settle/a.go", `package settle
import _ "tenthpoint/internal/rates"`),
		snippet(t, "internal/rates/a.go", `package rates
import _ "tenthpoint/internal/settle"`),
		snippet(t, "ui/shell/a.go", `package shell
import _ "tenthpoint/internal/book/sqlite"`),
		snippet(t, "ui/shell/a_test.go", `package shell
import _ "tenthpoint/internal/book/sqlite"`),
		snippet(t, "internal/pricing/a.go", `package pricing`),
		snippet(t, "internal/pricing/b.go", `package pricing`),
	}),
		"internal/rates/a.go:2: internal/rates may not import internal/settle",
		"ui/shell/a.go:2: ui/shell may not import internal/book/sqlite",
		"internal/pricing: this package is not in the table")
}

// TestTableHasNoCircle proves the table itself: following it inward from any
// package never leads back to that package.
func TestTableHasNoCircle(t *testing.T) {
	for start := range mayImport {
		if path := circle(mayImport, start, start, map[string]bool{}); path != nil {
			t.Errorf("%s imports itself: %s", start, strings.Join(path, " -> "))
		}
	}
	round := map[string][]string{"a": {"b"}, "b": {"c"}, "c": {"a"}}
	if circle(round, "a", "a", map[string]bool{}) == nil {
		t.Error("a circle of three was not found")
	}
}

// circle is a way from a package back to itself. A package that was seen without leading back is not
// walked again: all simple paths are more than a machine can walk.
func circle(table map[string][]string, start, at string, seen map[string]bool) []string {
	for _, next := range table[at] {
		if next == start {
			return []string{at, next}
		}
		if seen[next] {
			continue
		}
		seen[next] = true
		if found := circle(table, start, next, seen); found != nil {
			return append([]string{at}, found...)
		}
	}
	return nil
}

func TestTestsStayInsideCanFail(t *testing.T) {
	expectProblems(t, testsStayInside([]source{
		snippet(t, "internal/scaleticket/a_test.go", `package slip
import _ "tenthpoint/ui/session"
import _ "tenthpoint/internal/scalehouse"`),
		snippet(t, "ui/shell/a_test.go", `package shell
import _ "tenthpoint/ui/session"`),
	}), "internal/scaleticket/a_test.go:2: a test of internal/scaleticket reaches outward to ui/session")
}
