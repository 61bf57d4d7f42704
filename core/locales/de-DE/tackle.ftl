# Einen Ansitz einrichten, und das Gerät einer Rute.

setup-title = Neuer Ansitz
setup-water = Gewässer
setup-water-how = Schon befischt, das letzte zuerst
setup-peg = Platz
setup-depth = Wassertiefe
setup-span = Abstand der Stäbe
setup-rods = Ruten
setup-unknown = unbekannt
setup-metres = { $metres } m

tackle-title = { $rod }: nächster Wurf
tackle-bait = Köder
tackle-colour = Farbe
tackle-popup = Pop-up-Höhe
tackle-hooklength = Vorfach
tackle-hook = Hakengröße
tackle-lead = Blei
tackle-reach = Weite
tackle-bearing = Richtung
tackle-clip = Clip
tackle-g = { $grams } g
tackle-wrap = 1 Wicklung
tackle-wraps = { $wraps } Wicklungen
tackle-clip-on = im Clip
tackle-clip-off = frei
tackle-none = keine
tackle-less = weniger
tackle-more = mehr
tackle-left = links
tackle-right = rechts
source-common = üblich, ohne Quelle
bait-bread = Brot
bait-corn = Mais
bait-maggot = Made
bait-pellet = Pellet
bait-worm = Wurm
colour-white = weiß
colour-yellow = gelb
colour-pink = rosa
colour-red = rot
colour-brown = braun
setup-settle = Absinken
setup-settle-none = keins
setup-settle-seconds = { $count } s
setup-settle-minutes = { $count } min
setup-twitch = Anzupfen beginnt die Wartezeit neu
setup-twitch-on = ja
setup-twitch-off = nein
setup-twitch-how = Jede Wartezeit, die ein Anzupfen beendet, zählt dann als eine ohne Biss
setup-draw = Platz ziehen
setup-draw-how = Die gezogene Nummer, je Tippen eine Ziffer
setup-draw-none = nicht gezogen
setup-draw-clear = löschen
setup-copy = Letzten Ansitz kopieren
setup-copy-none = nein
setup-copy-how = Kopiert Einrichtung und Montagen, am selben Platz auch Stellen und Marken
setup-pack = Packen
setup-packed = { $packed } von { $all } gepackt
setup-pack-how = Tippe an, was gepackt ist.
pack-rods = { $count ->
    [one] 1 Rute
   *[other] { $count } Ruten
}
pack-named = { $count } × { $name }
pack-shot = Schrot: { $count } × { $name }
pack-leads = { $count } × Blei { $name }
pack-bait = { $name }
pack-sticks = Distanzstäbe
pack-landing-net = Kescher
pack-mat = Abhakmatte
pack-disgorger = Zange oder Hakenlöser
pack-keepnets = { $count ->
    [one] 1 Setzkescher
   *[other] { $count } Setzkescher
}
pack-licence = Fischereischein, Erlaubniskarte
pack-phone = Handy, geladen
pack-light = eine Lampe
pack-dry-clothes = trockene Kleidung, Handschuhe
pack-first-aid = Verbandszeug
tackle-feeder = Futterkorb, Füllung
tackle-feeder-none = nur Blei
tackle-material = Metall
tackle-material-lead = Blei
tackle-material-non_toxic = anderes Metall
tackle-hooklength_lost = Vorfach verloren
tackle-lost-count = { $count ->
    [0] in diesem Ansitz keins
   *[other] in diesem Ansitz { $count }
}
tackle-lost-now = beim letzten Wurf
tackle-lost-how = Wird aus der Mappe auf der Werkbank genommen
tackle-if-lead = Falls es Blei ist:
