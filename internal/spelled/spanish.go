package spelled

var spanishUnits = []string{
	"cero", "un", "dos", "tres", "cuatro", "cinco", "seis", "siete", "ocho", "nueve", "diez", "once", "doce", "trece",
	"catorce", "quince", "dieciséis", "diecisiete", "dieciocho", "diecinueve", "veinte", "veintiún", "veintidós",
	"veintitrés", "veinticuatro", "veinticinco", "veintiséis", "veintisiete", "veintiocho", "veintinueve",
}

var spanishTens = []string{"", "", "", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"}

var spanishHundreds = []string{
	"", "ciento", "doscientos", "trescientos", "cuatrocientos", "quinientos", "seiscientos", "setecientos", "ochocientos", "novecientos",
}

// spanish is a number as it stands before a masculine noun: "un", "veintiún".
func spanish(n int) string {
	switch {
	case n < 30:
		return spanishUnits[n]
	case n < 100:
		return joined(spanishTens[n/10], " y ", n%10, spanish)
	case n == 100:
		return "cien"
	case n < 1000:
		return joined(spanishHundreds[n/100], " ", n%100, spanish)
	case n < 2000:
		return joined("mil", " ", n%1000, spanish)
	case n < 1_000_000:
		return joined(spanish(n/1000)+" mil", " ", n%1000, spanish)
	case n < 2_000_000:
		return joined("un millón", " ", n%1_000_000, spanish)
	}
	return joined(spanish(n/1_000_000)+" millones", " ", n%1_000_000, spanish)
}

func dollarSpanish(n int) string {
	if n == 1 {
		return " dólar"
	}
	return " dólares"
}
