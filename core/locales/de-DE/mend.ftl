# Prüfen: zweifelhafte Einträge.

mend-title = Zu prüfen
mend-title-of = Zu prüfen: { $day }
mend-says = { $count ->
    [0] Nichts Zweifelhaftes in diesem Ansitz.
    [one] 1 Eintrag anzusehen.
    *[other] { $count } Einträge anzusehen.
  }
mend-settled = Erledigt. STORNO am Ufer holt es zurück.
mend-of-cast = { $entry }, { $minutes } min nach dem Wurf um { $time }
mend-keep = SO LASSEN
mend-keep-it = es stimmt
mend-added = Vergessen
mend-added-it = ein Wurf fehlt
mend-away = Pause
mend-away-it = ich war weg
mend-remove = ENTFERNEN
mend-remove-it = war nicht so
mend-end = Was ihn beendete
mend-not-seen = nicht gesehen
mend-after = Nach
mend-after-how = Vom Einschlag bis zum Biss, sonst bis zum Einholen.
mend-back = ZURÜCK UM
mend-back-how = Gegenüber dem Tippen.
mend-back-last = auf { $time }, den letzten Eintrag
mend-minutes = { $minutes } min
doubt-end-not-seen = Sein Ende wurde nicht gesehen: der nächste Wurf schloss ihn.
doubt-outcome-not-seen = Was aus dem Biss wurde, ist nicht notiert.
doubt-nothing-out = Da war nichts draußen.
doubt-no-fish-on = Davor gab es keinen Biss.
doubt-second-bite = Ein zweiter Biss, während ein Fisch dran war.
doubt-outside-session = Bevor der Ansitz begann oder nachdem er endete.
doubt-back-in-time = Seine Zeit liegt vor der des Eintrags davor.
doubt-clock-moved = Davor wurde die Uhr des Handys verstellt.
doubt-approximate = Seine Zeit ist ungefähr.
doubt-long-gap = Eine lange Lücke davor: vielleicht fehlt ein Wurf.
doubt-still-out = Noch draußen, als der Ansitz endete, lange nach dem letzten Eintrag: vielleicht war der Köder schon eher drin.
doubt-late-end = Lange nach dem letzten Eintrag: kam ENDE zu spät?
doubt-no-break = Wieder an den Ruten, ohne dass eine Pause notiert ist.
doubt-no-landing = Gewicht oder Netz für einen Fisch, der nicht mehr gelandet ist.
doubt-newer = Von einer neueren Version: aktualisiere, um es zu lesen.
