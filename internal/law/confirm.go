package law

import (
	"strings"

	"tenthpoint/internal/message"
)

// Confirm is shown with every rule of law: the program restates the law, it does not make it.
const Confirm = "Confirm locally."

// ToConfirm is a statement of a published rule, or of what outranks the program, with the sentence
// that it is to be confirmed locally.
func ToConfirm(stated message.Sayable) message.Text {
	between := ". "
	if strings.HasSuffix(stated.Message().String(), ".") {
		between = " "
	}
	return message.List(between, stated, message.New(Confirm))
}
