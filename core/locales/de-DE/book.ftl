# Das Buch.

book-sessions-title = Buch
book-none = Noch kein Ansitz. Tippe BEGINN: von da an steht jeder Ansitz hier.
book-says = { $shown ->
    [one] 1 Ansitz
   *[other] { $shown } Ansitze
} von { $all }.
book-theirs = { $count ->
    [one] 1 Ansitz eines anderen Anglers zählt nicht mit
   *[other] { $count } Ansitze anderer Angler zählen nicht mit
}: siehe WELCHE.
book-of-another = { $day }, anderer Angler
book-row-whose = Wessen
book-row-a_whose = A: wessen
book-row-b_whose = B: wessen
whose-me = meine Ansitze
whose-them = die eines anderen
whose-both = meine und seine
whose-counted = { $count ->
    [one] 1 früherer Ansitz eines anderen Anglers zählt mit.
   *[other] { $count } frühere Ansitze anderer Angler zählen mit.
}
book-doubts = Zu prüfen: { $count ->
    [one] 1 Eintrag
   *[other] { $count } Einträge
}.
hours-minutes = { $hours } h { $minutes }
minutes-short = { $minutes } min
book-date = { $day }. { $month } { $year }
month-1 = Jan.
month-2 = Feb.
month-3 = März
month-4 = Apr.
month-5 = Mai
month-6 = Juni
month-7 = Juli
month-8 = Aug.
month-9 = Sept.
month-10 = Okt.
month-11 = Nov.
month-12 = Dez.
book-gist = { $casts ->
    [0] kein Wurf beendet
   *[other] { $bites ->
        [0] kein Biss
        [one] 1 Biss
       *[other] { $bites } Bisse
    } in { $casts ->
        [one] 1 Wurf
       *[other] { $casts } Würfen
    }
}, { $length }
book-fished = { $length } gefischt
book-open = noch offen
book-opened = zum Lesen offen
book-all = alle Ansitze
book-no-water = ohne Namen
book-row-water = Gewässer
book-row-season = Jahreszeit
book-row-temperature = Wassertemp.
book-all-water = alle Gewässer
book-all-season = ganzes Jahr
book-all-temperature = alle
season-dec-feb = Dez. bis Feb.
season-mar-may = März bis Mai
season-jun-aug = Juni bis Aug.
season-sep-nov = Sept. bis Nov.
temperature-below-4 = unter 4 °C
temperature-from-4 = 4 bis 7 °C
temperature-from-7 = 7 bis 10 °C
temperature-from-10 = 10 bis 15 °C
temperature-from-15 = ab 15 °C
temperature-not-logged = nicht notiert
book-water-at = Wasser { $temperature }
book-filter-title = Welche Ansitze
book-key-filter = Welche
book-key-rates = Fang je Stunde
book-key-rates-sub = Bisse, Gelandetes
book-key-sets = Zwei Gruppen
book-key-sets-sub = eine gegen andere
book-key-next = Nächstes Mal
book-key-next-sub = Ratschläge
book-key-peg = Dieser Platz
book-key-peg-sub = seine letzten Tage
book-key-light = Licht
book-key-light-sub = am Platz
book-key-questions = Fragen
book-key-questions-sub = aus mehreren Ansitzen
book-open-files = Dateien
book-open-files-sub = senden, sichern
book-open-mend = Prüfen
book-open-mend-sub = zweifelhafte
book-open-mend-count = { $count ->
    [one] 1 Eintrag
   *[other] { $count } Einträge
}

book-rates-title = Fang je Stunde
book-rates-figures-title = Zahlen
book-figures-sub = Spannen, Methode
book-rates-none = In diesen Ansitzen war noch nichts draußen.
book-rates-cant-tell = { $which }, noch unklar: { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
}.
book-rates-says = { $which }: etwa alle { $minutes } min ein Biss je Rute, die draußen ist. Das { $bites ->
    [one] ist 1 Biss
   *[other] sind { $bites } Bisse
} in { $hours ->
    [one] 1 Rutenstunde
   *[other] { $hours } Rutenstunden
}.
book-together = { $count ->
    [one] 1 Ansitz
   *[other] { $count } Ansitze
}
book-bites-rate = Bisse je Rutenstunde
book-landed-rate = Fische je Stunde gelandet
book-nothing-out = nichts draußen
book-per-hour = { $rate } je Stunde
book-counts = { $count } in { $hours } Std.
rod-hours-limits = { $count } in { $hours ->
    [one] 1 Rutenstunde
   *[other] { $hours } Rutenstunden
}: { $low } bis { $high }
book-limits = { $count } in { $hours } h: { $low } bis { $high }
book-listed = Gelistet sind die letzten { $count }; die Raten oben zählen alle.
book-rates-how = Spannen sind exakte { $level }-%-Grenzen (Garwood). Tage sind verschieden; die Spanne kann zu eng sein. Eine Rutenstunde zählt vom Einschlag bis zum Biss oder bis zum Ende des Wurfs; zwei Ruten machen in einer Stunde zwei.

