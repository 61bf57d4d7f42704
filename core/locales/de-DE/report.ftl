# Der Bericht eines Ansitzes, für Papier und für Freunde.

# Die Sprache dieser Datei nach BCP 47: die der Seite.
report-language = de-DE
report-title = { $peg }, { $day }
report-title-water = { $water }, { $peg }, { $day }
report-peg = Platz { $peg }
report-peg-none = ein Ansitz
report-day-none = Tag unbekannt
report-when = { $from } bis { $to }
report-day-time = { $day }, { $time }
report-when-open = ab { $from }, nicht beendet
report-casts = Würfe
report-bites = Bisse
report-landed = Gelandet
report-lost = Verloren
report-missed = Fehlbisse
report-liners = Streifer
report-weight = Bekanntes Gewicht
report-weight-value = { $kg } kg
report-weight-eye = { $weight }; { $fish ->
    [one] 1 Fisch
   *[other] { $fish } Fische
} geschätzt
report-weight-rest = { $kg } kg und { $fish ->
    [one] 1 Fisch
   *[other] { $fish } Fische
} nicht gewogen
report-put-back = Freigelassen
report-hooklengths-lost = Vorfächer verloren
report-doubts = Zweifelhafte Einträge
report-break = Pause { $from } bis { $to }.
report-break-open = Pause seit { $from }.
report-fed = Gefüttert: etwa { $weight }.
report-fed-feeder = Gefüttert: etwa { $weight }, davon { $feeder } aus Körben mit ihren Würfen.
report-fed-line = { $time } gefüttert: { $what }{ $at }
report-shown-line = { $time } { $what }{ $at }
report-at = {", "}{ $where }
report-fed-more = { $count ->
    [one] 1 weiterer Eintrag dieser Art steht im Protokoll.
   *[other] { $count } weitere Einträge dieser Art stehen im Protokoll.
}
report-weather = { $time } { $what }

report-nets = Netze
report-net = { $fish ->
    [one] { $net }: 1 Fisch, davon { $kg } kg bekannt
   *[other] { $net }: { $fish } Fische, davon { $kg } kg bekannt
}
report-net-scales = { $line }; die Waage zeigte { $shown }

report-of-another = Ein Tag eines anderen Anglers, aus einer Datei übernommen.
report-others = Sektor und andere Netze
report-section = Sektor: { $left ->
    [one] 1 Platz
   *[other] { $left } Plätze
} links, { $right ->
    [one] 1 Platz
   *[other] { $right } Plätze
} rechts.
report-other-net = { $peg }: { $weight }
report-rule = Tote und zurückgesetzte Fische: { $rule }

report-strip = Wartezeiten
report-strip-twitch = Ein Anzupfen beendete eine Wartezeit und begann die nächste; ein Wurf kann daher mehrere Zeichen haben. Die Liste der Würfe zeigt jeweils die letzte Wartezeit.
report-strip-read = Jedes Zeichen ist eine Wartezeit: eine gefüllte Raute, wo ein Biss das Warten beendete, ein Strich, wo etwas anderes es tat, das Warten also länger gewesen wäre.
report-strip-alt = { $bites ->
    [one] 1 Wartezeit endete
   *[other] { $bites } Wartezeiten endeten
} mit einem Biss: { $list }. { $others } ohne.
report-strip-wait = { $minutes } min
report-strip-none = Noch keine Wartezeit zu zeigen.
report-minutes = Minuten Wartezeit

report-curve = Würfe noch ohne Biss
report-curve-read = Kaplan-Meier-Schätzung aus { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
} mit { $bites ->
    [one] 1 Biss
   *[other] { $bites } Bissen
}; das schattierte Band enthält den wahren Anteil zu jeder Minute mit 95 % Sicherheit (Log-log-Grenzen). Kleine Zahlen geben breite Bänder.
report-curve-alt = Anteil der Würfe noch ohne Biss: { $list }.
report-curve-at = { $share } % nach { $minutes } min
report-curve-few = Noch unklar: weniger als drei Bisse.
report-share = noch ohne Biss

report-swim = Wohin die Würfe gingen
report-swim-read = Vom Platz aus gesehen, geradeaus ist oben. An jeder Stelle: Würfe / Bisse. Eine gefüllte Raute hatte einen Biss, ein Punkt keinen.
report-swim-alt = { $list }.
report-swim-spot = { $where }: { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfe
}, { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
}
report-swim-none = Keine Stelle wurde notiert.
report-where-mark = { $mark }, { $metres } m
report-where = { $metres } m, { $degrees }° { $side }
report-where-straight = { $metres } m geradeaus
report-left = links
report-right = rechts

report-list = Wurf für Wurf
report-time = Einschlag
report-rod = Rute
report-spot = Stelle
report-wait = Wartezeit
report-wait-value = { $minutes } min
report-wait-longer = über { $minutes } min
report-end = Beendet durch
report-bait = Köder
report-more = { $count ->
    [one] 1 weiterer Wurf steht
   *[other] { $count } weitere Würfe stehen
} in der CSV-Datei.
report-notes = Notizen

report-end-landed = gelandet
report-end-lost = verloren
report-end-missed = Fehlbiss
report-end-outcome = Biss, Ausgang nicht gesehen
report-end-wound-in = eingeholt
report-end-unseen = Ende nicht gesehen
report-end-session = Ansitz beendet
report-end-out = noch draußen
report-end-put-back = freigelassen
report-end-hooklength = Vorfach verloren
report-from-splash = dem Einschlag
report-from-twitch = dem Einschlag oder dem letzten Anzupfen
report-foot = Zeiten wie auf dem Handy notiert. Wartezeiten laufen ab { $from }{ $approximate ->
    [0] .
    [one] ; 1 Wurf hat eine ungefähre Zeit.
   *[other] ; { $approximate } Würfe haben eine ungefähre Zeit.
}
