# Der Bildschirm am Ufer. Worte des Fachs, Sätze für klamme Finger.

peg = Platz { $peg }
peg-none = Kein Platz
length-session = { $time } seit Beginn
length-none = Kein Ansitz offen
rod = Rute { $rod }
rod-number = { $rod }
rod-fish-on = { $rod }: FISCH DRAN
rod-alert = FISCH DRAN
rod-due-first = { $rod }: zuerst fällig
rod-in = { $rod }: drin
rod-in-alone = drin

since-out = draußen seit { $time }
since-ready = drin seit { $time }
since-away = Pause seit { $time }
since-fish = Fisch seit { $time }
since-never = noch kein Wurf
since-none = kein Ansitz offen
# The start was set back by hand, or the clock was moved since.
since-out-about = draußen seit etwa { $time }
since-ready-about = drin seit etwa { $time }
since-away-about = Pause seit etwa { $time }
since-fish-about = Fisch seit etwa { $time }

spoken-out = { $rod }, draußen seit { $minutes ->
    [one] einer Minute
   *[other] { $minutes } Minuten
}
spoken-due-first = { $rod }, zuerst fällig
spoken-ready = { $rod }, nichts draußen
spoken-fish = { $rod }, Fisch dran

# Tasten. Das Wort ist, was der Angler tut; die kleinere Zeile darunter bleibt bei jeder Schriftgröße.
key-cast = WURF
key-cast-first = Blei im Wasser
key-cast-closes = beendet diesen, beginnt neu
key-cast-spoken = Wurf. Das Blei ist im Wasser.
key-bite = BISS
key-bite-sub = Spitze gezogen
key-bite-spoken = Biss. Die Spitze wurde herumgezogen.
key-wound-in = EINHOLEN
key-wound-in-sub = kein Biss
key-wound-in-spoken = Ohne Biss eingeholt.
key-liner = STREIFER
key-liner-sub = Fisch an der Schnur
key-liner-spoken = Streifer. Ein Fisch schwamm in die Schnur.
key-landed = LANDUNG
key-landed-sub = im Kescher
key-landed-spoken = Landung. Der Fisch ist im Kescher.
key-lost = VERLUST
key-lost-sub = ausgestiegen
key-lost-spoken = Verlust. Der Fisch ist ausgestiegen.
key-landed-late = LANDUNG
key-landed-late-sub = trägt Biss { $back } ein
key-landed-late-spoken = Landung, Biss nicht notiert. Trägt einen Biss { $back } ein, ungefähr.
key-lost-late = VERLUST
key-lost-late-sub = trägt Biss { $back } ein
key-lost-late-spoken = Verlust, Biss nicht notiert. Trägt einen Biss { $back } ein, ungefähr.
# Mit mehreren Ruten.
key-late-rod-sub = { $rod }: Biss { $back }
key-back-min = vor { $minutes } min
key-back-s = vor { $seconds } s
key-back-now = eben
key-missed = FEHLBISS
key-missed-sub = Anhieb ins Leere
key-missed-spoken = Fehlbiss.
# Der gelandete Fisch, bis zum nächsten Wurf. Nichts muss dazu gesagt werden.
key-fish-class = { $label }
key-fish-class-sub = wie zuletzt
key-fish-class-spoken = { $what }, wie zuletzt.
key-fish-which = ART?
key-fish-which-sub = Rotauge, Karpfen ...
key-fish-which-spoken = Sag, welche Art es ist.
key-fish-is = { $label }
key-fish-is-sub = tippen: ändern
key-fish-is-spoken = Notiert: { $what }. Ändern.
key-fish-back = INS WASSER
key-fish-back-sub = nicht behalten
key-fish-back-spoken = Der Fisch kam zurück ins Wasser.
key-fish-keep = INS WASSER
key-fish-keep-sub = tippen: behalten
key-fish-keep-spoken = Als freigelassen notiert. Tippe, wenn er doch behalten wurde.
key-fish-weigh = WIEGEN
key-fish-weigh-sub = oder schätzen
key-fish-weigh-spoken = Das Gewicht dieses Fisches eingeben.
key-fish-weight = { $what }
key-fish-weight-sub = tippen: ändern
key-fish-weight-spoken = Er wiegt { $what }. Ändern.
key-fish = Fisch
key-fish-sub = Art, Netz
key-fish-spoken = Was über diesen Fisch zu sagen ist: Art, Netz, Gewicht.
key-time-back = VOR 1 MIN
key-time-back-sub = letzter Eintrag
key-time-back-spoken = Die letzte Zeit um eine Minute zurücksetzen.
key-time-back-five = VOR 5 MIN
key-time-back-five-sub = letzter Eintrag
key-time-back-five-spoken = Die letzte Zeit um fünf Minuten zurücksetzen.
key-undo = STORNO
key-undo-sub = { $what }
key-undo-spoken = Storno: { $what }.
key-undo-nothing = noch nichts
key-redo = WIEDER
key-redo-sub = { $what }
key-redo-spoken = Wiederherstellen: { $what }.
key-twitch = BEWEGT
key-twitch-sub = Köder angezupft
key-twitch-spoken = Angezupft. Der Köder wurde bewegt.
key-indication = ZUPFER
key-indication-sub = Spitze zuckt
key-indication-spoken = Ein Zupfer. Die Spitze zuckte, ohne Zug.
key-away = PAUSE
key-away-sub = hält die Uhren an
key-away-spoken = Weg von den Ruten. Die Uhren, die das Angeln zählen, stehen.
key-returned = BIN DA
key-returned-sub = angelt weiter
key-returned-spoken = Wieder an den Ruten. Die Uhren laufen weiter.
key-feed = FUTTER
key-feed-sub = { $what }
key-feed-first = was und wie viel
key-feed-spoken = Füttern: { $what }.
key-feed-other = Füttern mit
key-feed-other-sub = andere Menge
key-feed-other-spoken = Wählen, was, wie viel und wo gefüttert wird.
key-seen = Gesehen
key-seen-sub = Rollen, Blasen
key-seen-spoken = Fische zeigen sich. Sag, wie und wo.
key-tackle = Gerät
key-tackle-sub = Stelle, Montage
key-tackle-spoken = Gerät. Stelle oder Montage des nächsten Wurfs ändern.
key-swim = Karte
key-swim-sub = wohin jetzt
key-swim-spoken = Karte. Wohin der nächste Wurf soll und wohin die Würfe gingen.
key-start = BEGINN
key-start-sub = Ansitz hier
key-start-spoken = Einen Ansitz beginnen.
key-end = ENDE
key-end-sub = des Ansitzes
key-end-spoken = Den Ansitz beenden. Was draußen ist, wird eingeholt.

