package check

const (
	tooShort  = " too-short-to-modify guard-came-first stop-by-days-only"
	tooLong   = " too-long-to-modify"
	tooLongIn = " turn-gap-long piece-overheats"
	slowAir   = " withering-slow guard-came-first"
)

// growthKinds are slips in germinate and wither.
var growthKinds = []kind{
	{"the bed's °C taken for °F", inProcess(`(hold .* )°C`, "${1}°F"), "bed-too-cold room-too-warm-for-bed" + oddFact, caution, "hold"},
	{"the bed 40 °C warmer", shifted(`hold +bed at (\d+) to \d+ °C`, 40, `hold +bed at \d+ to (\d+) °C`), "bed-too-warm", fault, "hold"},
	{"the bed's range the wrong way round", inProcess(`(hold +bed at )(\d+) to (\d+)`, "$1$3 to $2"), backwards, fault, "hold"},
	{"germination without its guard", inStage("germinate", inProcess(`\n *allow \d[^\n]*`, "")), "missing-guard", fault, "until germinate"},
	{"growth before the steep", swapped("steep", "germinate"), "stage-order", fault, "steep germinate"},
	{"the kiln before the growth", swapped("germinate", "kiln"), "stage-order", fault, "kiln germinate wither"},
	{"a growing floor of a tenth", unless(`Mill pale`, timesOfHouse("floor", `area +([\d.]+)`, 0.1)), "piece-too-deep piece-overheats", caution, "germinate floor from turn"},
	{"turned every 40 h", inProcess(`(turn +every )\d+ h`, "${1}40 h"), tooLongIn, caution, "turn hold"},
	{"a day or two of growth", inStage("germinate", inProcess(`(allow )\d+ to \d+ days`, "${1}1 to 2 days")), tooShort, caution, "germinate until"},
	{"two weeks of growth", inStage("germinate", inProcess(`(allow )\d+ to \d+ days`, "${1}14 to 16 days")), tooLong + heldAlready, caution, "germinate until"},

	{"turned every so many minutes", inProcess(`(turn +every \d+) h`, "$1 min"), oddTime, caution, "turn"},
	{"turned every so many days", inProcess(`(turn +every \d+) h`, "$1 days"), tooLongIn, caution, "turn hold"},
	{"turned ten times as seldom", inProcess(`(turn +every \d+) h`, "${1}0 h"), tooLongIn, caution, "turn hold"},
	{"the turning forgotten", inStage("germinate", without(`turn `)), tooLongIn, caution, "germinate hold"},
	{"the bed's tens forgotten", inProcess(`(hold +bed at )1(\d) to 1(\d)`, "$1$2 to $3"), "bed-too-cold room-too-warm-for-bed", caution, "hold"},
	{"the bed's upper digits changed round", inProcess(`(hold +bed at \d+ to )1(\d)`, "$1${2}1"), "bed-too-warm piece-overheats", caution, "hold"},
	{"the bed as warm as a sorghum's", inProcess(`(hold +bed at )\d+ to \d+`, "${1}28 to 31"), "bed-too-warm piece-overheats", caution, "hold turn"},
	{"a quarter for three quarters of acrospire", inProcess(`acrospire at least [37]/[48]`, "acrospire at least 1/4"), "acrospire-goal-odd" + tooShort, caution, "until germinate"},
	{"the acrospire's fraction upside down", inProcess(`acrospire at least (\d)/(\d)`, "acrospire at least $2/$1"), "acrospire-goal-odd guard-came-first" + tooLong, caution, "until germinate"},
	{"the acrospire's bound turned", inProcess(`acrospire at least`, "acrospire at most"), heldAlready + backwards + tooShort + " acrospire-goal-odd", caution, "until germinate"},
	{"the acrospire in tenths of a per cent", inProcess(`acrospire at least \d/\d`, "acrospire at least 0.75 %"), heldAlready + tooShort + " acrospire-goal-odd", caution, "until germinate"},
	{"the growth ends at rub is gummy", inProcess(`until acrospire [^\n]*`, "until rub is gummy"), heldAlready + tooShort + " rub-goal-odd", caution, "until germinate"},
	{"the growth's days taken for hours", inStage("germinate", inProcess(`(allow .*) days`, "$1 h")), tooShort + oddTime, caution, "allow germinate until"},
	{"the growth's days taken for weeks", inStage("germinate", inProcess(`(allow .*) days`, "$1 weeks")), tooLong + heldAlready + oddTime, caution, "allow germinate until"},
	{"the growth's guard with its points lost", inStage("germinate", inProcess(`allow (\d+) to (\d+) days`, "allow ${1}0 to ${2}0 days")), tooLong + heldAlready + oddTime, caution, "allow germinate until"},
	{"the growth's guard the wrong way round", inStage("germinate", inProcess(`allow (\d+) to (\d+) days`, "allow $2 to $1 days")), "guard-upside-down" + backwards, fault, "allow"},
	{"the growth by the clock, in hours", inStage("germinate", each(inProcess(`until .*`, "for 5 h"), without(`allow `))), tooShort + oddTime, caution, "for germinate"},
	{"the growth by the clock, fifty days", inStage("germinate", each(inProcess(`until .*`, "for 50 days"), without(`allow `))), tooLong + oddTime, caution, "for germinate"},
	{"a tonne on the tray", where(`germinate on "(hall|barn)`, used("floor", "growing tray")), "piece-too-deep" + oddFact, caution, "germinate floor from"},
	{"the growth waits for the wither's moisture", inStage("germinate", inProcess(`until .*`, "until moisture at most 40 %")), tooShort + tooLong + heldAlready + " growth-by-dryness", caution, "until germinate"},
	{"the growth ends by the chit", inStage("germinate", inProcess(`until .*`, "until chit at least 95 %")), tooShort + tooLong + heldAlready + " growth-end-odd", caution, "until germinate"},
	{"the growth ends by the warmth of the bed", inStage("germinate", inProcess(`until .*`, "until bed at least 15 °C")), tooShort + tooLong + heldAlready + " growth-end-odd", caution, "until germinate"},
	{"a second hold that is never reached", ahead(`hold `, "hold  bed at 14 to 17 °C for 20 days"), neverReached + tooLong, caution, "hold"},
	{"a gate behind the last hold that is not the stage's", behind(`hold `, "gate  acrospire at least 1"), neverReached + tooLong + " acrospire-goal-odd", caution, "gate until allow"},
	{"a gate behind the last hold that no lot reaches", behind(`hold `, "gate  chit at least 100 %"), neverReached, caution, "gate"},
	{"grown to gritty", inProcess(`until acrospire .*`, "until rub is gritty"), heldAlready + tooShort + " rub-goal-odd", caution, "until germinate"},
	{"the acrospire's denominator of ten times", inProcess(`acrospire at least (\d)/(\d)`, "acrospire at least $1/${2}0"), heldAlready + tooShort + " acrospire-goal-odd", caution, "until germinate"},
	{"a gate of the kernel that the growth does not come to", inProcess(`until acrospire at least \S+.*\n( *allow) .*`, "until acrospire at least 1/3\n$1 1 to 7 days\n    gate acrospire at least 9/10"), neverReached + tooShort + " acrospire-goal-odd", caution, "until germinate allow gate"},
	{"a hold of minutes", inProcess(`(hold +bed at \d+ to \d+ °C)`, "$1 for 3 min\n    hold bed at 14 to 16 °C"), oddTime, caution, "hold"},
	{"the last hold with an end that is not kept", inProcess(`(hold +bed at \d+ to \d+ °C)`, "$1 for 3 days"), neverReached + " last-hold-end", caution, "hold"},
	{"the bed led down far below its room", inProcess(`hold +bed at \d+ to \d+ °C`, "hold  bed from 17 to 3 °C over 3 days"), "bed-too-cold room-too-warm-for-bed piece-overheats guard-came-first air-cannot-hold-bed", caution, "hold until"},
	{"the bed led nowhere", inProcess(`hold +bed at (\d+) to (\d+) °C`, "hold  bed from $1 to $2 °C"), "step-needs-end", fault, "hold"},
	{"the bed led up in the step of the kiln", inProcess(`hold +bed at \d+ to \d+ °C`, "hold  bed from 45 to 60 °C over 3 days"), "bed-too-warm", fault, "hold"},
	{"sprinkled with a flood", unless(`Mill pale`, behind(`turn `, "sprinkle # l every 6 h", 3)), tooMuchWater, caution, "sprinkle germinate"},
	{"the growing piece's humidity with a point too many", unless(`Mill pale`, behind(`hold `, "humidity 9.5 %")), "bed-dries-out" + oddFact, caution, "humidity germinate"},
	{"the growing piece uncovered", unless(`Mill pale`, behind(`hold `, "humidity 45 to 55 %")), "bed-dries-out", caution, "humidity germinate"},

	{"withered wet at 45 °C", inStage("wither", inProcess(`air +at \d+ to \d+ °C`, "air at 45 °C")), "hot-while-wet bed-too-warm wither-too-warm", caution, "air wither"},
	{"the wither's °C taken for °F", inStage("wither", inProcess(`(air +at .*)°C`, "$1°F")), slowAir + coldRoom + oddFact, caution, "air wither until"},
	{"withered before it begins", inStage("wither", inProcess(`at most \d+ %`, "at most 47 %")), heldAlready, caution, "until wither allow"},
	{"withered to the figure on the dry basis", inStage("wither", inProcess(`at most \d+ %`, "at most 85 % dry basis")), heldAlready + " bases-mixed", caution, "until wither allow"},
	{"the wither's bound turned", inStage("wither", inProcess(`at most`, "at least")), heldAlready + backwards, caution, "until wither allow"},
	{"the wither's moisture with a point too many", inStage("wither", inProcess(`at most (\d)(\d) %`, "at most $1.$2 %")), slowAir + " gate-order", caution, "until wither allow"},
	{"the wither's hours taken for minutes", inStage("wither", inProcess(`(allow .*) h`, "$1 min")), slowAir + oddTime, caution, "allow wither until"},
	{"the wither's hours taken for days", inStage("wither", inProcess(`(allow .*) h`, "$1 days")), heldAlready + oddTime, caution, "allow wither until"},
	{"withered on a tenth of its floor", where(`wither on "larch`, timesOfHouse("wither floor", `area +([\d.]+)`, 0.1)), slowAir + " piece-too-deep", caution, "wither floor until allow"},
	{"the wither before the growth", swapped("germinate", "wither"), "stage-order", fault, "germinate wither"},
	{"the wither without its guard", inStage("wither", without(`allow `)), "missing-guard", fault, "wither until"},
}
