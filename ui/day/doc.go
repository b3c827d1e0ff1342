// Package day has the screen of the day sheet: intake, shipments, payments, alerts, and closing the
// day.
package day
