// Package settle turns what was found about a load into what is owed for it.
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
//   - handling loss stands on a line of its own, a percent of the wet weight
//     added to the shrink, or of the dried weight, as the edition says;
//   - bushels are pounds divided by the legal pounds of a bushel, never by the
//     test weight;
//   - dockage is recorded by the grain's own rule (7 CFR 810.104) and taken
//     off first.
//
// A load that cannot be settled honestly is refused with every reason at once.
//
// What a settlement is good for beyond its ticket stands beside it: [Compare]
// sets two of them side by side for a dispute, [TakenBeyondWater] tells what an
// edition takes for moisture beyond the water, [WorthOf] what a step of
// moisture is worth, [Try] what an edition does to a grid of moistures, and
// [WeighOnly] writes down a load that is weighed and no more.
package settle
