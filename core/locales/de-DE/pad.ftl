# Tasten, die mehrere Bildschirme haben, neben den eigenen.
pad-keys = MEHR
pad-keys-spoken = Weitere Tasten

pad-screens = Seiten
pad-screens-spoken = Alle Seiten.
pad-more = MEHR
pad-page = { $page } von { $pages }
pad-more-spoken = Seite { $page } von { $pages }. Blättert zur nächsten.
pad-swim = Karte
pad-swim-spoken = Die Karte des Platzes. Wohin die Würfe gingen und was daraus wurde.
pad-further = Marken
pad-further-spoken = Auf der Karte: Marken, Streifen, Strukturen, Gefahren, die Liste, die Lage des Platzes.
pad-back = ZURÜCK
pad-back-spoken = Zurück ans Ufer.
pad-mend = PRÜFEN
pad-mend-spoken = Prüfen. Zweifelhafte Einträge.