# Was Storno nennt: einen Eintrag und seine Zeit.
entry = { $what } { $time }
bank-logged = Notiert: { $what }.
entry-session_started = Beginn
entry-session_ended = Ende
entry-cast = Wurf
entry-bite = Biss
entry-landed = Landung
entry-lost = Verlust
entry-missed = Fehlbiss
entry-liner = Streifer
entry-indication = Zupfer
entry-wound_in = Einholen
entry-twitch = Anzupfen
entry-away = Pause
entry-returned = Rückkehr
entry-rig_set = Montage
entry-spot_set = Stelle
entry-noted = Notiz
entry-time_set = Zeit zurück
entry-cast_end_set = Wurfende
entry-cast_added = Wurf ergänzt
entry-confirmed = Bestätigung
entry-mark_set = Marke
entry-removed = Entfernung
entry-kept_back = Schonung
entry-released = Freigabe
entry-swim_set = Platzmaß
entry-alternation_started = Test
entry-alternation_ended = Testende
entry-other = Eintrag

# Der Rat.
# Jede Überschrift eines Wurfs endet mit der einen Zahl des Rats: der Minute, bis zu der neu geworfen wird.
advice-cant-tell = Noch unklar.
advice-try = Noch unklar. Versuch { $leave } min.
advice-try-past = Noch unklar. Über { $leave } min.
advice-try-about = Versuch etwa { $leave } min.
advice-plan = Dein Plan: { $leave } min. Noch unklar.
advice-plan-past = Über den { $leave } min deines Plans. Noch unklar.
advice-cant-tell-prior = Bis drei Bisse da sind, beruhen die Minuten vor allem auf Gewässern im Allgemeinen.
advice-cant-tell-club = Bis drei Bisse da sind, beruhen die Minuten vor allem auf den Tagen des Vereins.
advice-cant-tell-club-elsewhere = Bis drei Bisse da sind, beruhen die Minuten vor allem auf Gewässern im Allgemeinen und zum Teil auf den Tagen des Vereins.
advice-elsewhere = Nicht noch einmal hierher. Wirf zu { $where }.
advice-recast-by = Wirf neu bis Minute { $leave }.
advice-hold-recast = Warte bis Minute { $hold }. Wirf neu bis Minute { $recast }.
advice-length-hardly = Länger bringt wenig. Wirf neu bis Minute { $leave }.
advice-no-reason-to-wind-in = Kein Grund, vor Minute { $leave } einzuholen.
advice-past = Über { $leave } min: neu werfen.
advice-away = Pause.
advice-away-detail = Nichts zählt, bis du wirfst oder BIN DA tippst.
advice-all-out = Schluss.
advice-all-out-wind-in = Schluss: hol ein.
advice-all-out-wind-in-rod = Schluss: hol Rute { $rod } ein.
advice-all-out-fish-on = Schluss: an Rute { $rod } ist ein Fisch dran.
advice-land-first = Lande ihn zuerst.
advice-before-wind-in = Vor dem Start: hol ein.
advice-before-wind-in-rod = Vor dem Start: hol Rute { $rod } ein.
advice-before-detail = Vor dem Start darf kein Köder im Wasser sein.
advice-all-out-detail = Gewogen wird unter Wertung. ENDE schließt den Ansitz.
advice-weighed-in-detail = Gewogen ist. ENDE schließt den Ansitz.
advice-not-weighed-detail = Noch nicht gewogen: { $nets }. ENDE schließt den Ansitz.
advice-left-open = Noch offen seit { $date }.
advice-left-open-detail = ENDE schließt den Ansitz, danach eröffnet BEGINN einen neuen.
advice-fish-on = Fisch dran.
advice-fish-on-detail = Jetzt muss nichts getippt werden.
advice-look = { $leave } min sind länger, als die Bisse nahelegen: um zu erfahren, was später kommt.
advice-as-good-from = Ab { $hold } min ist eine Zeit etwa so gut wie die andere.
advice-none = Beginne einen Ansitz, um Würfe zu notieren.
advice-counts = { $casts ->
    [0] Noch kein Wurf beendet
   *[other] { $bites ->
        [0] Kein Biss
        [one] 1 Biss
       *[other] { $bites } Bisse
    } in { $casts ->
        [one] 1 Wurf
       *[other] { $casts } Würfen
    }
}
advice-early = Bisher { advice-counts }.
advice-so-far = { advice-counts }.
advice-not-tried = Über { $minutes } min: nicht probiert.
advice-earlier = { $count ->
    [one] 1 früherer Ansitz von dir zählt mit.
   *[other] { $count } frühere Ansitze von dir zählen mit.
}
casts-not-seen = { $count ->
    [one] Das Ende von 1 Wurf wurde nicht gesehen: seine Wartezeit zählt nicht.
   *[other] Das Ende von { $count } Würfen wurde nicht gesehen: ihre Wartezeiten zählen nicht.
}
advice-window = Die Hälfte der Bisse wird zwischen { $from } und { $to } min erwartet.
advice-next-five = Chance auf einen Biss in den nächsten fünf Minuten: { $percent ->
    [0] unter 1
    [100] über 99
   *[other] { $percent }
} %.
advice-longer = So lange lag noch kein Wurf: dieser soll es zeigen.
advice-lost = Die Zeiten, die du deine Köder draußen lässt, kosten etwa { $percent } % der Bisse.
advice-guess = Nimmt { $minutes } min zwischen Würfen an, bis drei gemessen sind.

