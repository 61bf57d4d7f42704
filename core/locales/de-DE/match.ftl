# Das Wertungsfischen. Zahlen kommen als Spannen; was nicht zu sagen ist, wird so gesagt.

match-title = Wertung
match-no-session = Beginne erst einen Ansitz, dann stell die Wertung ein.
match-none = Keine Wertung eingestellt. Prüfe diese Zeiten, dann WERTUNG SETZEN.
match-none-over = Es gab keine Wertung. Beginne einen Ansitz, um eine einzustellen.
match-no-clock = Die Zeiten dieser Wertung sind nicht lesbar: stell Start und Schluss neu ein.
match-no-count = Die Netze lassen sich nicht zählen. { $why } Nichts ging verloren: korrigiere die Regeln des Tages.
match-to-all-in = bis Start um { $time }.
match-to-all-out = bis Schluss um { $time }.
match-to-land = um einen gehakten Fisch zu landen. Schluss war um { $time }.
match-uncertain = Die Restzeit kann um { $by } falsch sein: die Uhr dieses Handys wurde verstellt. Frag den Veranstalter nach der Zeit.
match-unknown-time = Die Restzeit kann viel zu lang sein: die Uhr dieses Handys wurde zurückgesetzt. Frag den Veranstalter nach der Zeit.
match-over = Schluss war um { $time }.
match-spoken = { $left } { $says }
match-clock-ahead = Die Uhr der Wertung geht { $by } vor gegenüber dem Handy.
match-clock-behind = Die Uhr der Wertung geht { $by } nach gegenüber dem Handy.
match-bank-before = { $time } bis Start
match-bank-fishing = { $time } bis Schluss
match-bank-landing = { $time } zum Landen
match-bank-over = Wertung vorbei
match-alarm = { $minutes } min bis Schluss.
match-alarm-text = Schluss um { $time }.
match-cant-tell = noch unklar

match-casts = { $out ->
    [0] Würfe übrig
    [one] Würfe nach diesem
   *[other] Würfe nach diesen
}
match-casts-least = mindestens { $casts }
match-range = { $low } bis { $high }
match-late = Zum Neuwerfen einholen
match-late-from = lohnt bis { $time }
match-late-now = lohnt nicht mehr
match-late-in = bis Schluss kostet ein Wurf nichts
match-late-how = Nach { $time } ({ $from } bis { $to }) hat ein neu geworfener Köder weniger als die halbe Chance eines vollen Wurfs: hol dafür nicht ein. Eine Rute, die drin ist, darf noch geworfen werden: das kostet bis Schluss nichts.

match-coming-says = Wahrscheinliches Ergebnis: { $low } bis { $high }.
match-coming-one = Wahrscheinliches Ergebnis: { $low }.
match-coming-cant-tell = Noch unklar: zu wenige Bisse, um zu sagen, was kommt.

match-result-weigh = Gewogen wird unter Waage.
match-bites = Bisse noch
match-fish-to-come = Fische noch
match-weight-to-come = Gewicht noch
match-finish = Erwartetes Ergebnis
match-own-count = Eigene Zählung
match-count-both = Gewogen, der Rest selbst gezählt
match-count-scales = Gewogen
match-likely = { $low } bis { $high }, etwa { $likely }
match-light = Licht bei Schluss
match-light-day = noch Tageslicht
match-light-twilight = Dämmerung
match-light-dark = dunkel
match-light-unknown = unklar: der Platz hat noch keine Lage
match-sunset-by-phone = { $time } nach dem Handy
match-sunset-after = Sonnenuntergang { $time }, { $by } nach Schluss: { $light }
match-sunset-before = Sonnenuntergang { $time }, { $by } vor Schluss: { $light }
match-how = An mindestens 8 von 10 solchen Tagen liegt die Summe in jeder Spanne; „etwa“ ist ihre Mitte. { $out ->
    [0] Der nächste Wurf
   *[other] Dieser Wurf
} liegt { $leave } min, spätere { $then } min, { $turn } min dazwischen.
match-cant-tell-why = Vor drei Bissen sagt das Protokoll nicht, was kommt; Würfe werden ohne Biss und mit geschätzten Liegezeiten gezählt, { $leave } min und dann { $then } min.
match-weights-guessed = Noch kein Fisch gelandet: die Gewichte sind die Schätzungen der Arten.
match-estimates = Gewichte der Arten nähern sich den gewogenen Fischen. Ein geschätztes Gewicht kann um ein Viertel daneben liegen.

