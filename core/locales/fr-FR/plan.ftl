# The plan for a day: written the evening before, shown on the Bank as it falls due, held against the day on its card.

bench-plan-title = Plan du jour
bench-plan-pegs-title = Places du tirage
bench-plan-start-title = Début et changement
bench-plan-rig-title = Montage
plan-rig-of = { $rod } : montage
plan-today = aujourd'hui
plan-tomorrow = demain
# On the list of the Bench.
plan-sub = { $day } : { $count ->
    [0] rien de prévu
    [one] { $count } ligne
   *[other] { $count } lignes
}
plan-says-none = Rien de prévu pour { $day }. Laissez de côté ce que vous voulez.
plan-says = Pour { $day } : chaque ligne s'affiche au bord de l'eau le moment venu.
plan-says-taken = La journée suit le plan tel qu'il était à DÉBUT. Les changements d'ici comptent pour la suivante.
# The same on the pages for pegs, start and rigs, which are each about one day.
plan-for = Pour { $day } : { $what }
plan-row-day = Jour
plan-row-out = Retirer
plan-row-aim = Repère ou direction
plan-start = Où commencer
plan-leave = Laisser les premiers lancers
plan-move = Vers l'eau gardée
plan-open = non fixé
plan-minutes = { $minutes } min
plan-after-all-in = { $minutes } min après le début
plan-pegs-says = Pour { $day } : les places souhaitées et que faire à chacune. Au bord de l'eau s'affiche celle que vous tirez.
plan-type-peg = Place : que faire là
plan-type-move = Heure, ou minutes après le début
plan-start-says = Pour { $day } : où va le premier lancer. Non fixé.
plan-key-no-start = NON FIXÉ
plan-key-no-rig = AUCUN
plan-key-today = CE JOUR
plan-key-today-sub = suivre ce plan
plan-key-not-today = PAS CE JOUR
plan-key-not-today-sub = pêcher sans lui
setup-plan = Plan du jour
setup-plan-of = pour { $day }
setup-plan-none = pas ce jour
setup-plan-how = DÉBUT le reprend tel qu'il est

# On the Bank, a line at a time.
plan-due-peg = Plan pour la place { $peg } : { $note }.
plan-due-rig = Plan pour la canne { $rod } : { $rig }.
plan-due-start = Plan, premier lancer : { $spot }.
plan-due-leave = Plan : laisser les premiers lancers { $minutes } min.
plan-due-move = Plan, { $time } : passer à l'eau gardée.

# On the card of the day, below the word Plan.
day-plan = Plan du jour
report-plan = Plan du jour : { $what }
plan-pegs-kept = { $count ->
    [one] place { $pegs }
   *[other] une des places { $pegs }
}. Vous avez tiré la { $drawn }.
plan-pegs-other = { $count ->
    [one] place { $pegs }
   *[other] une des places { $pegs }
}. C'est la { $drawn } qui a été tirée.
plan-pegs-none = { $count ->
    [one] place { $pegs }
   *[other] une des places { $pegs }
}. Aucune place n'a été saisie.
plan-rig-kept = canne { $rod } avec { $rig }. Vous avez commencé ainsi.
plan-rig-other = canne { $rod } avec { $rig }. Vous avez commencé avec : { $first }.
plan-rig-none = canne { $rod } avec { $rig }. Elle n'a pas été lancée.
plan-start-kept = commencer à { $planned }. C'est fait.
plan-start-other = commencer à { $planned }. Vous avez commencé à { $first }.
plan-spot-none = un point non indiqué
plan-start-none = commencer à { $planned }. Il n'y a pas eu de lancer.
plan-leave-left = laisser les premiers lancers { $minutes } min. { $count ->
    [one] Le premier est resté { $left } min.
   *[other] Les { $count } premiers sont restés { $left } min.
}
plan-leave-none = laisser les premiers lancers { $minutes } min. Aucune fin n'est connue.
plan-move-cast = eau gardée à { $time }. Premier lancer là à { $first }.
plan-move-none = eau gardée à { $time }. Aucun lancer n'y est allé.

entry-plan_set = ligne du plan
entry-plan_cleared = ligne retirée du plan
entry-plan_taken = plan du jour
entry-plan_dropped = pas de plan ce jour
