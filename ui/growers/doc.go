// Package growers is the list of growers, with each one's shares, trucks, contracts
// and deliveries of the season on a card.
package growers