strip-spoken = { $elapsed ->
    [none] Nichts draußen.
   *[other] Seit { $elapsed } min draußen.
} { $headline } { $bites ->
    [0] Noch kein Biss.
    [one] Bisher ein Biss.
   *[other] Bisher { $bites } Bisse.
}

spot-none = Stelle offen
spot-wraps = { $wraps } Wicklungen à { $span } ({ $metres } m)
spot-metres = { $metres } m
spot-yards = { $yards } yd ({ $metres } m)
spot-at = { $where }, { $reach }
spot-straight = Geradeaus
spot-left = { $degrees }° links
spot-right = { $degrees }° rechts
span-ft = { $feet } ft
span-m = { $metres } m
clipped = im Clip
rig-none = Montage offen
rig-hooklength = Vorfach { $length }
rig-hook = Haken { $size }
rig-popup = Pop-up { $length }
rig-lead-oz = { $ounces } oz
rig-lead-g = { $grams } g

notice-late = { $what } notiert, und der Biss { $seconds ->
    [one] 1 s
   *[other] { $seconds } s
} davor: ungefähr.
notice-repeat = Zweites Tippen ignoriert.
notice-logged = { $what } notiert.
notice-logged-alone = Notiert. Eine Übersicht oder Sicherung danach schlug fehl: tippe PROTOKOLL PRÜFEN unter Dateien.
notice-undone = { $what } storniert.
notice-redone = { $what } ist wieder da.
notice-time = { $what }: Zeit zurückgesetzt.

# Was zu tun ist, wenn die Minute der Überschrift da ist, wo die Stellen es sagen.
spots-here = { $casts ->
    [0] Beißt bis dahin nichts, ist an etwa { $here } von 100 solchen Stellen Fisch
    [one] Hier nichts in { $minutes } min vor diesem Wurf. Beißt bis dahin nichts, ist an etwa { $here } von 100 solchen Stellen Fisch
   *[other] Hier nichts in { $minutes } min bei { $casts } Würfen vor diesem. Beißt bis dahin nichts, ist an etwa { $here } von 100 solchen Stellen Fisch
}
spots-elsewhere = { $casts ->
    [0] An etwa { $here } von 100 solchen Stellen ist Fisch. An der anderen Stelle sind es etwa { $there } von 100.
    [one] Hier nichts in { $minutes } min. An etwa { $here } von 100 solchen Stellen ist Fisch. An der anderen Stelle sind es etwa { $there } von 100.
   *[other] Hier nichts in { $minutes } min bei { $casts } Würfen. An etwa { $here } von 100 solchen Stellen ist Fisch. An der anderen Stelle sind es etwa { $there } von 100.
}
spots-recast = Dann wirf hier neu. { spots-here }.
spots-move = Dann wechsle zu { $where }. { spots-here }. An der anderen Stelle sind es etwa { $there } von 100.
