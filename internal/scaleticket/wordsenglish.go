package scaleticket

import "tenthpoint/internal/law"

func (w *Words) identityInEnglish() {
	w.Ticket, w.ScaleTicket, w.NumberLater = "Ticket", "Scale ticket", "number at issue"
	w.PageOf, w.DateOrder, w.Named = "page %d of %d", "m/d/y", "%s: %s"
	w.NoBusiness, w.NoStreet, w.NoTown, w.NoPhone = "business name not set", "street address not set", "town not set", "phone not set"
	w.Phone, w.Licence, w.Scale = "Phone", "Licence", "Scale"
	w.Status, w.NotOpened, w.OnYard, w.Ready = "Status", "not opened", "on the yard, not issued", "settled, not issued"
	w.Issued, w.Void, w.Corrected, w.Refused = "issued", "void", "corrected", "refused"
	w.Copy, w.Original, w.Reprint, w.DraftCopy = "Copy", "original", "reprint %d", "draft, not a ticket"
	w.Corrects, w.CorrectedBy, w.Reason, w.ByTicket = "Corrects", "Corrected by", "Reason", "ticket %d"
	w.MarkExample, w.MarkVoid, w.MarkRefused = "EXAMPLE - NOT FOR TRADE", "VOID", "REFUSED"
	w.MarkCorrected, w.MarkCorrects = "CORRECTED BY TICKET %d", "CORRECTS TICKET %d"
	w.InPlaceOf, w.VoidTicket, w.ReissuedAs = "In place of", "ticket %d, void", "Reissued as"
	w.MarkInPlaceOf, w.MarkReissued = "IN PLACE OF TICKET %d", "REISSUED AS TICKET %d"
	w.MarkDraft, w.MarkReprint, w.MarkOneShare = "DRAFT", "REPRINT %d", "ONE SHARE ONLY"
	w.MarkManual, w.MarkSplit = "MANUAL WT", "SPLIT-WEIGHED"
}

func (w *Words) partyInEnglish() {
	w.Party, w.Grower, w.Owner, w.Shares = "Party", "Grower", "Owner", "Shares"
	w.WholeLoad, w.Consignee, w.Agent = "whole load", "Consignee", "Agent"
	w.ThisCopyFor, w.NotNamed, w.NoTrailer = "This copy is for", "not named", "trailer|none"
	w.Movement, w.Inbound, w.Outbound = "Movement", "inbound", "outbound"
	w.Date, w.NotDated = "Date", "not dated"
	w.Commodity, w.CropYear, w.NotStated, w.NoCropYear = "Commodity", "Crop year", "not stated", "year|not stated"
	w.Truck, w.Plate, w.Trailer = "Truck", "plate", "Trailer"
	w.GrossAt, w.TareAt, w.Driver, w.Bin = "Gross taken", "Tare taken", "Driver", "Pit or bin"
	w.DriverOn, w.DriverOff, w.DriverNotNoted = "driver on", "driver off", "driver not noted"
	w.Remark = "Remark"
	w.Weight, w.Gross, w.Tare, w.Net = "Weight", "Gross", "Tare", "Net"
	w.OfDraft, w.NotWeighed, w.OnScale, w.TypedBy = "%s, %s", "not weighed", "scale", "typed by"
	w.StoredTareOf, w.UsedBy, w.StruckWeight = "stored tare of", "used by", "replaced"
	w.NetWhenWeighed = "when weighed"
}

func (w *Words) sampleInEnglish() {
	w.Quality, w.Moisture, w.NotTested = "Quality", "Moisture", "not tested"
	w.Present, w.NotPresent, w.Grade, w.NotGraded = "present", "not present", "Grade", "not graded"
	w.Meter, w.NoMeter, w.Calibration, w.Tester = "Meter", "no meter named", "calibration", "Tester"
	w.TestedAt, w.Probes, w.Sample, w.NotNumbered = "Tested", "Probes", "Sample", "not numbered"
	w.Retained, w.RetainedUntil, w.NotKept = "Sample kept", "until", "not kept"
	w.Flag, w.LimitAccepted = "Flag", "Limit accepted"
	w.Asked, w.Answered = "Asked", "Answered"
}

func (w *Words) settlementInEnglish() {
	w.WeighedOnly, w.LegalBushels = "weighed only, under no rates", "Bushels by legal weight"
	w.Settlement, w.Rates, w.NoRates = "Settlement", "Rates", "no rates chosen"
	w.WhenSettled, w.NoDeduction, w.NoCharge = "when settled", "no deduction", "no charge"
	w.Dockage, w.Water, w.WaterCredit, w.Handling = "Dockage", "Water shrink", "Water credit", "Handling loss"
	w.DryWeight, w.SettledWeight = "Dry-equivalent weight", "Weight settled"
	w.BushelWeight, w.DryBushels = "Bushel weight", "Dry bushels"
	w.SettledBushels, w.SettledCwt, w.SettledTonnes = "Settled bushels", "Settled hundredweight", "Settled tonnes"
	w.Price, w.ByOwner, w.Value, w.NetValue = "Price", "by owner", "Value", "Value after discounts"
	w.Drying, w.Discounts, w.Charges, w.Payable = "Drying charge", "Discounts and premiums", "Charges", "Payable"
	w.OnNet, w.OnClean = "on the net weight", "on the clean weight"
	w.OnDry, w.OnLeft, w.Premium = "on the dry weight", "on the weight left", "premium"
	w.Disposition, w.HeldUnder, w.WhoseGrain = "Sold or stored", "Held as", "Whose grain"
	w.OnContract = "on contract"
	w.Discount, w.Adjustments, w.PricedParts = "quality|discount", "Premiums less discounts and charges", "of the parts that have a price"
	w.NotForDriver = "on the owner's copy"
	w.AdjustmentsOf = "charges and discounts"
	w.PartOf, w.NetPart = "Part of", "Net, this part"
	w.WeightPart, w.AllShares, w.ChargesOf = "Weight settled, this part", "All shares", "charges"
	w.NotSettled = "not settled"
}

func (w *Words) footInEnglish() {
	w.Weigher, w.WeigherLater, w.DriverSigns = "Weighed by", "weigher not named", "Driver"
	w.CheckCode = "Code"
	w.Cautions = "See the deck clear of trucks and people before weighing. Nobody climbs on a load."
	w.LawFirst = "Local law and the weights and measures authority outrank this ticket."
	w.Confirm = law.Confirm
	w.Working, w.WorkedUnder = "Working", "Worked under"
	w.NothingWorked, w.NotApplied = "The working is printed when the load is settled.", "none"
	w.SampleLabel, w.Discard, w.NoDiscard = "Retained sample", "Keep until", "No date to discard"
}