book-sets-title = Zwei Gruppen
book-row-a_water = A: Gewässer
book-row-a_season = A: Jahreszeit
book-row-a_temperature = A: Temp.
book-row-b_water = B: Gewässer
book-row-b_season = B: Jahreszeit
book-row-b_temperature = B: Temp.
sets-shared = { $count ->
    [one] 1 Ansitz ist in beiden Gruppen.
   *[other] { $count } Ansitze sind in beiden Gruppen.
} So ist kein Vergleich möglich.
sets-choose = Wähle Gewässer, Jahreszeiten oder Temperaturen so, dass kein Ansitz in beiden ist.
sets-set = { $set }: { $which }, { $count ->
    [one] 1 Ansitz
   *[other] { $count } Ansitze
}
sets-nothing = Unklar: in einer der Gruppen war nichts draußen.
sets-leans = Neigt zu { $set }.
sets-clear = { $set } über diese Ansitze klar besser.
sets-cant-tell = Unklar: einzelne Ansitze sind zu verschieden, um zu sagen, welche Gruppe besser ist.
sets-few-bites = Noch unklar: { $count ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $count } Bisse
} in beiden Gruppen zusammen.
sets-few-days = Noch unklar: { $count ->
    [one] 1 Ansitz
   *[other] { $count } Ansitze
} in der kleineren Gruppe, { $least } sind nötig.
sets-ratio = A gegen B
sets-times = { $ratio }-mal
sets-no-ratio = kein Biss in B: kein Verhältnis
sets-no-end = ohne Ende
sets-limits = exakte 95-%-Grenzen { $low } bis { $high }
sets-better = Von 100 solchen Paaren
sets-of-100 = A besser in { $a }, B in { $b }, keins in { $same }
sets-of-100-how = vorab gilt die Hälfte aller Paare als gleich, und Tage gelten als verschieden
sets-exact-p = Bisse als ein gleichmäßiger Fluss
sets-exact-p-how = exakter bedingter Test: zu sicher, wo Tage verschieden sind
sets-days-p = Ganze Tage neu verteilt
sets-days-p-all = alle { $count } Arten
sets-days-p-drawn = { $count } Ziehungen
sets-how = Spannen sind exakte { $level }-%-Grenzen. Das Urteil beruht auf dem Neuverteilen ganzer Tage, denn ein guter Tag ist das Glück eines Tages. Die Gruppen können sich in mehr unterscheiden als in dem, wonach sie gewählt sind: Köder, Begleitung, Tageszeit.

book-questions-title = In mehreren Ansitzen gefragt
book-questions-figures-title = Zahlen
questions-says = { $count ->
    [one] 1 Frage wurde in zwei oder mehr Ansitzen gestellt
   *[other] { $count } Fragen wurden in zwei oder mehr Ansitzen gestellt
}. { $clear ->
    [0] Noch keine ist klar.
    [one] 1 ist klar.
   *[other] { $clear } sind klar.
}
questions-how = Dieselben zwei, in zwei oder mehr Ansitzen an einem Gewässer verglichen, sind eine Frage; einzurichten ist nichts. Ein Ansitz zählt, wenn mindestens viermal hin und her gewechselt wurde und nicht jedes Mal etwas anderes mit. Es sagt, was bei diesen Ansitzen war, nicht, was sein wird.
questions-own-rate = Jeder Ansitz darf gut oder schlecht sein, auch zwei desselben Tages: zusammengezählt wird nur, wie die zwei in jedem Ansitz zueinander stehen. Gewässer bleiben getrennt, denn was Fische des einen mögen, muss für ein anderes nicht gelten; Ansitze ohne Namen des Gewässers lassen sich nicht zusammenlegen.
questions-left-out = { $count ->
    [one] 1 weitere Frage, länger her, steht nicht hier.
   *[other] { $count } weitere Fragen, länger her, stehen nicht hier.
}
questions-figures-how = Wären die zwei gleich, würde ein Einsatz höchstens in einer von 20 Saisons auf 20 wachsen, wie oft man auch nachsieht (Ville). Der Fehler wird auf die Fragen verteilt, wie sie kommen, 1 / (k (k + 1)) auf die k-te; die erste braucht also 40. Der Einsatz liegt halb auf Bissen in Minuten, halb auf Vergleichen bei gleichen Wartezeiten. Der Einsatz nach Würfen wird nur gezeigt. Jeder Ansitz, jede Rute und jede Stelle hat ihre eigene Rate.