match-fish = { $count ->
    [one] 1 Fisch
   *[other] { $count } Fische
}
match-net = Netz { $number }
match-net-holds = { $fish }, { $weight }
match-net-weighed = { $fish }, { $weight } gewogen
match-net-empty = leer
match-net-limit = von { $limit }
match-net-range = { $low } bis { $high }
match-about = etwa { $weight }
match-near = nahe der Grenze
match-at-limit = evtl. an der Grenze
match-says-near-limit = { $net } ist nahe der Grenze.
match-says-at-limit = { $net } ist vielleicht an der Grenze.
match-says-over-limit = { $net } ist über der Grenze.
match-over-limit-counts = über der Grenze: zählt { $limit }
match-over-limit-nothing = über der Grenze: zählt nicht
match-unknown = { $count ->
    [one] 1 Fisch hat weder Gewicht noch Art: er zählt als Durchschnitt.
   *[other] { $count } Fische haben weder Gewicht noch Art: sie zählen als Durchschnitt.
}
match-not-counted = { $count ->
    [one] 1 Fisch ist von einer Art, die nicht zählt.
   *[other] { $count } Fische sind von Arten, die nicht zählen.
}
match-put-back = { $count ->
    [one] 1 Fisch wurde freigelassen.
   *[other] { $count } Fische wurden freigelassen.
}
match-no-net = { $count ->
    [one] 1 Fisch ist von einer Art, die in kein Netz darf: wähle ein anderes Netz oder eine andere Art.
   *[other] { $count } Fische sind von Arten, die in kein Netz dürfen: wähle ein anderes Netz oder eine andere Art.
}

# Die Fische.
match-to-fish = Fisch
match-to-fish-sub = Gewicht, Art, Netz
match-to-fish-spoken = Die Fische: Gewicht, Art und Netz.
match-to-coming = Ausblick
match-to-coming-sub = Bisse, Ergebnis
match-to-coming-spoken = Was noch kommt: Bisse, Fische, Gewicht, Ergebnis, Licht.
match-to-result = Ergebnis
match-to-result-sub = Gewicht, Platz
match-to-result-spoken = Das Ergebnis: Gewicht, Platz, Licht.
match-to-rules = Regeln
match-to-rules-sub = Zeiten, Netze
match-to-rules-spoken = Die Regeln des Tages.
match-to-weigh-in = Waage
match-to-weigh-in-sub = Wiegen
match-to-weigh-in-spoken = Das Wiegen.

