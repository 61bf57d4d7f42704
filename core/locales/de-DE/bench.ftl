# Die Werkbank: der Abend davor.

bench-parts-title = Werkbank
bench-hooklengths-title = Vorfächer
bench-cut-down-title = Kürzen
bench-tie-up-title = Neu binden
bench-spools-title = Spulen
bench-pop-up-title = Pop-up
bench-shot-title = Schrotdose
bench-fall-title = Sinkzeit
bench-heights-title = Höhen
bench-no-plan = kein Plan

bench-row-kit = Wessen Bestand
bench-kit-own = dieses Handy
bench-kit-of = anderes Handy, { $number }
bench-kit-how = Was von einem Partner oder einem älteren Handy eingelesen wird, bringt seinen eigenen Bestand mit. Was du auf der Werkbank änderst, ändert den hier gewählten.

# Ein Vorfach: seine Länge, der Durchmesser der Schnur, die Größe des Hakens, das Haar.
bench-hooklength = { $length }, { $mm } mm, Gr. { $size }
bench-hair = Haar { $mm } mm
bench-no-hair = kein Haar
bench-mm = { $mm } mm
bench-cm = { $cm } cm
bench-celsius = { $t } °C
bench-have = { $have } gebunden
bench-have-of = { $have } gebunden, { $want } mitzunehmen
bench-row-kind = Welche
bench-row-length = Länge
bench-row-diameter = Schnur
bench-row-hook = Hakengröße
bench-row-hair = Haar
bench-hooklengths-says = { $which }: { $have } gebunden, { $want ->
    [0] keins mitzunehmen
   *[other] { $want } mitzunehmen
}.
bench-hooklengths-sub = { $count } gebunden
bench-lost = { $count ->
    [one] 1 ging bei einem Wurf verloren und ist
   *[other] { $count } gingen bei Würfen verloren und sind
} abgezogen.
bench-lost-unknown = { $count ->
    [one] 1 verlorenes Vorfach passt zu keiner Sorte hier oder zu mehreren: nimm es von Hand heraus.
   *[other] { $count } verlorene Vorfächer passen zu keiner Sorte hier oder zu mehreren: nimm sie von Hand heraus.
}
bench-odd = { $count ->
    [one] 1 Eintrag nahm
   *[other] { $count } Einträge nahmen
} mehr heraus, als da war: zähl die Mappe nach.
bench-key-tied-1 = 1 FERTIG
bench-key-tied-5 = 5 FERTIG
bench-key-tied-sub = in die Mappe
bench-key-taken_out-1 = 1 RAUS
bench-key-taken-out-sub = weg oder verloren
bench-key-want-more = SOLL +1
bench-key-want-less = SOLL −1
bench-key-want-sub = für den Tag

bench-cut-down-none = Noch ist nichts gebunden: trag Gebundenes unter Vorfächer ein.
bench-cut-down-says = { $count ->
    [0] Nichts zu kürzen: kein übriges Vorfach ist lang genug für das, was fehlt.
    [one] 1 zu kürzen, { $waste } Abfall.
   *[other] { $count } zu kürzen, zusammen { $waste } Abfall.
}
bench-cut-down-sub = { $count ->
    [0] nichts
    [one] 1, Abfall { $waste }
   *[other] { $count }, Abfall { $waste }
}
bench-cut-to = gekürzt auf { $length }: { $count }
bench-cut-off = je { $length } kürzer: Schnur für die Schlaufe lassen
bench-cut-down-how = Von allen Wegen, die am meisten Binden ersparen, fällt bei diesem am wenigsten Schnur ab, dann braucht er die wenigsten Schnitte. Nur bei gleicher Schnur, gleichem Haken und Haar; für die neue Schlaufe bleibt Schnur.
bench-key-cut = GEKÜRZT
bench-key-cut-sub = alle diese

bench-tie-up-says = { $count ->
    [0] Nichts zu binden: in der Mappe ist alles, was du mitnehmen willst.
    [one] 1 zu binden.
   *[other] { $count } zu binden.
}
bench-tie-up-none = Noch nichts zu binden. Lege unter Vorfächer fest, wie viele du mitnimmst.
bench-tie-up-sub = { $count ->
    [0] nichts
   *[other] { $count } zu binden
}
bench-tie = { $count } binden
bench-cut-for = je { $length } abschneiden
bench-line-of = { $mm } mm
bench-spool-number = Spule { $number }, { $line }
bench-pieces = { $count ->
    [one] 1 Stück
   *[other] { $count } Stücke
}
bench-left-on-it = { $metres } m bleiben drauf
bench-not-proved = Vielleicht gibt es einen Plan, der bis zu { $length } weniger Schnur anbricht.
bench-allowances = Ein Vorfach braucht { $length } mehr als seine Länge: Knoten, doppelte Schlaufe, Ende.
bench-allowances-none = Knoten, Schlaufe und Ende sind noch nicht gemessen, also kommt nichts zur Länge dazu. Miss sie an drei Vorfächern.
bench-row-hook_knot = Hakenknoten
bench-row-loop_length = Schlaufe
bench-row-tag = Ende
bench-key-tie = FERTIG
bench-key-tie-sub = alle diese

bench-spools-says = { $count ->
    [0] Noch keine Spule.
    [one] 1 Spule.
   *[other] { $count } Spulen.
}
bench-spools-sub = { bench-spools-says }
bench-row-spool_diameter = Schnur
bench-row-spool_length = Auf der Spule
bench-row-spool_gone = Leer
bench-spool-gone-how = Die hier gewählte Spule kommt von der Werkbank.
bench-key-spool = DAZU
bench-key-spool-sub = { $mm } mm, { $metres } m

