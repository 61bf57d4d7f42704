# Die Wartezeiten. Jedes Bild sagt, was es zeigt; „noch unklar“, wo das die Wahrheit ist.

waits-title = Wartezeiten
waits-none = Beginne einen Ansitz und wirf. Wartezeiten erscheinen, wenn ein Wurf endet.
waits-none-yet = Mach einen Wurf: tippe ZURÜCK, dann WURF. Wartezeiten erscheinen, wenn er endet.
waits-by-spot = Die Antworten gelten über alle Stellen. An der Stelle von Rute { $rod }: { $minutes } min liegen lassen.
habit-before-bites = Jeder Biss in diesem Ansitz kam nach { $after } min.
habit-of-the-day = Jeder Biss kam nach { $after } min.
habit-all = In allen { $all } Fällen hast du bis Minute { $by } eingeholt.
habit-some = In { $early } von { $all } Fällen hast du bis Minute { $by } eingeholt.
waits-counts = { $bites ->
    [0] Kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}{ $sessions ->
    [0] {" "}dieses Ansitzes
    [one] {" "}aus 1 Ansitz
   *[other] {" "}aus { $sessions } Ansitzen
}, { $time } im Wasser.
waits-row-rod = Rute
waits-row-spot = Stelle
waits-row-bait = Köder
waits-row-sessions = Ansitze
waits-row-whose = Frühere Tage von
waits-all-rods = alle Ruten
waits-all-spots = alle Stellen
waits-all-baits = alle Köder
waits-today-only = nur dieser Ansitz
waits-with-earlier = { $count ->
    [one] mit dem davor
   *[other] mit den { $count } davor
}

axis-wait = Minuten seit dem Einschlag
axis-wait-up = Wartezeit, min
axis-without = Würfe ohne Biss, %
axis-hazard = von 100 Würfen: Bisse in der nächsten Minute
axis-rate = Bisse je Rutenstunde
axis-clock = Uhrzeit des Wurfs
legend-band = 95-%-Band dazu
legend-expected = erwartet
legend-seen = gesehen
legend-limits = 95-%-Grenzen dazu
legend-today = dieser Ansitz
legend-earlier = frühere Ansitze
legend-not-tried = nicht probiert
span-window = Beißfenster
span-near-best = fast am besten
span-leave = liegen lassen
range = { $low } bis { $high }
range-open = { $low } oder mehr
p-tiny = p unter 0,001
p-is = p { $p }

waits-cant-tell = Noch unklar: bisher { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
}.
waits-survival = Noch ohne Biss
waits-half = Lass Würfe { $median } min liegen: bis dahin hat etwa die Hälfte einen Biss (geschätzt).
waits-half-limits = Die Zeit, nach der die Hälfte einen Biss hat, könnte { $limits } min sein (95-%-Grenzen).
waits-half-limits-open = Die Zeit, nach der die Hälfte einen Biss hat, könnte { $low } min oder mehr sein (95-%-Grenze).
waits-not-half = Bis { $longest } min, der längsten Wartezeit, hat weniger als die Hälfte der Würfe einen Biss (geschätzt).
waits-survival-how = Stufen: gesehen; Punkte: wie weit das täuschen kann. Gestrichelt: für den nächsten Wurf erwartet.
waits-survival-figures = Stufen nach Kaplan und Meier, Punkte ihre Log-log-Grenzen (95 %), weit genug dafür, dass Würfe einer Stunde einander gleichen.
waits-hazard = Wann Bisse kommen
waits-thickest = Beste Minute: etwa { $minute } min nach dem Einschlag. Von 100 Würfen, die dann noch draußen sind, bekommen etwa { $percent } in dieser Minute einen Biss. Bei { $bites } Bissen könnte es alles von { $limits } sein.
waits-rising = Bei { $minute } min, der längsten Wartezeit, kommen Bisse immer noch schneller. Von 100 Würfen, die dann noch draußen sind, bekommen etwa { $percent } in dieser Minute einen Biss. Bei { $bites } Bissen könnte es alles von { $limits } sein.
waits-flat = Keine Minute sticht heraus: ein Biss ist früh etwa so wahrscheinlich wie spät.
waits-window = Beißfenster: die Hälfte der künftigen Bisse wird zwischen { $from } und { $to } min erwartet. Von den { $bites } gesehenen lagen { $inside } darin.
waits-hazard-how = Balken: Bisse je 100 Minuten im Wasser, wie gesehen. Gestrichelt: erwartet.
waits-hazard-figures = Erwartet: das Mittel über alle Formen der Wartezeit, die das Protokoll wahrscheinlich lässt, mit seinem 95-%-Band.
waits-bar = { $bites ->
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $minutes } min
waits-figures = Zahlen
waits-leave = Wie lange liegen lassen
waits-best-rate = Bestenfalls etwa { $rate } Bisse je Stunde und Rute (95 %: { $limits }).
waits-bites-between = { $sessions ->
    [0] { $bites ->
        [one] Der einzige Biss in diesem Ansitz kam nach { $low } min.
       *[other] Alle { $bites } Bisse in diesem Ansitz kamen zwischen { $low } und { $high } min.
    }
    [one] { $bites ->
        [one] Der einzige Biss in 1 Ansitz kam nach { $low } min.
       *[other] Alle { $bites } Bisse in 1 Ansitz kamen zwischen { $low } und { $high } min.
    }
   *[other] { $bites ->
        [one] Der einzige Biss in { $sessions } Ansitzen kam nach { $low } min.
       *[other] Alle { $bites } Bisse in { $sessions } Ansitzen kamen zwischen { $low } und { $high } min.
    }
}
waits-near-best = Nach den bisherigen Würfen sind { $hold } bis { $recast } min fast am besten: länger, um zu lernen, was später kommt.
waits-not-tried = Über { $minutes } min: nicht probiert.
waits-leave-how = Punkt: die beste Zeit. Strich: ohne Biss holst du bis dahin jeden zweiten Wurf ein (geschätzt).
waits-leave-figures = Bisse je Stunde nach Erneuerung und Ertrag (renewal reward). Fast am besten: höchstens 5 % unter dem Besten, gekürzt, wo ein leerer Wurf besser eingeholt wird.
waits-fed = Würfe, in den { $minutes } min vor ihrem Einschlag gefüttert: Bisse etwa { $times }-mal so schnell (95 %: { $limits }). Gezählte Würfe: { $fed } gefüttert, { $other } nicht.
waits-earlier = Dieser Ansitz gegen frühere
waits-earlier-counts = Dieser Ansitz: { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}. Früher: { $before } in { $beforecasts }, über { $sessions ->
    [one] 1 Ansitz
   *[other] { $sessions } Ansitze
}.
waits-weights = Frühere Tage zählen weniger: ein Ansitz am selben Gewässer gilt mit Chance { $like } als Tag dieser Art, einer an einem anderen mit { $other }. Die Stufen zählen jeden Wurf voll.
waits-earlier-same = Dieser Ansitz ist von früheren nicht zu unterscheiden.
waits-earlier-quicker = Bisse kommen in diesem Ansitz schneller als früher.
waits-earlier-slower = Bisse kommen in diesem Ansitz langsamer als früher.
waits-earlier-hours = { $hours ->
    [0] In diesem Ansitz noch keine Stunde
    [one] 1 Stunde dieses Ansitzes
   *[other] { $hours } Stunden dieses Ansitzes
} gegen { $before ->
    [one] 1 Stunde
   *[other] { $before } Stunden
} früher: { $p }, gilt bei jedem Blick.
waits-earlier-log-rank = Wurf für Wurf, nur für einen Blick und falls Würfe nicht in Schüben kamen: Log-Rank { $p }.
waits-drift = Über den Tag
waits-drift-same = Die Bisse werden über den Tag nicht klar schneller oder langsamer.
waits-drift-quicker = Die Bisse kommen im Lauf des Tages schneller.
waits-drift-slower = Die Bisse kommen im Lauf des Tages langsamer.
waits-drift-hours = { $hours ->
    [0] Noch keine Stunde mit Würfen
    [one] 1 Stunde mit Würfen
   *[other] { $hours } Stunden mit Würfen
} der Reihe nach: { $p }, gilt bei jedem Blick. Fünf oder sechs zeigen nur einen starken Trend.
waits-drift-how = Raute: ein Biss. Strich: ohne Biss eingeholt.
waits-drift-figures = Eine Stunde zählt mit ihren Bissen weniger den für dieselben Wartezeiten erwarteten (Log-Rank-Werte), die Stunden durch einen Ordnungstest, der jederzeit gelesen werden darf.

