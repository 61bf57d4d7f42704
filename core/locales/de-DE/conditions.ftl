# Bedingungen mit wenigem Tippen, und der Bildschirm um die Hinweise.

conditions-now-title = Wetter
conditions-no-session = Beginne einen Ansitz, um Bedingungen zu notieren.
conditions-none = Noch nichts notiert.
conditions-as-logged = Wie notiert um { $time }.
conditions-how = Temperaturen mit Thermometer, wo du eins hast. Alles darf fehlen.
conditions-skip = OHNE
conditions-again = NEU
conditions-again-sub = es ist anders
conditions-ask-water = Wasser: wie kalt?
conditions-ask-air = Luft: wie kalt?
conditions-ask-wind = Wie stark ist der Wind?
conditions-ask-wind-from = Woher weht der Wind?
conditions-ask-cloud = Wie viel vom Himmel ist bedeckt?
conditions-ask-colour = Farbe des Wassers?
conditions-water = Wasser
conditions-air = Luft
conditions-wind = Wind
conditions-wind-from = Aus
conditions-cloud = Wolken
conditions-colour = Farbe
# Dasselbe in einem Satz.
conditions-in-water = Wasser { $value }
conditions-in-air = Luft { $value }
conditions-in-wind = Wind { $value }
conditions-in-wind-from = aus { $value }
conditions-in-cloud = Wolken { $value }
conditions-in-colour = Farbe { $value }
wind-calm = still
wind-light = leicht
wind-moderate = mäßig
wind-fresh = frisch
wind-strong = stark
wind-gale = Sturm
from-n = Nord
from-ne = Nordost
from-e = Ost
from-se = Südost
from-s = Süd
from-sw = Südwest
from-w = West
from-nw = Nordwest
cloud-oktas = { $oktas ->
    [0] klar
    [8] bedeckt
   *[other] { $oktas } Achtel
}
water-clear = klar
water-tinged = angetrübt
water-coloured = trüb
water-muddy = schlammig

cautions-list-title = Hinweise
cautions-says = { $count ->
    [0] Alle gelesen für { $peg }. Sie bleiben hier.
    [one] 1 zu lesen für { $peg }.
   *[other] { $count } zu lesen für { $peg }.
}
cautions-says-no-peg = { $count ->
    [0] Alle gelesen. Sie bleiben hier und erscheinen einmal für jeden Platz.
    [one] 1 Hinweis zu lesen. Er erscheint einmal für jeden Platz: nenne den Platz.
   *[other] { $count } Hinweise zu lesen. Sie erscheinen einmal für jeden Platz: nenne den Platz.
}
cautions-reviewed = Alle Texte zuletzt durchgesehen: { $month }.
cautions-key-all = ALLE GELESEN
cautions-key-all-sub = an diesem Platz
cautions-key-seen = GELESEN
cautions-key-seen-sub = an diesem Platz
cautions-key-next = NÄCHSTER
cautions-new = zu lesen
cautions-seen = gelesen
cautions-to-read = zum Nachlesen
cautions-authority = Quelle
cautions-region = Gebiet
cautions-text = Der Text
cautions-everywhere = überall
cautions-row-region = Wo
cautions-region-how = Das Land, in dem das Gewässer liegt
region-england = England
region-wales = Wales
region-scotland = Schottland
region-northern-ireland = Nordirland
region-elsewhere = anderswo
notice-cautions = { $what } notiert. { $count ->
    [one] 1 Hinweis für diesen Platz ist neu
   *[other] { $count } Hinweise für diesen Platz sind neu
}: Seiten, Hinweise.
setup-cautions = Hinweise
setup-cautions-sub = { $count ->
    [0] hier alle gesehen
    [one] 1 neuer hier
   *[other] { $count } neue hier
}
