# Die Karte des Platzes.

swim-title = Karte, { $place }
swim-title-plain = Karte
swim-peg = Platz { $peg }
swim-squares = { $fished ->
    [one] 1 von { $all } Feldern
   *[other] { $fished } von { $all } Feldern
} in { $minutes } min befischt
swim-next = Nächster Wurf: { $where }, { $reach }
swim-stay = Bleib: { $spot }
swim-go-in = Ins geschonte Wasser: { $where }, { $reach }
swim-go-in-dry = kein Biss { $casts ->
    [one] im letzten Wurf
   *[other] in den letzten { $casts } Würfen
}
swim-go-in-rest = sonst ist nichts ausgeruht
swim-go-in-plan = wie geplant
swim-as-before = wie zuvor
swim-moving = deine letzte Stelle braucht noch { $minutes } min
swim-aimed = { $where }, { $reach }
swim-rests-on-guesses = Streuung und Störung sind geschätzt. Ob Ruhe hilft, ist offen. Eine nicht versuchte Stelle zählt mehr als ihre Bisse pro Stunde, denn ein Biss dort zeigte einen Platz, an den man zurückkehren kann.
swim-leaving = An deiner letzten Stelle gab es Bisse, aber nach Würfen bleiben Fische vielleicht weg; nicht versuchtes Wasser kann ebenso gut sein.
swim-between = zwischen { $markleft } und { $markright }
swim-between-nearer = zwischen { $markleft } und { $markright }, näher an { $near }
swim-no-reason = Kein Grund dafür oder dagegen.
swim-then = Dann: { $where }
swim-bites = { $bites ->
    [0] Noch kein Biss auf diesem Platz.
    [one] Bisher 1 Biss: zu wenig, um sicher zu sein.
   *[other] Bisher { $bites } Bisse: zu wenig, um sicher zu sein.
}
swim-bites-no-spot = { $bites ->
    [one] 1 Biss ist nicht auf der Karte: Sein Wurf hatte keine Stelle. Gib sie unter Gerät ein.
   *[other] { $bites } Bisse sind nicht auf der Karte: Ihre Würfe hatten keine Stelle. Gib sie unter Gerät ein.
}

reason-never = in diesem Ansitz nicht befischt
reason-quiet = wohl ungestört seit { $minutes } min
reason-rested = { $minutes } min, seit hier ein Blei landete
reason-near-bites = { $bites ->
    [one] ein Biss { $distance } daneben, { ago }
   *[other] { $bites } Bisse nah in letzter Zeit, der letzte { $distance } daneben, { ago }
}
reason-near-stay = { $bites ->
    [one] ein Biss hier oder nah, { ago }
   *[other] { $bites } Bisse hier oder nah in letzter Zeit, der letzte { ago }
}
reason-behind = hinter dem letzten Biss, { ago }
reason-liners-here = { $liners ->
    [one] ein Streifer hier
   *[other] { $liners } Streifer hier
}
reason-liners-beside = { $liners ->
    [one] ein Streifer daneben
   *[other] { $liners } Streifer daneben
}
reason-shown-where = { $metres ->
    [0] hier
   *[other] { $distance } daneben
}
reason-shown = { $times ->
    [one] Fisch zeigte sich { reason-shown-where }, { ago }
   *[other] Fisch zeigte sich { $times }-mal nah, zuletzt { reason-shown-where }, { ago }
}
reason-fish-here = laut Protokoll haben { $here } von 100 solchen Stellen Fisch: hier { $rate } Bisse pro Stunde zu erwarten, an einer nicht versuchten { $other }
reason-not-tried = nicht versucht; { $here } von 100 solchen Stellen haben Fisch: { $rate } Bisse pro Stunde zu erwarten
against-fish-away = gestört; { $here } von 100 solchen Stellen haben Fisch: jetzt { $rate } Bisse pro Stunde zu erwarten
against-nothing-yet = { $casts ->
    [one] hier nichts in { $minutes } min
   *[other] hier nichts in { $minutes } min bei { $casts } Würfen
}
against-nothing-here = { $casts ->
    [one] hier nichts in { $minutes } min: { $here } von 100 solchen Stellen haben noch Fisch, { $rate } Bisse pro Stunde zu erwarten
   *[other] hier nichts in { $minutes } min bei { $casts } Würfen: { $here } von 100 solchen Stellen haben noch Fisch, { $rate } Bisse pro Stunde zu erwarten
}
reason-fed = gefüttert { ago }
reason-usual-start = eine übliche erste Weite (ohne Quelle)
against-bait-out = dort liegt ein Köder
swim-but = aber { $against }
against-rested = erst { $minutes } von { $target } min, seit hier ein Blei landete
against-maybe = { $casts ->
    [one] ein Wurf kann hier kürzlich gelandet sein
   *[other] etwa { $casts } Würfe können hier kürzlich gelandet sein
}
against-boundary = { $distance } bis zur Grenze
against-kept = geschont seit { $minutes } min
against-beyond = weiter, als heute zu werfen ist
against-hazard = { $name }, { $distance } entfernt
against-hazard-unnamed = eine Gefahr

