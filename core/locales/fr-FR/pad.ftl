# Touches communes à plusieurs écrans, à côté des leurs.
pad-keys = PLUS
pad-keys-spoken = Autres actions

pad-screens = Écrans
pad-screens-spoken = Tous les écrans.
pad-more = PLUS
pad-page = { $page } sur { $pages }
pad-more-spoken = Page { $page } sur { $pages }. Passe à la suivante.
pad-swim = Carte
pad-swim-spoken = La carte du poste. Où sont allés les lancers et ce qu'ils ont donné.
pad-further = Repères
pad-further-spoken = Sur la carte : repères, bandes, reliefs, dangers, la liste, la place sur la carte.
pad-back = RETOUR
pad-back-spoken = Retour au bord de l'eau.
pad-mend = REVOIR
pad-mend-spoken = Revoir. Notes douteuses.
