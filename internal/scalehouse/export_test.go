package scalehouse

import "tenthpoint/internal/settle"

// SettleBy makes the desk settle new loads and close days by another engine, as
// the program did before there was the current one.
func (d *Desk) SettleBy(n settle.Engine) { d.engine = n }
