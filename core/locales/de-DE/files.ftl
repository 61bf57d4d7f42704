# Dateien hinein und hinaus, Sicherungen, und die Prüfung des Protokolls.

files-title = Dateien
files-form = Was
files-form-entries = Einträge für ein anderes Handy
files-form-report = Bericht zum Lesen oder Drucken
files-form-casts = Tabelle der Würfe
files-form-fish = Tabelle der Fische
files-form-sessions = Tabelle der Ansitze
files-form-map = die Karte des Platzes
files-span = Welche Ansitze
files-span-this = dieser Ansitz
files-span-days = { $days ->
    [one] heute
    *[other] die letzten { $days } Tage
  }
files-span-all = alles
files-place = Lage des Platzes
files-place-left_out = weggelassen
files-place-included = enthalten
files-place-how = Breite und Länge. Marken und Stellen werden auch ohne sie gesendet.
files-formulas = Formelzeichen
files-formulas-marked = mit ' markiert
files-formulas-as_typed = wie getippt
files-formulas-how = Eine Tabellenkalkulation rechnet Text, der mit =, +, - oder @ beginnt, als Formel; die Marke verhindert es.
files-says-entries = Eine Datei mit Einträgen (.restwater.json-seq), die ein anderes Handy einliest. Zweimal eingelesen ändert sie nichts.
files-says-report = Eine Seite (.html) mit Zahlen und Bildern des Ansitzes, die sich auch ohne diese App lesen lässt.
files-says-casts = Eine Tabelle (.csv) mit einer Zeile je Wurf und Einheiten im Kopf.
files-says-fish = Eine Tabelle (.csv) mit einer Zeile je gelandetem Fisch und Einheiten im Kopf.
files-says-sessions = Eine Tabelle (.csv) mit einer Zeile je Ansitz und Einheiten im Kopf.
files-says-map = Die Karte dieses Ansitzes (.geojson): Marken, Strukturen, Gefahren, Umriss. Ein anderes Handy kann sie einlesen; ein Kartenprogramm öffnet sie, wenn die Lage enthalten ist.
files-no-session = Kein Ansitz gewählt: nimm alles, oder beginne einen.
files-send = SENDEN
files-save = ABLEGEN
files-folder = ORDNER
files-take-in = EINLESEN
files-imports = Eingelesen
files-backups = Sicherungen
files-back-up = JETZT SICHERN
files-look-over = PROTOKOLL PRÜFEN
files-restore = HOLEN
files-none = Noch keine Datei eingelesen. Tippe ZURÜCK, dann EINLESEN: was eine Datei bringt, steht dann hier und lässt sich zurücknehmen.
files-no-backups = Noch keine Sicherung. Tippe JETZT SICHERN.
files-source = Von
files-unnamed = ohne Namen
files-stamp = { $day } { $time }
files-import = { $source }, { $when }: { $ops ->
    [one] 1 Eintrag
    *[other] { $ops } Einträge
  }
files-import-back = { $source }, { $when }: { $ops ->
    [one] 1 Eintrag
    *[other] { $ops } Einträge
  }, storniert
files-undo-import = EINLESEN STORNO
files-redo-import = NEU EINLESEN
files-import-undone = Alles Eingelesene ist storniert.
files-import-redone = Alles Eingelesene ist wieder da.
files-backed-up = Gesichert und geprüft: { $when }.
files-made-entries = { $count ->
    [one] 1 Eintrag
    *[other] { $count } Einträge
  }
files-made-report = Bericht über { $count ->
    [one] 1 Wurf
    *[other] { $count } Würfe
  }
files-made-casts = { $count ->
    [one] 1 Wurf
    *[other] { $count } Würfe
  }
files-made-fish = { $count ->
    [one] 1 Fisch
    *[other] { $count } Fische
  }
files-made-sessions = { $count ->
    [one] 1 Ansitz
    *[other] { $count } Ansitze
  }
files-made-map = { $count ->
    [0] Der Umriss des Platzes
    [one] Der Platz mit 1 Marke oder Struktur
    *[other] Der Platz mit { $count } Marken und Strukturen
  }

incoming-title = Einlesen
incoming-title-after = Eingelesen
incoming-sessions = { $count ->
    [one] 1 Ansitz
    *[other] { $count } Ansitzen
  }
incoming-new = { $count ->
    [0] Darin ist nichts Neues.
    [one] 1 neuer Eintrag in { $sessions }.
    *[other] { $count } neue Einträge in { $sessions }.
  }
incoming-new-after = { $count ->
    [0] Darin war nichts Neues.
    [one] 1 neuer Eintrag in { $sessions } ist im Protokoll. EINLESEN STORNO entfernt ihn.
    *[other] { $count } neue Einträge in { $sessions } sind im Protokoll. EINLESEN STORNO entfernt sie.
  }
incoming-kit = { $count ->
    [one] 1 neuer Eintrag, der zu keinem Ansitz gehört, etwa Gerät oder ein Plan.
    *[other] { $count } neue Einträge, die zu keinem Ansitz gehören, etwa Gerät oder ein Plan.
  }
