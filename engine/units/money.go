package units

import "strings"

// currencies are the codes of ISO 4217 in use, values from memory.
const currencies = " AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD " +
	"CAD CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD " +
	"HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD " +
	"MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR " +
	"RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS " +
	"UAH UGX USD UYU UZS VED VES VND VUV WST XAF XCD XOF XPF YER ZAR ZMW ZWG "

// isCurrency says whether a name is a currency's code, in capitals: lower-case
// pen and top are counts.
func isCurrency(name string) bool {
	return len(name) == 3 && name == strings.ToUpper(name) && strings.Contains(currencies, " "+name+" ")
}

// codeOf is a currency's code in capitals, or "" for what is no code.
func codeOf(currency string) string {
	if len(currency) != 3 {
		return ""
	}
	for i := range len(currency) {
		if c := currency[i] | 0x20; c < 'a' || c > 'z' {
			return ""
		}
	}
	return strings.ToUpper(currency)
}

// signOf is what stands before a sum in a currency: its sign where that is
// common knowledge, its code where it is not, and $ when there is no code or
// the code reads as something else, as CUP does.
func signOf(code string) string {
	switch code {
	case "USD", "CAD", "AUD", "NZD":
		return "$"
	case "EUR":
		return "€"
	case "GBP":
		return "£"
	case "JPY", "CNY":
		return "¥"
	}
	if _, other := anyCase[strings.ToLower(code)]; other || !isCurrency(code) {
		return "$"
	}
	return code
}
