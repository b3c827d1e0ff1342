// Package slipcode has the code on a slip: what a ticket was settled by and what it came to, in a
// square that anybody can read, so that a grower can settle the ticket again without the house.
//
// A [Code] holds the facts of one ticket: weights, results, price, parts, and the hashes of the
// edition and the law it was settled by. It holds no names and no addresses. What follows from the
// facts is left out and worked again ([Code.Settle]); of the results there are as many as fit, the
// payable first, so that [Code.Compare] can tell line by line whether the slip says what its facts
// give.
//
// # Format 2
//
// The text of a code is "TP2:" and the bytes in Base45 (RFC 9285), all within the QR code's
// alphanumeric mode. Format 1 is the text that older slips carry, "TENTHPOINT/1 ..." (package
// barcode); it has a few figures and settles nothing.
//
// The bytes are a body, two bytes of check, and in a signed code four bytes of the key's id and 64
// of the signature. The check is the beginning of the SHA-256 of "TP2:" and the body: a code that
// was torn or misread fails it, a code that was altered on purpose passes it and fails its signature.
// Signed is the text before the signature, with "TP2:" in front ([Code.Payload]).
//
// A number is a varint as in Go's encoding/binary. A figure is a number (m << 3 | d), where m is
// the figure's digits, zigzag, and d its decimals, 0 to 7. A text is its length and its bytes. A
// word is its number in a table of this package, or 0 and a text; tables only grow. The body:
//
//	marks       1 byte: 1 signed, 2 without money, 4 owners left out, 8 results of the sample left
//	            out, 16 lines left out, 32 a law is named
//	site        number
//	ticket      number
//	find        6 bytes, the short code that the house finds the ticket by
//	day         number, days after 2000-01-01
//	edition     16 bytes, the beginning of the hash of its file
//	law         8 bytes, the beginning of the hash of its list; none for the first law
//	engine      number
//	grain       word
//	units       1 byte: 1 the scale weighs in kg, 2 settled in kg, 4 cwt or 8 t instead of bushels
//	drafts      number, then of each: name (word), gross, tare (figures)
//	moisture    figure, percent, as recorded
//	sample      number of results, then of each: factor (word), unit (word), figure
//	accepted    number of limits accepted, then the id (text) of each
//	deal        see below
//	owners      number, then of each: parts, of (figures); 1 byte: 1 drying apart, 2 own deal;
//	            then parts, of (figures) of the drying; deal
//	owner       number of the owner whose slip it is, 0 the whole load's
//	lines       number, then of each: line (word, twice its number, plus 1 and then the owner's
//	            number for a line of an owner), figure
//	left        number of lines left out, where the marks say so
//
// A deal is a byte, the number of what the grain is held under times two, plus 1 where a price
// (figure) follows. An unseen yes-or-no result is the unit "absent", a seen one "present", both
// without a figure.
package slipcode
