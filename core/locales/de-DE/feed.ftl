# Futter von Hand, und der Korb, der mit jedem Wurf füttert. Gewichte der Maße sind Schätzungen des Anglers.

feed-no-session = Kein Ansitz ist offen
feed-at-spot = Füttern an der Stelle
feed-at-rod = Füttern an der Stelle von Rute { $rod }
feed-at-aim = Füttern am Ziel auf der Karte
aim-none = Auf der Karte ist noch kein Feld gewählt.
# Wie lange her, wo immer es gesagt wird.
ago = { $minutes ->
    [0] gerade eben
   *[other] vor { $minutes } min
}
feed-here = Gefüttert { ago }, hier in diesem Ansitz { $weight }.
# Am Ufer hinter der Stelle, wo der Platz knapp ist.
feed-bank = Gefüttert { ago }, insgesamt { $weight }.
feed-none-here = Hier noch nicht gefüttert.
feed-guesses = Gewichte sind Schätzungen: ändere sie unter Handy.
feed-way-handful = { $count ->
    [one] HANDVOLL
   *[other] { $count } HANDVOLL
}
feed-way-pinch = { $count ->
    [one] PRISE
   *[other] { $count } PRISEN
}
feed-way-cup = { $count ->
    [one] BECHER
   *[other] { $count } BECHER
}
feed-way-ball = { $count ->
    [one] BALLEN
   *[other] { $count } BALLEN
}
feed-way-bag = { $count ->
    [one] BEUTEL
   *[other] { $count } BEUTEL
}
feed-way-feeder = { $count ->
    [one] KORB
   *[other] { $count } KÖRBE
}
feed-way-spod = { $count ->
    [one] RAKETE
   *[other] { $count } RAKETEN
}
feed-way-loose = lose, je { $weight }
feed-way-about = je etwa { $weight }
feed-way-spoken = Füttern: { $what }.
feed-words-handful = { $count ->
    [one] eine Handvoll, lose
   *[other] { $count } Handvoll, lose
}
feed-words-pinch = { $count ->
    [one] eine Prise, lose
   *[other] { $count } Prisen, lose
}
feed-words-cup = { $count ->
    [one] ein Becher, lose
   *[other] { $count } Becher, lose
}
feed-words-ball = { $count ->
    [one] ein Ballen
   *[other] { $count } Ballen
}
feed-words-bag = { $count ->
    [one] ein Beutel
   *[other] { $count } Beutel
}
feed-words-feeder = { $count ->
    [one] ein Korb
   *[other] { $count } Körbe
}
feed-words-spod = { $count ->
    [one] eine Rakete
   *[other] { $count } Raketen
}
feed-by-weight-words = { $weight }, { $kind }
feed-kind-loose = lose
feed-kind-ball = Ballen
feed-kind-bag = Beutel
feed-kind-feeder = Korb
feed-kind-spod = Rakete
feed-kind = { $what }
feed-kind-sub = tippen: ändern
feed-kind-spoken = Es geht hinein als: { $what }. Ändern.
feed-count = { $count } ×
feed-count-sub = tippen: { $next }
feed-count-spoken = Die nächste Taste meint { $count }. Auf { $next } ändern.
feed-to-spot = STELLE
feed-to-spot-sub = tippen: Ziel
feed-to-spot-spoken = Es geht an die Stelle von Rute { $rod }. Auf das Ziel auf der Karte ändern.
feed-to-aim = ZIEL
feed-to-aim-sub = tippen: Stelle
feed-to-aim-spoken = Es geht an das Ziel auf der Karte. Auf die Stelle von Rute { $rod } ändern.
feed-each-cast = JEDER WURF
feed-each-cast-sub = Korb dran
feed-each-cast-spoken = An Rute { $rod } ist ein Futterkorb. Er füttert ab jetzt mit jedem Wurf.
feed-each-cast-on = JEDER WURF
feed-each-cast-on-sub = tippen: nur Blei
feed-each-cast-on-spoken = Der Korb an Rute { $rod } füttert { $weight } mit jedem Wurf. Auf bloßes Blei ändern.
feed-by-weight = NACH GEWICHT
feed-by-weight-sub = eine Zahl
feed-by-weight-spoken = Das Gewicht des Futters eingeben.
feed-clear = LÖSCHEN
feed-clear-sub = von vorn
feed-clear-spoken = Die Zahl löschen.
feed-grams = { $count } g
feed-ounces = { $count } oz
feed-weighed = FUTTER
feed-weighed-sub = { $weight }, { $what }
feed-weighed-spoken = Füttern: { $weight }, { $what }.
notice-fed = Gefüttert: { $what }.
notice-fed-at = Gefüttert: { $what }. { $place }.
entry-fed = Futter
entry-feeder_set = Futterkorb
