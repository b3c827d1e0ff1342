package i18n

import (
	"sync"

	"tenthpoint/internal/message"
)

// Translator translates English texts to a language. A nil Translator leaves them unchanged. It is
// safe for concurrent use.
type Translator struct {
	texts     map[string]string
	other     map[string]bool // the texts in the language, which are not translated again
	sentences sentences
	figures   message.Figures

	mutex sync.Mutex
	said  map[string]string // cache of translations
}

// newTranslator makes a translator of texts: for each English text the one in its
// place. Figures are written with the signs given.
func newTranslator(texts map[string]string, figures message.Figures) *Translator {
	t := &Translator{texts: texts, other: make(map[string]bool, len(texts)), sentences: newSentences(texts), figures: figures, said: map[string]string{}}
	for _, text := range texts {
		t.other[text] = true
	}
	return t
}

// mostSaid is the size of the cache: sentences with figures in them are many.
const mostSaid = 4000

// Say translates an English text. Text unknown to the program, such as a name, is unchanged.
func (t *Translator) Say(english string) string {
	if t == nil {
		return english
	}
	if lettersIn(english) == 0 {
		text, _ := t.exact(english)
		return text
	}
	t.mutex.Lock()
	defer t.mutex.Unlock()
	if text, before := t.said[english]; before {
		return text
	}
	text := t.sentences.translate(english, t.exact)
	if len(t.said) > mostSaid {
		clear(t.said)
	}
	t.said[english] = text
	return text
}

// exact finds a text without parsing it.
func (t *Translator) exact(english string) (text string, known bool) {
	if text, known = t.texts[english]; known {
		return text, true
	}
	if figure, is := t.figures.Rewrite(english); is && figure != english {
		return figure, true
	}
	return english, t.other[english]
}