cell-figures = { $casts ->
    [0] Kein Wurf hierher.
    [one] 1 Wurf hierher
   *[other] { $casts } Würfe hierher
}{ $casts ->
    [0] { "" }
   *[other] , { $bites ->
        [0] kein Biss
        [one] 1 Biss
       *[other] { $bites } Bisse
    }{ $lost ->
        [0] { "" }
       *[other] , { $lost } verloren
    }{ $liners ->
        [0] { "" }
        [one] , 1 Streifer
       *[other] , { $liners } Streifer
    }, { $minutes } min befischt.
}
cell-fed = Gefüttert { ago }, in diesem Ansitz { $weight }.
cell-shown = { $times ->
    [one] Fisch zeigte sich { ago }.
   *[other] Fisch zeigte sich { $times }-mal, zuletzt { ago }.
}
drift-out = Die Bisse sind über den Tag nach außen gewandert.
drift-in = Die Bisse sind über den Tag nach innen gewandert.
drift-right = Die Bisse sind über den Tag nach rechts gewandert.
drift-left = Die Bisse sind über den Tag nach links gewandert.
drift-figures = Über den Tag, { $way ->
    [out] nach außen oder innen
   *[across] nach rechts oder links
}: tau { $tau }, p { $p } zu jedem Zeitpunkt, { $n ->
    [one] 1 Biss
   *[other] { $n } Bisse
}.
drift-with-casts = Du bist gewandert, das sagt also wenig über die Fische.
drift-cant-tell = Ob die Fische wandern: noch unklar.
replay-at = Wie es um { $time } war

swim-scene-kept = TABU
swim-scene-kept-back = geschont
swim-scene-next = NÄCHSTER
swim-scene-stay = BLEIB
swim-scene-min = min
swim-scene-h = h
swim-scene-m = m
swim-scene-yd = yd
swim-scene-bites = Bisse
swim-scene-lost = verloren
swim-scene-liners = Streifer

swim-scene-fed = gefüttert
swim-scene-shown = Fisch gezeigt

swim-legend = Legende
legend-just-fished = Eben befischt. Die Zahl: Minuten, seit das Blei landete.
legend-resting = Ruht. Die Linien werden lichter.
legend-free = Ausgeruht oder in diesem Ansitz nicht befischt.
legend-kept = Geschont. Erst nach FREIGEBEN wieder dabei.
legend-next = Hierhin geht der nächste Wurf.
legend-aimed = Angepeilt. Ein Tippen oder Schritt versetzt es.
legend-line-out = Eine Schnur, die jetzt draußen ist.
legend-bites = Bisse, mit ihrer Zahl.
legend-liner = Ein Streifer.
legend-lost = Ein verlorener Fisch.
legend-fed = Gefüttertes Wasser.
legend-shown = Fisch zeigte sich, mit der Anzahl.
legend-feature = Eine Struktur, die du markiert hast.
legend-hazard = Eine Gefahr, mit dem zu meidenden Wasser.