incoming-kit-after = { $count ->
    [one] 1 neuer Eintrag, der zu keinem Ansitz gehört, etwa Gerät oder ein Plan, ist im Protokoll. EINLESEN STORNO entfernt ihn.
    *[other] { $count } neue Einträge, die zu keinem Ansitz gehören, etwa Gerät oder ein Plan, sind im Protokoll. EINLESEN STORNO entfernt sie.
  }
incoming-back = { $count ->
    [one] EINLESEN STORNO hat 1 Eintrag dieser Datei entfernt. EINLESEN bringt ihn zurück.
    *[other] EINLESEN STORNO hat { $count } Einträge dieser Datei entfernt. EINLESEN bringt sie zurück.
  }
incoming-back-after = { $count ->
    [one] 1 Eintrag, den EINLESEN STORNO entfernt hatte, ist wieder da.
    *[other] { $count } Einträge, die EINLESEN STORNO entfernt hatte, sind wieder da.
  }
incoming-mended = { $count ->
    [one] 1 Eintrag ist in deinem Protokoll beschädigt. EINLESEN stellt ihn wieder her.
    *[other] { $count } Einträge sind in deinem Protokoll beschädigt. EINLESEN stellt sie wieder her.
  }
incoming-mended-after = { $count ->
    [one] 1 Eintrag, der in deinem Protokoll beschädigt war, ist wieder heil.
    *[other] { $count } Einträge, die in deinem Protokoll beschädigt waren, sind wieder heil.
  }
incoming-known = { $count ->
    [one] 1 Eintrag ist schon hier.
    *[other] { $count } Einträge sind schon hier.
  }
incoming-amended = { $count ->
    [one] 1 der neuen berichtigt oder storniert einen anderen.
    *[other] { $count } der neuen berichtigen oder stornieren andere.
  }
incoming-newer = { $count ->
    [one] 1 ist von einer neueren Version: er bleibt, wird weitergegeben und gelesen, sobald die App aktualisiert ist.
    *[other] { $count } sind von einer neueren Version: sie bleiben, werden weitergegeben und gelesen, sobald die App aktualisiert ist.
  }
incoming-clashes = { $count ->
    [one] 1 Eintrag weicht von deinem ab. Deiner bleibt.
    *[other] { $count } Einträge weichen von deinen ab. Deine bleiben.
  }
incoming-damaged = { $count ->
    [one] 1 Datensatz ist beschädigt und fällt weg.
    *[other] { $count } Datensätze sind beschädigt und fallen weg.
  }
incoming-first-fault = Der erste Fehler: { $place }.
incoming-cut = Das Ende der Datei fehlt: lass sie dir noch einmal geben. Was heil ist, kann eingelesen werden.
incoming-differs = Die Datei sagt, sie hatte { $count ->
    [one] 1 Eintrag
    *[other] { $count } Einträge
  }: es fehlen welche, lass sie dir noch einmal geben.
incoming-clock-ahead = Die Uhr eines Handys geht { $count } min vor gegenüber diesem. Seine Zeiten bleiben, wie sie sind.
incoming-clock-back = Die Uhr eines Handys wurde { $count } min zurückgestellt. Seine Zeiten bleiben, wie sie sind.
incoming-map-undo = Einmal STORNO tippen entfernt es.
incoming-map-adds = Dazu kommt: { $what }.
incoming-map-already = Schon hier: { $what }.
incoming-map-skipped = Nicht brauchbar: { $what }.
incoming-take = EINLESEN
incoming-leave = NICHT EINLESEN
incoming-done = FERTIG

check-clean = Alles in Ordnung: { $ops ->
    [one] 1 Eintrag
    *[other] { $ops } Einträge
  }, jeder wie geschrieben.
check-repaired = { $ops ->
    [one] 1 Eintrag
    *[other] { $ops } Einträge
  }, jeder wie geschrieben. { $count ->
    [one] 1 Übersicht passte nicht dazu und wurde neu gebildet.
    *[other] { $count } Übersichten passten nicht dazu und wurden neu gebildet.
  }
check-without = Eine Übersicht davon ließ sich nicht speichern oder lesen ({ $why }); die App geht auch so. Schaff Platz und prüfe noch einmal.
check-damaged = { $count ->
    [one] 1 Eintrag ist beschädigt
   *[other] { $count } Einträge sind beschädigt
} und { $ops ->
    [one] 1 ist
   *[other] { $ops } sind
} heil. Hol die letzte Sicherung zurück oder lies eine Datei von einem anderen Handy ein.
check-file-damaged = Die Datei des Protokolls ist beschädigt, { $ops ->
    [one] ihr Eintrag ist
    *[other] ihre { $ops } Einträge sind
  } noch lesbar. Gib alles als Einträge weiter, damit eine Kopie sicher ist.
salvage = { $saved ->
    [one] 1 Eintrag gerettet
    *[other] { $saved } Einträge gerettet
  }, { $lost } verloren. Das beschädigte Protokoll bleibt als { $aside }.
salvage-unknown = { $saved ->
    [one] 1 Eintrag gerettet
    *[other] { $saved } Einträge gerettet
  }; wie viele verloren sind, ist unbekannt. Das beschädigte Protokoll bleibt als { $aside }.
