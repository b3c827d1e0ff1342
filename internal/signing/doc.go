// Package signing has the keys of a house: who vouched for a ticket or for the end of a book.
//
// Each computer has an Ed25519 key. The key of the house, kept on paper or on a stick, certifies the
// keys of its computers; whoever knows the house's key by its fingerprint can check everything
// signed by any of them, without the book and without a network.
//
// What a signature proves depends on who holds the key. Against a stranger it proves that a paper or
// a copy came from the house. Against somebody who works at the computer it proves nothing: the
// computer signs for whoever sits at it. Against him there is the head of the book ([journal.Head])
// noted where he cannot reach it.
//
// # Formats
//
// A public key is its 32 bytes, written as base64 without padding (RFC 4648, the URL's alphabet) in
// 43 letters; a signature is 64 bytes in 86 letters. The fingerprint of a key is the first 16 bytes
// of the SHA-256 of its 32 bytes, as 8 groups of 4 hexadecimal digits; its id is the first 4 bytes.
//
// Signed are not bare bytes but bytes for a purpose, so that nothing signed as one thing passes for
// another: the form's name "tenthpoint signature, form 1", the purpose, and the parts, each as eight
// bytes of length (big-endian) and then its bytes. The parts are
//
//	ticket        the bytes of the ticket's payload
//	head          the number of the fact, eight bytes big-endian; its hash, 32 bytes
//	computer key  the computer's key, 32 bytes; the computer's name
//	house key     the next key of the house, 32 bytes (signed by the one before)
//
// A private key is a file in PEM, as PKCS #8 (RFC 8410), which other programs read as well. On paper
// it is 14 groups of 4 letters: 32 bytes of key and 3 of SHA-256 over "tenthpoint key on paper" and
// them, in base32 without I, L, O and U.
//
// The package is pure: whoever calls it brings randomness and files.
package signing
