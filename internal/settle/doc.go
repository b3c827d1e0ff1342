// Package settle works out what is owed for a load.
//
// Settle takes the facts of one load and one edition of rates and writes the
// whole calculation on a [worksheet.Sheet]: weights, sample, then every rule of
// the edition in the order the edition lists, then bushels, money and shares.
// It is pure: the same facts and the same edition give the same sheet, today
// and in February.
//
// What the rules do, with sources:
//
//   - water shrink is W x (Mi - Mf) / (100 - Mf), the weight of water that
//     leaves while the dry matter stays (the Canadian order SOR/2018-176; NDSU,
//     SDSU and Purdue extension), zero at or below the trigger;
//   - handling loss has a line of its own, a percent of the wet weight
//     added to the shrink, or of the dried weight, as the edition says;
//   - bushels are pounds divided by the legal pounds of a bushel, never by the
//     test weight;
//   - dockage is recorded by the grain's own rule (7 CFR 810.104) and taken
//     off first.
//
// A load that cannot be settled is refused with every reason at once.
//
// Settlements have uses beyond the ticket: [Compare] compares two of them for a dispute,
// [TakenBeyondWater] shows what an edition takes for moisture beyond the water, [WorthOf] what a
// step of moisture is worth, [Try] applies an edition to a grid of moistures, and [WeighOnly]
// records a load that is only weighed.
package settle
