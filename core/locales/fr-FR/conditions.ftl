# Les conditions en quelques appuis, et l'écran des consignes autour de ses cartes.

conditions-now-title = Météo
conditions-no-session = Commencez une sortie pour noter les conditions.
conditions-none = Rien n'est encore noté.
conditions-as-logged = Noté à { $time }.
conditions-how = Températures au thermomètre si vous en avez un. Tout peut rester vide.
conditions-skip = PASSER
conditions-again = REFAIRE
conditions-again-sub = ça a changé
conditions-ask-water = Température de l'eau ?
conditions-ask-air = Température de l'air ?
conditions-ask-wind = Force du vent ?
conditions-ask-wind-from = D'où vient le vent ?
conditions-ask-cloud = Quelle part du ciel est couverte ?
conditions-ask-colour = Couleur de l'eau ?
conditions-water = Eau
conditions-air = Air
conditions-wind = Vent
conditions-wind-from = Direction
conditions-cloud = Nuages
conditions-colour = Couleur
# Les mêmes en une phrase.
conditions-in-water = eau { $value }
conditions-in-air = air { $value }
conditions-in-wind = vent { $value }
conditions-in-wind-from = direction { $value }
conditions-in-cloud = nuages { $value }
conditions-in-colour = couleur { $value }
wind-calm = nul
wind-light = léger
wind-moderate = modéré
wind-fresh = frais
wind-strong = fort
wind-gale = tempête
from-n = nord
from-ne = nord-est
from-e = est
from-se = sud-est
from-s = sud
from-sw = sud-ouest
from-w = ouest
from-nw = nord-ouest
cloud-oktas = { $oktas ->
    [0] ciel clair
    [8] couvert
    [one] { $oktas } huitième
   *[other] { $oktas } huitièmes
}
water-clear = claire
water-tinged = teintée
water-coloured = trouble
water-muddy = boueuse

cautions-list-title = Consignes
cautions-says = { $count ->
    [0] Toutes lues pour { $peg }. Elles restent ici.
    [one] { $count } à lire pour { $peg }.
   *[other] { $count } à lire pour { $peg }.
}
cautions-says-no-peg = { $count ->
    [0] Toutes lues. Elles restent ici et s'affichent une fois par place.
    [one] { $count } consigne à lire. Elle s'affiche une fois par place : nommez la place.
   *[other] { $count } consignes à lire. Elles s'affichent une fois par place : nommez la place.
}
cautions-reviewed = Tous les textes revus pour la dernière fois en { $month }.
cautions-key-all = TOUT LU
cautions-key-all-sub = à cette place
cautions-key-seen = LU
cautions-key-seen-sub = à cette place
cautions-key-next = SUIVANTE
cautions-new = à lire
cautions-seen = lue
cautions-to-read = pour mémoire
cautions-authority = Autorité
cautions-region = Région
cautions-text = Le texte
cautions-everywhere = partout
cautions-row-region = Où
cautions-region-how = Le pays où se trouve le plan d'eau
region-england = Angleterre
region-wales = pays de Galles
region-scotland = Écosse
region-northern-ireland = Irlande du Nord
region-elsewhere = ailleurs
notice-cautions = Noté : { $what }. { $count ->
    [one] { $count } consigne nouvelle à cette place
   *[other] { $count } consignes nouvelles à cette place
} : Écrans, Consignes.
setup-cautions = Consignes
setup-cautions-sub = { $count ->
    [0] toutes lues ici
    [one] { $count } nouvelle ici
   *[other] { $count } nouvelles ici
}
