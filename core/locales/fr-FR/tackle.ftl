# Préparer une sortie, et le matériel d'une canne.

setup-title = Nouvelle sortie
setup-water = Plan d'eau
setup-water-how = Déjà pêchés, le dernier d'abord
setup-peg = Place
setup-depth = Fond
setup-span = Écart des piquets
setup-rods = Cannes
setup-unknown = inconnu
setup-metres = { $metres } m

tackle-title = { $rod } : prochain lancer
tackle-bait = Appât
tackle-colour = Couleur
tackle-popup = Hauteur pop-up
tackle-hooklength = Bas de ligne
tackle-hook = Hameçon
tackle-lead = Plomb
tackle-reach = Distance
tackle-bearing = Direction
tackle-clip = Clip
tackle-g = { $grams } g
tackle-wrap = 1 tour
tackle-wraps = { $wraps } tours
tackle-clip-on = au clip
tackle-clip-off = libre
tackle-none = aucun
tackle-less = moins
tackle-more = plus
tackle-left = gauche
tackle-right = droite
source-common = usage courant, sans source
bait-bread = pain
bait-corn = maïs
bait-maggot = asticot
bait-pellet = pellet
bait-worm = ver
colour-white = blanc
colour-yellow = jaune
colour-pink = rose
colour-red = rouge
colour-brown = brun
setup-settle = Descente
setup-settle-none = aucune
setup-settle-seconds = { $count } s
setup-settle-minutes = { $count } min
setup-twitch = Une tirette relance l'attente
setup-twitch-on = oui
setup-twitch-off = non
setup-twitch-how = Chaque attente finie par une tirette compte alors comme sans touche
setup-draw = Tirer une place
setup-draw-how = Le numéro tiré, un chiffre par appui
setup-draw-none = pas tirée
setup-draw-clear = effacer
setup-copy = Copier la dernière sortie
setup-copy-none = non
setup-copy-how = Copie réglages et montages, et à la même place points et repères
setup-pack = Le sac
setup-packed = { $packed } sur { $all } dans le sac
setup-pack-how = Touchez ce qui est dans le sac.
pack-rods = { $count ->
    [one] { $count } canne
   *[other] { $count } cannes
}
pack-named = { $count } × { $name }
pack-shot = cendrée : { $count } × { $name }
pack-leads = { $count } × plomb { $name }
pack-bait = { $name }
pack-sticks = piquets de distance
pack-landing-net = épuisette
pack-mat = tapis de réception
pack-disgorger = pince ou dégorgeoir
pack-keepnets = { $count ->
    [one] { $count } bourriche
   *[other] { $count } bourriches
}
pack-licence = permis et carte de pêche
pack-phone = téléphone, chargé
pack-light = une lampe
pack-dry-clothes = habits secs, gants
pack-first-aid = trousse de secours
tackle-feeder = Cage, remplie de
tackle-feeder-none = plomb seul
tackle-material = Métal
tackle-material-lead = plomb
tackle-material-non_toxic = autre métal
tackle-hooklength_lost = Bas de ligne perdu
tackle-lost-count = { $count ->
    [0] aucun pendant cette sortie
   *[other] { $count } pendant cette sortie
}
tackle-lost-now = au dernier lancer
tackle-lost-how = Retiré de la pochette sur l'établi
tackle-if-lead = Si c'est du plomb :
