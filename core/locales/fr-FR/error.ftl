# Chaque erreur dit quoi faire ensuite.

error-no-session = Aucune sortie ouverte. Commencez-en une d'abord.
error-session-open = Une sortie est déjà ouverte. Finissez-la d'abord.
error-no-such-rod = Il n'y a pas de canne { $rod }. Cette sortie en a { $rods }.
error-rod-count = Une sortie a de 1 à 9 cannes, pas { $rods }.
error-nothing-out = Rien à l'eau pour la canne { $rod }. Touchez LANCER quand le plomb touche l'eau.
error-fish-on = Un poisson est au bout de la canne { $rod }. Touchez d'abord PRIS, PERDU ou RATÉ.
error-no-fish-on = Aucun poisson au bout de la canne { $rod }. Touchez d'abord TOUCHE.
error-rod-out = La canne { $rod } est à l'eau. Ramenez avant de vous éloigner.
error-rod-was-out = La canne { $rod } était à l'eau pendant ce vide. Pendant une pause, toutes les cannes sont rentrées.
error-away-already = La pause est déjà notée. Touchez d'abord REPRISE.
error-not-away = Aucune pause en cours. Touchez d'abord PAUSE.
error-nothing-fed = Rien n'a encore été amorcé. Choisissez d'abord quoi amorcer.
error-no-test = Aucun essai en cours. Commencez-en un sous un changement de « Effets ».
error-test-complete = L'essai est terminé. Finissez-le ou commencez-en un autre.
error-nothing-to-undo = Il n'y a rien à annuler.
error-nothing-to-redo = Il n'y a rien à rétablir.
error-nothing-to-set-back = Aucune heure à reculer. Notez d'abord quelque chose.
error-before-earlier = Ce serait avant la note de { $time }. Annulez d'abord celle-là, ou reculez moins.
error-before-session = La sortie précédente s'est terminée à { $time }. Le début peut être reculé jusque-là, pas davantage.
error-unknown-choice = « { $value } » ne convient pas ici. Prenez un des choix.
error-too-long = C'est trop long : { $count } caractères, { $most } au plus.
error-damaged = Le journal de ce téléphone est abîmé. Rien n'a changé. Restaurez une sauvegarde, ou sauvez ce qui peut l'être.
error-newer = Ce journal vient d'une version plus récente ({ $found } ; celle-ci lit jusqu'à { $known }). Mettez l'application à jour.
error-foreign = Ce fichier n'est pas un journal Restwater. Rien n'a changé. Choisissez un autre dossier.
error-read-only = Restwater ne peut pas écrire dans ce dossier. Autorisez-le ou choisissez-en un autre.
error-busy = Un autre programme a ouvert le journal. Fermez-le et réessayez.
error-no-space = Il n'y a plus de place sur le téléphone. Libérez-en et touchez encore : la dernière note n'est pas enregistrée.
error-io = Le téléphone n'a pas pu écrire ({ $detail }). La dernière note n'est pas enregistrée : touchez encore.
error-internal = Un problème dans Restwater ({ $detail }). Rien n'est perdu. Touchez encore.
error-broken = Une erreur dans Restwater. Rien n'est perdu : fermez l'application et rouvrez-la.
error-clock-range = L'horloge du téléphone est hors limites. Réglez-la, puis touchez encore.
error-no-cell = Aucune case n'est choisie pour cela. Choisissez-en une d'abord sur la carte.
error-earlier-shown = C'est le poste à un moment antérieur. Touchez d'abord DIRECT.
error-nothing-typed = Tapez d'abord un nom, puis choisissez à quoi il sert.
error-no-such-caution = Cette consigne était déjà marquée comme lue. Rouvrez la liste.
error-another-day = Le carnet montre un autre jour. Touchez-y d'abord SORTIES.
error-not-of-that-entry = Cela ne se corrige pas dans cette note. Rouvrez-la depuis la liste.
error-empty-text = Rien n'est tapé. Tapez d'abord quelques mots.
error-no-peg-note = « { $value } » ne donne pas une place et ce qu'il faut y faire. Tapez par exemple 14: pain vers l'île.
error-no-time = « { $value } » n'est pas une heure. Tapez par exemple 12:30, ou 90 pour les minutes après le début.
error-no-plan = Pas de plan pour ce jour. Écrivez-en un sur l'établi.
error-no-length = « { $value } » n'est pas une longueur. Tapez un nombre et son unité, comme 18 in, 45 cm ou 2,5 m.
error-no-weight = « { $value } » n'est pas un poids. Tapez un nombre et son unité, comme 30 g ou 1 oz.
error-no-latitude = { $typed ->
    [0] Aucune latitude tapée. Tapez les degrés nord, comme 52,1234 ou 52 7 24 ; S pour le sud.
   *[other] « { $value } » n'est pas une latitude. Tapez les degrés nord, comme 52,1234 ou 52 7 24 ; S pour le sud.
}
error-no-longitude = { $typed ->
    [0] Aucune longitude tapée. Tapez les degrés est, comme 1,25 ou 1 15 0 ; W pour l'ouest.
   *[other] « { $value } » n'est pas une longitude. Tapez les degrés est, comme 1,25 ou 1 15 0 ; W pour l'ouest.
}
error-no-bearing = { $typed ->
    [0] Aucune direction tapée. Tapez les degrés depuis le nord dans le sens horaire, 0 à 360.
   *[other] « { $value } » n'est pas une direction. Tapez les degrés depuis le nord dans le sens horaire, 0 à 360.
}
error-not-op-file = Ce n'est pas un fichier de notes Restwater : { $detail }. Choisissez-en un en .restwater.json-seq, ou une sauvegarde.
error-file-empty = il est vide
error-file-zip = c'est une archive zip
error-file-database = c'est une base de données
error-file-json = c'est un autre JSON
error-file-text = c'est du texte
error-file-other = c'est autre chose
error-file-newer = Le fichier vient d'une version plus récente : mettez l'application à jour, puis importez-le.
error-file-header = Le fichier est illisible ({ $detail }) : redemandez-le. Rien n'a changé.
error-file-too-many = Le fichier a plus de { $detail } enregistrements : demandez-en une partie.
error-file-io = Le fichier a donné une erreur ({ $detail }) : essayez un autre endroit. Rien n'a changé.
error-cancelled = Abandonné. Rien n'a changé.
error-no-such-import = Cet import n'est plus là, ou c'est déjà fait.
error-no-cast-yet = Aucun lancer sur la canne { $rod }, donc aucun bas de ligne n'a pu s'y perdre.
error-lost-already = Le bas de ligne du dernier lancer de la canne { $rod } est déjà noté perdu. Lancez d'abord, ou annulez.
error-no-such-session = Cette sortie n'est plus dans le carnet. Prenez-en une autre.
error-no-such-entry = Cette sortie n'a pas cette note : ouvrez-la depuis la liste.
