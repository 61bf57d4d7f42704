# Jeder Fehler sagt, was als Nächstes zu tun ist.

error-no-session = Kein Ansitz ist offen. Beginne erst einen.
error-session-open = Ein Ansitz ist schon offen. Beende ihn erst.
error-no-such-rod = Es gibt keine Rute { $rod }. Dieser Ansitz hat { $rods }.
error-rod-count = Ein Ansitz hat 1 bis 9 Ruten, nicht { $rods }.
error-nothing-out = An Rute { $rod } ist nichts draußen. Tippe WURF, wenn das Blei aufs Wasser trifft.
error-fish-on = An Rute { $rod } ist ein Fisch. Tippe erst LANDUNG, VERLUST oder FEHLBISS.
error-no-fish-on = An Rute { $rod } ist kein Fisch. Tippe erst BISS.
error-rod-out = Rute { $rod } ist draußen. Hol ein, bevor du Pause machst.
error-rod-was-out = Rute { $rod } war in dieser Lücke draußen. In einer Pause sind alle Ruten drin.
error-away-already = Du machst schon Pause. Tippe erst BIN DA.
error-not-away = Du machst keine Pause. Tippe erst PAUSE.
error-nothing-fed = Noch nichts gefüttert. Wähle erst, was gefüttert wird.
error-no-test = Kein Test läuft. Beginne einen bei einer Änderung unter „Wechsel“.
error-test-complete = Der Test ist fertig. Beende ihn oder beginne einen neuen.
error-nothing-to-undo = Es gibt nichts zu stornieren.
error-nothing-to-redo = Es gibt nichts wiederherzustellen.
error-nothing-to-set-back = Noch keine Zeit zum Zurücksetzen. Notiere erst etwas.
error-before-earlier = Das läge vor dem Eintrag um { $time }. Storniere erst jenen oder setz weniger zurück.
error-before-session = Der Ansitz davor endete um { $time }. Weiter als bis dahin lässt sich der Beginn nicht zurücksetzen.
error-unknown-choice = „{ $value }“ geht hier nicht. Wähle einen der angebotenen Werte.
error-too-long = Das ist zu lang: { $count } Zeichen, höchstens { $most }.
error-damaged = Das Protokoll auf diesem Handy ist beschädigt. Nichts wurde geändert. Hol eine Sicherung zurück oder rette, was zu retten ist.
error-newer = Dieses Protokoll stammt von einer neueren Version ({ $found }; diese liest bis { $known }). Aktualisiere die App.
error-foreign = Diese Datei ist kein Restwater-Protokoll. Nichts wurde geändert. Wähle einen anderen Ordner.
error-read-only = Restwater kann in diesen Ordner nicht schreiben. Erlaube es oder wähle einen anderen.
error-busy = Ein anderes Programm hat das Protokoll offen. Schließ es und versuch es noch einmal.
error-no-space = Auf dem Handy ist kein Platz mehr. Schaff welchen und tippe noch einmal: der letzte Eintrag wurde nicht gespeichert.
error-io = Das Handy konnte nicht schreiben ({ $detail }). Der letzte Eintrag wurde nicht gespeichert: tippe noch einmal.
error-internal = In Restwater ging etwas schief ({ $detail }). Nichts ging verloren. Tippe noch einmal.
error-broken = Ein Fehler in Restwater. Nichts ist verloren: App schließen und wieder öffnen.
error-clock-range = Die Uhr des Handys liegt außerhalb des Bereichs. Stell sie und tippe noch einmal.
error-no-cell = Dafür ist kein Feld gewählt. Wähle erst eines auf der Karte.
error-earlier-shown = Das ist die Karte zu einem früheren Zeitpunkt. Tippe erst JETZT.
error-nothing-typed = Gib erst einen Namen ein, dann wähle, wofür er ist.
error-no-such-caution = Dieser Hinweis war schon als gelesen markiert. Öffne die Liste noch einmal.
error-another-day = Das Buch zeigt einen anderen Tag. Tippe erst FERTIG.
error-not-of-that-entry = Das lässt sich an diesem Eintrag nicht korrigieren. Öffne ihn noch einmal aus der Liste.
error-empty-text = Nichts ist eingegeben. Gib erst ein paar Worte ein.
error-no-peg-note = „{ $value }“ nennt nicht Platz und Vorhaben. Gib beides ein, etwa 14: Brot zur Insel.
error-no-time = „{ $value }“ ist keine Zeit. Gib sie ein wie 12:30, oder Minuten nach dem Start wie 90.
error-no-plan = Für heute gibt es keinen Plan. Schreib einen auf der Werkbank.
error-no-length = „{ $value }“ ist keine Länge. Gib Zahl und Einheit ein, etwa 18 in, 45 cm oder 2,5 m.
error-no-weight = „{ $value }“ ist kein Gewicht. Gib Zahl und Einheit ein, etwa 30 g oder 1 oz.
error-no-latitude = { $typed ->
    [0] Keine Breite eingegeben. Gib Grad Nord ein, etwa 52,1234 oder 52 7 24; S für Süd.
   *[other] „{ $value }“ ist keine Breite. Gib Grad Nord ein, etwa 52,1234 oder 52 7 24; S für Süd.
}
error-no-longitude = { $typed ->
    [0] Keine Länge eingegeben. Gib Grad Ost ein, etwa 1,25 oder 1 15 0; W für West.
   *[other] „{ $value }“ ist keine Länge. Gib Grad Ost ein, etwa 1,25 oder 1 15 0; W für West.
}
error-no-bearing = { $typed ->
    [0] Keine Richtung eingegeben. Gib Grad im Uhrzeigersinn von Nord ein, 0 bis 360.
   *[other] „{ $value }“ ist keine Richtung. Gib Grad im Uhrzeigersinn von Nord ein, 0 bis 360.
}
error-not-op-file = Das ist keine Datei mit Restwater-Einträgen: { $detail }. Wähle eine, die auf .restwater.json-seq endet, oder eine Sicherung.
error-file-empty = sie ist leer
error-file-zip = sie ist ein ZIP-Archiv
error-file-database = sie ist eine Datenbank
error-file-json = sie ist anderes JSON
error-file-text = sie ist Text
error-file-other = sie ist etwas anderes
error-file-newer = Die Datei stammt von einer neueren Version: aktualisiere die App, dann lies sie ein.
error-file-header = Die Datei ist nicht lesbar ({ $detail }): lass sie dir noch einmal geben. Nichts wurde geändert.
error-file-too-many = Die Datei hat mehr als { $detail } Datensätze: lass dir einen Teil davon geben.
error-file-io = Beim Zugriff auf die Datei gab es einen Fehler ({ $detail }): versuch einen anderen Ort. Nichts wurde geändert.
error-cancelled = Abgebrochen. Nichts wurde geändert.
error-no-such-import = Diese eingelesene Datei ist nicht mehr da, oder das ist schon erledigt.
error-no-cast-yet = Mit Rute { $rod } wurde noch nicht geworfen, also kann daran kein Vorfach verloren sein.
error-lost-already = Das Vorfach des letzten Wurfs mit Rute { $rod } ist schon als verloren notiert. Wirf erst, oder storniere.
error-no-such-session = Dieser Ansitz ist nicht mehr im Buch. Wähle einen anderen.
error-no-such-entry = Einen solchen Eintrag hat dieser Ansitz nicht: öffne ihn aus der Liste.
