# Fische, die sich zeigen, ohne Biss.

seen-at-spot = Fisch zeigt sich an der Stelle
seen-at-aim = Fisch zeigt sich am Ziel auf der Karte
seen-what = Was war zu sehen?
seen-ago = { $what }, vor { $minutes } min.
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
entry-fish_shown = Fisch gezeigt
