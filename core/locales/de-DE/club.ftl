# Der Anfang eines Vereins für den Rat.

club = Verein
club-leave = VEREIN VERLASSEN
club-says = Der Rat beginnt mit { $days ->
    [one] 1 Tag
    *[other] { $days } Tagen
  } von { $anglers ->
    [one] 1 Angler
    *[other] { $anglers } Anglern
  } an { $waters ->
    [one] 1 Gewässer
    *[other] { $waters } Gewässern
  }.
club-unused = Der Anfang dieses Vereins gehört zu einer anderen Version der App und wird nicht verwendet.
club-made-of = Der Anfang eines Vereins für den Rat, aus den Tagen seiner Angler. Er enthält keine Würfe und keine Namen von Anglern.
club-waters = Gewässer mit einem eigenen Anfang: { $waters }.
club-casts = Deine eigenen Würfe zählen wie bisher, und je mehr es sind, desto weniger zählt der Anfang. Ist dein Gewässer anders als die des Vereins, zeigen das wenige Würfe.
club-known = Er wird schon verwendet.
club-replaces = Er ersetzt den Anfang eines anderen Vereins, der jetzt verwendet wird.
club-back = STORNO nimmt ihn zurück. Ohne Verein weiter geht es mit VEREIN VERLASSEN unter Dateien.
club-figures = Womit der Rat beginnt
club-here-all = Der Anfang für heute kommt aus allen Tagen, denn kein Gewässer, keine Temperatur und kein Monat darunter passt zu heute.
club-here-water = Der Anfang für heute kommt von denen an: { $water } ({ $days }).
club-here-month = Der Anfang für heute kommt von denen im Monat { $month } ({ $days }).
club-here-temperature = Der Anfang für heute kommt von denen mit Wasser von { $from } bis { $until } °C ({ $days }).
club-own = { $percent } % des Anfangs bleiben, wie sie ohne Verein sind.
entry-club_taken = Anfang des Vereins
entry-club_left = Verein verlassen
error-no-club = Es wird noch kein Anfang eines Vereins verwendet: lies zuerst die Datei eines Vereins ein.
error-club-older = Die Datei dieses Vereins gehört zu einer älteren Version der App. Lass dir eine neue geben.
error-club-damaged = Die Datei dieses Vereins ist beschädigt. Lass sie dir noch einmal geben. Nichts wurde geändert.
error-club-weights = Die Gewichtung in der Datei dieses Vereins ist unbrauchbar. Lass dir eine neue geben. Nichts wurde geändert.
error-club-few = Die Datei dieses Vereins enthält eine Gewichtung aus weniger als fünf Anglern ({ $detail }). Lass dir eine mit mindestens fünf an jedem Gewässer geben. Nichts wurde geändert.
error-club-large = Die Datei dieses Vereins ist größer, als eine solche sein kann. Lass dir eine neue geben. Nichts wurde geändert.
files-form-club = Tabelle der Tage für einen Verein
files-says-club = Eine Tabelle (.csv), die für jeden Tag sagt, wie gut jedes Muster von Bissen zu seinen Würfen passt. Aus den Tabellen vieler Angler macht ein Verein einen Anfang für den Rat. Sie enthält die Namen der Gewässer und keine Würfe.
files-made-club = { $count ->
    [one] 1 Tag
    *[other] { $count } Tage
  }