book-next-title = Nächstes Mal
next-none = Noch kein Ansitz, also nichts, worauf ein Plan bauen kann.
next-says = Nach { $day }.
next-own = Eigener Plan
next-supports = Dafür spricht
next-cannot = Noch unbekannt
next-nothing = Noch nichts.
next-leave-why = { $bites ->
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
} jenes Tages{ $earlier ->
    [0] .
    [one] {" "}und der Ansitz davor
   *[other] {" "}und die { $earlier } Ansitze davor
}
next-cant-leave = wie lange ein Wurf liegen soll
next-near-best = bisher sind { $hold } bis { $recast } min fast am besten
next-about-best = bisher sind etwa { $hold } min am besten
next-hardly = bis { $longest } min macht länger wenig Unterschied
next-try-leave = ob länger besser ist: { $leave }
next-longer = was nach { $minutes } min kommt
next-longer-why = Kein Wurf lag länger: lass ein oder zwei liegen.
next-supported = { $change }. { $verdict }.
next-one-day = { $why } Ein Tag: versuch es noch einmal im Wechsel.
next-heights = Höhen { $open }
next-heights-why = an diesem Gewässer nicht probiert
next-few-days = ob jener Tag üblich war: { $count ->
    [one] 1 Ansitz hier
   *[other] { $count } Ansitze hier
}
next-few-days-why = Ab drei sagt es etwas.
next-cold-none = was Kälte bewirkt: keine Wassertemperatur notiert
next-cold = was Kälte bewirkt: keine Wassertemperatur an { $count } von { $all ->
    [one] 1 Tag
   *[other] { $all } Tagen
}
next-cold-why = Mit einem Tippen notiert, unter Wetter.
next-how = Das sagt, was war, nicht, was sein wird.
book-type-plan = Eigener Plan fürs nächste Mal
book-type-note = Notiz zu diesem Ansitz
type-send = MERKEN

book-peg-title = Dieser Platz
peg-history-which = Nenne beim Einrichten Gewässer und Platz: dann stehen hier die letzten Ansitze dort.
peg-history-none = { $place }: hier noch kein Ansitz.
peg-history-none-other = { $place }: hier noch kein anderer Ansitz.
peg-history-to-come = Jeder Tag an diesem Platz wird hier aufgeführt, auch der eines Partners, sobald du ihn einliest.
peg-history-says = { $place }: { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}, über { $count ->
    [one] 1 Ansitz
   *[other] die letzten { $count } Ansitze
}.
peg-history-says-other = { $place }: { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}, über { $count ->
    [one] 1 anderen Ansitz
   *[other] die letzten { $count } anderen Ansitze
}.
peg-history-besides = Nicht gezählt: { $day }, der Ansitz, von dem du zurückblickst.
peg-history-how = Deine und die aus Dateien. Bisse je Rutenstunde, mit exakten { $level }-%-Grenzen. Tage sind verschieden, Angler auch: ein paar Ansitze trennen einen guten Platz nicht von einem guten Tag.

book-light-title = Licht
light-left = Sonnenuntergang in { $left }.
light-day = Es ist Tag.
light-twilight = Bürgerliche Dämmerung: hell genug zum Sehen.
light-dark = Dunkel.
light-up-all-day = Die Sonne geht heute nicht unter.
light-down-all-day = Die Sonne geht heute nicht auf.
light-dawn = Erstes Licht (bürgerlich)
light-sunrise = Aufgang
light-noon = Höchststand
light-sunset = Untergang
light-dusk = Letztes Licht (bürgerlich)
light-row-lat = Breite
light-row-lon = Länge
light-north = { $degrees }° Nord
light-south = { $degrees }° Süd
light-east = { $degrees }° Ost
light-west = { $degrees }° West
light-how = Für flachen Horizont, auf die Minute; Bäume und Hügel zählen nicht.
light-guess = Der Platz hat noch keine Lage: diese Zeiten gelten für die gezeigte Breite und Länge. Tippe, um sie zu ändern; ein Grad sind etwa 110 km.
light-private = Die Lage bleibt auf diesem Handy und in Sicherungen, die es selbst macht, außer du sendest sie.
light-keep = MERKEN
light-keep-sub = der Platz ist hier

