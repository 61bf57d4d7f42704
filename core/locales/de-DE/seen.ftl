# Fische, die sich zeigen, ohne Biss.

seen-at-spot = Fisch zeigt sich an der Stelle
seen-at-aim = Fisch zeigt sich am Ziel auf der Karte
seen-what = Was war zu sehen?
seen-ago = { $what }, { ago }.
seen-rolled = GEROLLT
seen-rolled-sub = oder Sprung
seen-rolled-spoken = Ein Fisch rollte oder sprang.
seen-rolled-words = ein Fisch rollte
seen-bubbles = BLASEN
seen-bubbles-sub = stiegen auf
seen-bubbles-spoken = Blasen stiegen auf.
seen-bubbles-words = Blasen
seen-topping = STEIGT
seen-topping-sub = an der Fläche
seen-topping-spoken = Fische nahmen etwas von der Oberfläche.
seen-topping-words = steigende Fische
seen-map = Karte
seen-map-sub = Ziel anderswo
seen-map-spoken = Die Karte öffnen, um anderswohin zu zielen.
notice-seen = Notiert: { $what }.
notice-seen-at = Notiert: { $what }. { $place }.
entry-fish_shown = Fisch gezeigt

# Ein Fisch, den ein Nachbar fing.
key-neighbour-left = LINKS
key-neighbour-left-sub = fing einen
key-neighbour-left-spoken = Der Angler links hat einen Fisch gelandet.
key-neighbour-right = RECHTS
key-neighbour-right-sub = fing einen
key-neighbour-right-spoken = Der Angler rechts hat einen Fisch gelandet.
key-neighbour-across = DRÜBEN
key-neighbour-across-sub = fing einen
key-neighbour-across-spoken = Der Angler am anderen Ufer hat einen Fisch gelandet.
neighbour-left-words = ein Fisch links
neighbour-right-words = ein Fisch rechts
neighbour-across-words = ein Fisch am anderen Ufer
entry-neighbour_caught = Fisch des Nachbarn
beside-cant-tell = Du oder der See? Noch nicht zu sagen.
beside-they = Sie fangen mehr als du: Am See allein liegt es nicht.
beside-me = Du fängst mehr, als du sie fangen siehst.
beside-alike = Du fängst etwa wie sie: Eher liegt es am See.
beside-counts = In { $minutes } min, seit { $since }{ $away ->
    [0] {""}
   *[other] {" "}ohne die { $away } min Pause
}: Du hast { $mine } gelandet und { $neighbours ->
    [one] den Nachbarn
   *[other] { $neighbours } Nachbarn
} { $theirs } landen sehen.
beside-caution = Der erste Fisch eines jeden beginnt nur die Zählung. Du siehst nicht alles, was sie fangen, und kein Platz ist wie der andere.
