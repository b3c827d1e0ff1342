// Package bin holds the grain in the house: what lies in each bin, layer on layer, and what the
// acts of the house do to it.
//
// A [Heap] is the grain of one commodity in one bin, in layers in order of filling, the lowest
// first. A layer has its weight as weighed, the oldest day of receipt in it, and what was measured
// of it. What is measured is kept as masses, not as means: so many pounds of water in so many
// pounds of grain. Taking a part of a layer parts the masses, and what is taken and what is left
// add up to what there was, to the last digit; so mass and dry matter are kept by every movement.
//
// A [Movement] is one act: grain moved, turned, blended, cleaned, dried, aerated, written off,
// weighed over or measured up; the layers that a house is opened with come as movements too. Every act is at bottom grain taken out of bins and put into one, so
// one function, [CloseDay], works a day out: first what trucks brought, then what was taken back,
// then the movements in their order, then what trucks carried away. Days follow each other from an
// empty house, and the same facts always give the same bins.
//
// Grain leaves a bin from the top: it runs down through the core above the outlet, so what was
// filled last leaves first and the oldest stays longest. Which grain left is an estimate by this
// rule, and is called so; turning a bin mixes it.
package bin