bench-pop-up-sinks = Er sinkt ohne Schrot, mit { $over } Reserve.
bench-pop-up-says = { $shot } hält ihn unten, mit { $over } Reserve.
bench-pop-up-barely = { $shot } hält ihn gerade noch unten: probier es am Ufer aus.
bench-no-shot = kein Schrot
bench-lift = Auftrieb des Köders
bench-hook-under-water = Haken im Wasser
bench-line-under-water = Schnur im Wasser
bench-net-lift = Restauftrieb
bench-shot-under-water = Schrot im Wasser
bench-shot-in-air = Schrot an der Luft
bench-pop-up-soaked = Der Auftrieb sinkt, wenn der Köder Wasser zieht: dies gilt { $minutes } min nach dem Einwerfen.
bench-pop-up-guess = Noch nicht gemessen: ein Anfangswert. Versenke den Köder in kaltem Wasser mit Schrot und gib ein, was dieses unter Wasser wiegt.
bench-pop-up-how = Das wenigste Schrot, das mindestens den Restauftrieb wiegt und höchstens 0,05 g mehr. Dichten sind Handbuchwerte aus dem Gedächtnis; der Haken gilt als Stahl.
bench-row-lift = Auftrieb
bench-row-soaked = Im Wasser
bench-row-hook_weight = Hakengewicht
bench-row-height = Höhe
bench-row-line_um = Schnur
bench-row-line = Schnur aus
bench-row-shot_metal = Schrot aus
bench-row-water = Wasser
bench-line-nylon = Mono
bench-line-fluorocarbon = Fluorocarbon
bench-line-braid = Geflecht
bench-shot_metal-tungsten = Wolfram
bench-shot_metal-tin = Zinn
bench-shot_metal-steel = Stahl
bench-shot_metal-lead = Blei

bench-shot-says = { $count ->
    [0] Die Dose ist leer. Gib Größen ein.
    [one] 1 Größe in der Dose.
   *[other] { $count } Größen in der Dose.
}
bench-shot-sub = { $count ->
    [one] 1 Größe
   *[other] { $count } Größen
}
bench-shot-how = Die Gewichte sind aus dem Gedächtnis, und Hersteller weichen um 5 bis 10 % ab: wieg je zehn und gib deine Werte ein.
bench-shot-memory = aus dem Gedächtnis, ungeprüft: wieg zehn
bench-row-size = Größe
bench-row-shot = Ein { $size }
bench-not-in-the-box = nicht in der Dose

bench-fall-says = Tippe WASSER, wenn das Blei aufs Wasser trifft, und GRUND, wenn die Schnur erschlafft.
bench-falling = Sinkt seit { $time }.
bench-fall-timed = { $seconds } s.
bench-fall-depth = { $seconds } s: { $metres } m tief, zwischen { $low } und { $high } m.
bench-at-depth = Bekannte Tiefe { $metres } m
bench-seconds = { $seconds } s
bench-fall-speed = Das Blei sinkt { $speed } m je Sekunde ({ $low } bis { $high }).
bench-fall-how = Nimmt an, dass jedes Tippen auf 0,3 s stimmt. Gilt für ein Blei an einer Schnur: für andere neu messen.
bench-fall-sub = { $speed } m/s, { $count ->
    [one] 1 Messung
   *[other] { $count } Messungen
}
bench-fall-none = nicht gemessen
bench-row-plumbed = Bekannte Tiefe
bench-key-splash = WASSER
bench-key-splash-sub = trifft aufs Wasser
bench-key-bottom = GRUND
bench-key-bottom-sub = Schnur ist schlaff
bench-key-calibrate = MERKEN
bench-key-calibrate-sub = zur bekannten Tiefe

bench-heights-none = Noch keine Höhe probiert. Mit { $first } fangen viele an (üblich, ohne Quelle).
bench-heights-all = Jede Höhe der Leiter wurde probiert.
bench-heights-says = Die meisten Minuten bei { $most }. Daneben noch nicht probiert: { $open }.
bench-heights-sub = { $tried } von { $all } probiert
bench-heights-how = Ein Wurf zählt bei der nächstliegenden Höhe. Spannen sind exakte 95-%-Grenzen der Bisse je Rutenstunde; die Höhen wurden nicht im Wechsel gefischt, ein Unterschied kann also am Tag liegen.
bench-untried = nicht probiert
bench-tried = { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}, { $minutes } min
bench-rate = { $rate } je Stunde, { $low } bis { $high }
bench-row-heights_of = Würfe von
bench-sessions-all = allen Ansitzen
bench-sessions-this = diesem Ansitz
bench-row-rung = Leiter
bench-rungs = { $count ->
    [one] 1 Höhe
   *[other] { $count } Höhen
}

# Was Storno nennt.
entry-conditions_set = Wetter
entry-hooklength_lost = Vorfachverlust
entry-planned_next = Plan
entry-hooklengths_tied = Gebundene
entry-hooklengths_counted = Zählung
entry-hooklengths_taken_out = Entnahme
entry-hooklengths_cut_down = Kürzung
entry-hooklengths_wanted = Bedarf
entry-spool_added = Spule
entry-spool_left = Spule
entry-allowances_set = Knoten
entry-pop_up_set = Pop-up
entry-shot_set = Schrot
entry-fall_timed = Sinkzeit
entry-ladder_set = Leiter
entry-cautions_seen = Hinweise
