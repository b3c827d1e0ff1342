package scalehouse

import (
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/settle"
)

// SettleBy makes the desk settle new loads and close days by another engine, as
// the program did before there was the current one.
func (d *Desk) SettleBy(n settle.Engine) { d.engine = n }

// AskNothing lets every load pass the guards.
func (d *Desk) AskNothing() {
	d.check = func(*load.Load, guard.Setting) []guard.Finding { return nil }
}
