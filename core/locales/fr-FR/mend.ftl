# Revoir : les notes douteuses.

mend-title = À revoir
mend-title-of = À revoir : { $day }
mend-says = { $count ->
    [0] Rien de douteux dans cette sortie.
    [one] { $count } note à regarder.
    *[other] { $count } notes à regarder.
  }
mend-settled = C'est fait. ANNULER, au bord de l'eau, le rétablit.
mend-of-cast = { $entry }, { $minutes } min après le lancer de { $time }
mend-keep = GARDER
mend-keep-it = c'est juste
mend-added = Oublié
mend-added-it = il manque un lancer
mend-away = Pause
mend-away-it = j'étais parti
mend-remove = RETIRER
mend-remove-it = c'est une erreur
mend-end = Ce qui l'a fini
mend-not-seen = pas vu
mend-after = Après
mend-after-how = De l'impact à la touche, sinon au retour du fil.
mend-back = RECULER DE
mend-back-how = Par rapport à l'appui.
mend-back-last = à { $time }, la dernière note
mend-minutes = { $minutes } min
doubt-end-not-seen = Sa fin n'a pas été vue : le lancer suivant l'a clos.
doubt-outcome-not-seen = La suite de la touche n'est pas notée.
doubt-nothing-out = Rien n'était à l'eau.
doubt-no-fish-on = Il n'y avait pas de touche avant.
doubt-second-bite = Une deuxième touche avec un poisson au bout.
doubt-outside-session = Avant le début de la sortie, ou après sa fin.
doubt-back-in-time = Son heure précède celle de la note d'avant.
doubt-clock-moved = L'horloge du téléphone a été changée avant.
doubt-approximate = Son heure est approximative.
doubt-long-gap = Un long vide avant : il manque peut-être un lancer.
doubt-still-out = Encore à l'eau à la fin de la sortie, bien après la dernière note : l'appât était peut-être rentré avant.
doubt-late-end = Bien après la dernière note : FIN a-t-elle été touchée trop tard ?
doubt-no-break = De retour aux cannes, sans pause notée.
doubt-no-landing = Poids ou bourriche d'un poisson qui n'est plus pris.
doubt-newer = Écrit par une version plus récente : mettez à jour pour le lire.
