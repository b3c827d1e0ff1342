package scaleticket

import (
	"fmt"
	"reflect"
	"sync"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/worksheet"
)

// Words are the words printed on a slip. Each is a separate text that a translator can understand
// without the code.
type Words struct {
	// Printer is for texts from elsewhere: the names of commodities and factors, the labels of the
	// working. Nil leaves them in English.
	Printer *message.Printer

	Ticket, ScaleTicket, NumberLater, PageOf, DateOrder, Named string

	// Identity and number.
	NoBusiness, NoStreet, NoTown, NoPhone, Phone, Licence, Scale          string
	Status, NotOpened, OnYard, Ready, Issued, Void, Corrected, Refused    string
	Copy, Original, Reprint, DraftCopy, Corrects, CorrectedBy, Reason     string
	MarkExample, MarkVoid, MarkRefused, MarkCorrected, MarkCorrects       string
	MarkDraft, MarkReprint, MarkOneShare, MarkManual, MarkSplit, ByTicket string
	InPlaceOf, VoidTicket, ReissuedAs, MarkInPlaceOf, MarkReissued        string

	// Party and movement.
	Party, Grower, Owner, Shares, WholeLoad, Consignee, Agent                  string
	ThisCopyFor, NotNamed, NoTrailer                                           string
	Movement, Inbound, Outbound, Date, NotDated, Commodity, CropYear           string
	NotStated, NoCropYear, Truck, Plate, Trailer, GrossAt, TareAt, Driver, Bin string
	DriverOn, DriverOff, DriverNotNoted, Remark                                string

	// Weight.
	Weight, Gross, Tare, Net, OfDraft, NotWeighed, OnScale, TypedBy string
	StoredTareOf, UsedBy, StruckWeight, NetWhenWeighed              string

	// Quality.
	Quality, Moisture, NotTested, Present, NotPresent, Grade, NotGraded string
	Meter, NoMeter, Calibration, Tester, TestedAt, Probes, Sample       string
	NotNumbered, Retained, RetainedUntil, NotKept, Flag, LimitAccepted  string
	Asked, Answered                                                     string

	// Settlement.
	Settlement, Rates, NoRates, WhenSettled, NoDeduction, NoCharge                           string
	Dockage, Water, WaterCredit, Handling, DryWeight, SettledWeight                          string
	BushelWeight, DryBushels, SettledBushels, SettledCwt, SettledTonnes                      string
	Price, ByOwner, Value, NetValue, Drying, Discounts, Charges, Payable                     string
	OnNet, OnClean, OnDry, OnLeft, Premium, Discount, Adjustments, PricedParts, NotForDriver string
	Disposition, HeldUnder, WhoseGrain, OnContract                                           string
	PartOf, NetPart, WeightPart, AllShares, ChargesOf, AdjustmentsOf                         string
	NotSettled, WeighedOnly, LegalBushels                                                    string

	// Signature, footer, working.
	Weigher, WeigherLater, DriverSigns, CheckCode     string
	Cautions, LawFirst, Confirm, Working, WorkedUnder string
	NothingWorked, NotApplied                         string
	SampleLabel, Discard, NoDiscard                   string
}

// EnglishWords are the words in English.
func EnglishWords() Words { return WordsOf(nil) }

// WordsOf are the words as a printer has them.
func WordsOf(p *message.Printer) Words {
	w := wordKeys()
	texts := reflect.ValueOf(&w).Elem()
	for i := range texts.NumField() {
		if f := texts.Field(i); f.Kind() == reflect.String {
			f.SetString(p.Whole(f.String()))
		}
	}
	w.Printer = p
	return w
}

// wordKeys are the words as the catalogs have them, some with a context.
func wordKeys() Words {
	w := Words{}
	w.identityInEnglish()
	w.partyInEnglish()
	w.sampleInEnglish()
	w.settlementInEnglish()
	w.footInEnglish()
	return w
}

// spoken are the words of every language except English.
var spoken = sync.OnceValue(func() map[string]Words {
	out := map[string]Words{}
	for _, code := range i18n.Codes()[1:] {
		out[code] = WordsOf(i18n.In(code))
	}
	return out
})

// WordsIn returns the words in the language of an elevator: "en", "fr". The default is English.
func WordsIn(language string) Words {
	if w, there := spoken()[language]; there {
		return w
	}
	return EnglishWords()
}

// WordKeys returns the key of every word in the order of the slip, for translators.
func WordKeys() []string {
	w := wordKeys()
	var list []string
	texts := reflect.ValueOf(w)
	for i := range texts.NumField() {
		if f := texts.Field(i); f.Kind() == reflect.String {
			list = append(list, f.String())
		}
	}
	return list
}

// say is a text from elsewhere in the language of the slip.
func (w Words) say(text message.Sayable) string { return w.Printer.Text(text) }

// word is the name of a grain or factor, or a remark of a fact, in the language of the slip.
func (w Words) word(english string) string { return w.Printer.Word(english) }

// figure is a figure with the signs of the language.
func (w Words) figure(written string) string { return w.Printer.Figures().Write(written) }

// printed is the figure of a step with the signs of the language.
func (w Words) printed(s *worksheet.Step) string { return s.PrintedIn(w.Printer) }

// figures writes the figures of sections with the signs of the language. The
// letterhead, the party and the movement are names, which stay.
func (w Words) figures(sections []Section) {
	for _, s := range sections {
		if s.ID == "identity" || s.ID == "party" || s.ID == "movement" {
			continue
		}
		for i := range s.Lines {
			s.Lines[i].Value = w.figure(s.Lines[i].Value)
			for n, note := range s.Lines[i].Notes {
				s.Lines[i].Notes[n] = w.figure(note)
			}
		}
	}
}

// named combines a name with what it names, or returns either alone.
func (w Words) named(name, what string) string {
	if name == "" || what == "" {
		return name + what
	}
	return fmt.Sprintf(w.Named, name, what)
}