forecast-title = Was noch kommt
forecast-left = Restzeit
forecast-min = { $minutes } min
forecast-bites = Bisse noch
forecast-fish = Fische noch
forecast-last = Zum Neuwerfen einholen
forecast-last-value = lohnt bis zu den letzten { $likely } min ({ $low } bis { $high })
forecast-one = { $likely }
forecast-range = { $low } bis { $high }, etwa { $likely }
forecast-says = An { $percent ->
    [0] weniger als 1
    [100] mehr als 99
   *[other] etwa { $percent }
} von 100 solchen Tagen kommt in den nächsten { $minutes } min ein Biss.
forecast-cant-tell = Noch zu wenige Bisse: diese Spannen beruhen vor allem auf dem, was üblich ist. An { $percent ->
    [0] weniger als 1
    [100] mehr als 99
   *[other] etwa { $percent }
} von 100 Tagen kommt in den nächsten { $minutes } min ein Biss.
forecast-how = An mindestens 8 von 10 solchen Tagen liegt die Summe in jeder Spanne; „etwa“ ist ihre Mitte. Angenommen: { $out ->
    [0] der nächste Wurf
   *[other] dieser Wurf
} liegt { $leave } min, spätere { $then } min, { $turn } min vom Einholen bis zum Einschlag. In jenen letzten Minuten hat ein neu geworfener Köder weniger als die halbe Chance eines vollen Wurfs; eine Rute, die drin ist, darf noch geworfen werden.

legend-signs-title = Legende
legend-signs-says = Ein Zeichen bedeutet auf jedem Bild dasselbe.
sign-diamond = Raute
sign-diamond-means = Ein Biss. Auf Streifen und Kurven bei seiner Wartezeit, auf der Karte, wo der Wurf lag.
sign-stroke = Strich
sign-stroke-means = Ein Wurf, ohne Biss eingeholt; ein langer: bis wann du jeden zweiten einholst (geschätzt).
sign-triangle = Offenes Dreieck
sign-triangle-means = Ein Streifer.
sign-cross = Kreuz
sign-cross-means = Ein verlorener Fisch, auf der Karte.
sign-accent = Farbe, mit Punkt oder Fahne
sign-accent-means = Jetzt oder das Nächste: diese Minute, der nächste Wurf, die beste Zeit.
sign-bracket = Klammer
sign-bracket-means = Die Minuten, in denen Einholen lohnt oder die Hälfte der Bisse erwartet wird.
sign-tint = Getönt
sign-tint-means = Wie weit eine Kurve daneben liegen kann.
sign-dots = Punkte
sign-dots-means = Unbekannt: so lange lag kein Wurf, oder die Grenzen einer Kurve.
sign-hatching = Schraffur
sign-hatching-means = Ruhendes Wasser, auf der Karte: die Linien werden lichter. Voll: eben befischt.