book-session-title = Ansitz
session-says = { $from } bis { $to }: { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}, { $landed } gelandet.
session-conditions = Wetter
session-side-by-side = Nebeneinander an diesem Gewässer
session-my-peg = { $peg }, meiner
session-their-peg = { $peg }, anderer Angler
session-landed = { $count } gelandet
session-mine = IST MEINER
session-mine-sub = mein anderes Handy
session-not-mine = NICHT MEINER
session-not-mine-sub = anderer Angler
# A peg or a water put right, as UNDO names it.
entry-session_corrected = Platz oder Gewässer
session-place-how = Berichtigt, was bei BEGINN falsch war
session-close = FERTIG
session-close-sub = mit diesem Ansitz
cast-after = { $minutes } min, { $end }
cast-on-rod = { $time }, Rute { $rod }
cast-out = noch draußen
cast-landed = gelandet
cast-lost = verloren
cast-missed = Fehlbiss
cast-outcome-not-seen = Biss, Ausgang nicht gesehen
cast-wound-in = eingeholt
cast-end-not-seen = Ende nicht gesehen
cast-session-ended = am Ende eingeholt
cast-hooklength-lost = Vorfach verloren

day-card-title = Der Tag
day-none = Noch kein Ansitz. Tippe BEGINN: jeder Tag hat seine Karte.
day-says = { $bites ->
    [0] Kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}{ $out ->
    [0] {""}
   *[other] , { $out } noch draußen
}, { $landed ->
    [0] kein Fisch gelandet
    [one] 1 Fisch gelandet
   *[other] { $landed } Fische gelandet
}.
day-fish = Fische
day-class = { $name }: { $count }
day-class-none = ohne Art: { $count }
day-best = bester { $weight }
day-weight = Gewicht
day-weight-own = { $weight }, selbst gezählt
day-weight-both = { $weight }, noch nicht jedes Netz gewogen
day-weight-scales = { $weight } gewogen
day-wait = Wartezeiten
day-place = Wo
day-place-most = { $spot }: { $bites } von { $all ->
    [one] 1 Biss
   *[other] { $all } Bissen
}, in { $casts } von { $made ->
    [one] 1 Wurf
   *[other] { $made } Würfen
}.
day-beside = Nachbarn
day-next = Als Nächstes
day-next-cast = Ein Wurf: nichts lag lange genug, um es zu sagen.
day-next-none = Eine andere Stelle oder ein Wurf über { $minutes } min: bis dahin kam in diesem Ansitz nichts.
day-next-elsewhere = Eine andere Stelle: bis { $minutes } min kam in diesem Ansitz nichts.
day-next-past = Ein oder zwei Würfe über { $minutes } min, den bisher längsten.
day-share = TEILEN
day-share-sub = als Text

welcome-log-title = 1 von 3: notieren
welcome-log-says = Tippe WURF, wenn das Blei aufs Wasser trifft. Dann tippe, was den Wurf beendete: BISS oder EINHOLEN.
welcome-log-more = Nach BISS: LANDUNG, VERLUST oder FEHLBISS; solange ein Fisch dran ist, muss nichts getippt werden. STORNO nimmt den letzten Eintrag zurück, wie alt er auch ist. Ein zweites Tippen eines kalten Daumens zählt nicht.
welcome-wait-title = 2 von 3: warten
welcome-wait-says = Die Uhr zählt jede Wartezeit. Ab drei Bissen steht am Ufer, wie lange ein Wurf liegen soll.
welcome-wait-more = Jeder Biss ist ein Zeichen auf dem Streifen, bei der Minute, in der er kam. Bis es genug sind, heißt es: noch unklar.
welcome-where-title = 3 von 3: wohin
welcome-where-says = Sag unter Gerät, wohin ein Wurf geht, dann zeigt die Karte, wohin als Nächstes.
welcome-where-more = Sie unterscheidet eben befischtes Wasser von ruhendem und schont, was du liegen lassen willst. Alles bleibt auf diesem Handy und in Sicherungen, die es selbst macht: kein Konto, kein Netz.
welcome-next = WEITER
welcome-start-sub = Ansitz, sofort
welcome-skip = AUSLASSEN
welcome-skip-sub = ans Ufer
