// Package contract says what becomes of a contract: the prices its parts get, its changes, what is
// delivered on it, and what a quantity that never came costs.
//
// Loads name a contract or leave it open; [Fill] applies their parts to contracts one after the
// other. A load that brings more than a contract takes is split: the rest goes to the next contract
// of the same seller and grain, in the order the house chooses, and what no contract takes is spot.
// A landlord's part never fills a tenant's contract. Fills are worked out from the tickets in force
// until a settlement sheet fixes them, so a corrected ticket moves them and leaves no trace to mend.
package contract