key-step-left = LINKS
key-step-right = RECHTS
key-step-in = NAH
key-step-out = FERN
key-steps = ZIEL
key-steps-spoken = Zeigt die Tasten, die das Ziel versetzen.
key-keep = SCHONEN
key-keep-spoken = Dieses Wasser schonen.
key-release = FREIGEBEN
key-release-spoken = Das geschonte Wasser freigeben.
key-cast-here = WURF HIERHIN
key-cast-here-spoken = Der nächste Wurf geht hierhin.
key-cast-here-kept-spoken = Der nächste Wurf geht hierhin. Das Wasser wird nicht mehr geschont.
key-earlier = FRÜHER
key-later = SPÄTER
key-now = JETZT
key-mark-here = MARKE
key-mark-here-spoken = Eine Marke in diese Richtung setzen.

key-place-peg = LAGE SETZEN
key-place-peg-spoken = Den Platz an die eingegebene Position setzen.
key-use-phone = POSITION DIESES HANDYS
key-use-phone-spoken = Liest einmal die Position dieses Handys und füllt die zwei Zeilen. Noch wird nichts notiert.
key-earlier-spoken = Die Karte zehn Minuten früher.
key-later-spoken = Die Karte zehn Minuten später.
key-now-spoken = Die Karte, wie sie jetzt ist.
key-step-left-spoken = Das Ziel rückt ein Feld nach links.
key-step-right-spoken = Das Ziel rückt ein Feld nach rechts.
key-step-in-spoken = Das Ziel rückt einen Streifen näher.
key-step-out-spoken = Das Ziel rückt einen Streifen weiter hinaus.

swim-list = Wohin jetzt, ausführlich
swim-name = Name
swim-rename = Den Namen nehmen für
swim-remove = Entfernen
swim-outline = der Umriss
swim-a-hazard = Gefahr
notice-removed = Entfernt. STORNO holt es zurück.
peg-place = Lage des Platzes
peg-place-none = nicht gesetzt
peg-place-set = gesetzt
peg-place-note = Freiwillig. Kommt nur in Dateien, wenn du es willst.
peg-place-lat = Breite
peg-place-lon = Länge
peg-place-out = Geradeaus

geojson-mark = Marke { $name }
geojson-feature = Struktur { $name }
geojson-hazard = Gefahr { $name }
geojson-outline = { $corners ->
    [one] ein Umriss mit 1 Ecke
   *[other] ein Umriss mit { $corners } Ecken
}
geojson-marks = { $n ->
    [one] 1 Marke
   *[other] { $n } Marken
}
geojson-features = { $n ->
    [one] 1 Struktur
   *[other] { $n } Strukturen
}
geojson-hazards = { $n ->
    [one] 1 Gefahr
   *[other] { $n } Gefahren
}
geojson-an-outline = ein Umriss
geojson-adds = Neu aus der Datei: { $what }.
geojson-nothing = Alles aus dieser Datei ist schon hier.

swim-left = Nächster Platz links
swim-right = Nächster Platz rechts
swim-far = Gegenufer
swim-pegged = Gegenufer besetzt
swim-rest = Gilt als ausgeruht nach
swim-band = Breite der Streifen
swim-seen = Hier zeigt sich Fisch
swim-feed = Hier füttern
swim-feature = Struktur hier
swim-hazard = Gefahr hier
swim-none = keine
swim-usual = üblich
swim-yes = ja
swim-no = nein
swim-minutes = { $minutes } min
swim-metres = { $metres } m
swim-yards = { $yards } yd
feature-bar = Rücken
feature-drop_off = Kante
feature-hole = Loch
feature-weed = Kraut
feature-silt = Schlamm
feature-gravel = Kies
feature-clay = Lehm
feature-island = Insel
feature-fish_seen = Fisch gesehen
feature-other = anderes
hazard-snag = Hänger
hazard-line = Leitung oben
hazard-branch = Ast
hazard-rope = Seil, Pfahl
hazard-shallow = Untiefe
entry-feature_set = Struktur
entry-outline_set = Umriss
entry-hazard_set = Gefahr
entry-peg_placed = Lage
mark-numbered = Marke { $number }