# Das Wiegen.
match-weigh-in-title = Wiegen: { $net }
match-weigh-in-take = GEWOGEN
match-weigh-in-take-sub = { $net }
match-weigh-in-take-spoken = { $net } wog { $weight }.
match-weigh-in-done-sub = { $net }, gewogen
match-weigh-in-done-spoken = { $net } ist gewogen: { $weight }. Ein anderes Gewicht eintippen, um es zu ändern.
match-weigh-in-known-sub = { $net }, eingegeben
match-weigh-in-known-spoken = { $net } ist eingegeben: { $weight }. Ein anderes Gewicht eintippen, um es zu ändern.
match-weigh-in-next-sub = nächstes Netz
match-weigh-in-next-spoken = { $net } ist auf der Waage.
match-weigh-in-guess = CIRCA
match-weigh-in-guess-sub = { $net }, geschätzt
match-weigh-in-guess-spoken = { $net } hat etwa { $weight }, geschätzt.
match-peg-left = { $place ->
    [1] Nachbar links
   *[other] { $place }. Platz links
}
match-peg-right = { $place ->
    [1] Nachbar rechts
   *[other] { $place }. Platz rechts
}
match-peg-across = Gegenüber { $place }
match-other-none = noch unbekannt
match-other-called = { $weight }, ausgerufen
match-other-guessed = etwa { $weight }, geschätzt
match-place = Rang im Sektor
match-place-known = Rang unter den bekannten Netzen
match-place-is = { $best } von { $of }
match-place-between = { $best } bis { $worst } von { $of }
match-place-how = Rang: deine Netze zählen { $mine }. Von { $all ->
    [one] 1 anderen
   *[other] { $all } anderen
} bekannt: { $known }, davon geschätzt: { $guessed }. Eine Schätzung kann um ein Viertel daneben liegen; ein unbekanntes Netz kann vorn sein.
match-own = selbst gezählt { $weight }
match-weighed-in = { $weight }, { $differs }, { $agreement }
match-more-by = { $by } mehr als gezählt
match-less-by = { $by } weniger als gezählt
match-as-counted = wie gezählt
match-agrees = innerhalb der Spanne
match-differs = außerhalb der Spanne
match-weigh-in-total = Zusammen
match-scales-more = Mehr, als du notiert hast: ein Fisch vergessen oder Gewichte zu niedrig?
match-scales-less = Weniger, als du notiert hast: ein Fisch doppelt oder freigelassen, oder Gewichte zu hoch?

# Die Regeln des Tages.
match-begin = WERTUNG SETZEN
match-begin-sub = mit diesen Regeln
match-begin-spoken = Hier eine Wertung setzen, dann ihre Regeln ändern.
match-row-all-in = Start
match-row-all-out = Schluss
match-row-clock = Uhren
match-row-nets = Netze (Setzkescher)
match-row-limit = Grenze für { $net }
match-row-over = Über der Grenze
match-row-landing = Landen nach Schluss
match-row-alarms = Alarm davor
match-row-classes = Arten
match-row-counting = Was zählt
match-row-guess = Ein Fisch: { $class }
match-row-unit = Waage in
match-row-mark = Feinster Strich
match-row-section-left = Sektor: Plätze links
match-row-section-right = Sektor: Plätze rechts
match-section-unknown = keine Angabe
match-section-half = Zählt, sobald auch die andere Seite gesagt ist.
match-row-said = Tot oder freigelassen
match-said-nothing = frag den Veranstalter
match-row-off = Keine Wertung
match-off-yes = Wertung entfernen
match-clock-same = wie das Handy
match-clock-ahead-short = Wertung { $seconds } s vor
match-clock-behind-short = Wertung { $seconds } s nach
match-clock-heard-in = Start ertönt jetzt
match-clock-heard-out = Schluss ertönt jetzt
match-clock-same-now = Wie das Handy
match-clock-less = { $seconds } s zurück
match-clock-more = { $seconds } s vor
match-minutes = { $minutes } min
match-no-minutes = nicht erlaubt
match-no-limit = keine Grenze
match-over-to-limit = zählt bis zur Grenze
match-over-nothing = Netz zählt nicht
match-no-alarm = keiner
match-all-count = jeder Fisch
match-all-but = alle außer { $classes }
match-guess-source = Eine Schätzung, bis welche gewogen sind.
match-unit-drams = lb, oz, dr
match-unit-grams = kg, g
kind-silver = Weißfisch
kind-roach = Rotauge
kind-perch = Barsch
kind-skimmer = Kl. Brasse
kind-bream = Brasse
kind-tench = Schleie
kind-stockie = Satzkarpfen
kind-carp = Karpfen
kind-pike = Hecht

entry-match_set = Wertung
entry-match_off = keine Wertung
entry-net_weighed = Wiegen
entry-other_net_told = anderes Netz
entry-section_set = Sektor
entry-match_rule_said = Regel

error-no-match = Keine Wertung eingestellt. Stell erst Start und Schluss ein, unter WERTUNG.
error-no-landing = Ein solcher Fisch ist nicht gelandet. Tippe erst LANDUNG, dann gib das Gewicht ein.
