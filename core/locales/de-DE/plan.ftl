# The plan for a day: written the evening before, shown on the Bank as it falls due, held against the day on its card.

bench-plan-title = Tagesplan
bench-plan-pegs-title = Plätze der Auslosung
bench-plan-start-title = Beginn und Wechsel
bench-plan-rig-title = Montage
plan-rig-of = { $rod }: Montage
plan-today = heute
plan-tomorrow = morgen
# On the list of the Bench.
plan-sub = { $day }: { $count ->
    [0] nichts geplant
    [one] 1 Zeile
   *[other] { $count } Zeilen
}
plan-says-none = Für { $day } ist nichts geplant. Lass weg, was du willst.
plan-says = Für { $day }: Am Ufer steht jede Zeile, wenn sie dran ist.
plan-says-taken = Heute gilt der Plan, wie er bei BEGINN stand. Änderungen hier gelten ab dem nächsten.
# The same on the pages for pegs, start and rigs, which are each about one day.
plan-for = Für { $day }: { $what }
plan-row-day = Tag
plan-row-out = Streichen
plan-row-aim = Marke oder Richtung
plan-start = Wo beginnen
plan-leave = Erste Würfe liegen lassen
plan-move = Ins geschonte Wasser
plan-open = offen
plan-minutes = { $minutes } min
plan-after-all-in = { $minutes } min nach dem Start
plan-pegs-says = Für { $day }: Plätze, die du möchtest, und was dort zu tun ist. Am Ufer steht der, den du ziehst.
plan-type-peg = Platz: was dort zu tun ist
plan-type-move = Uhrzeit oder Minuten nach dem Start
plan-start-says = Für { $day }: wohin der erste Wurf geht. Noch offen.
plan-key-no-start = OFFEN LASSEN
plan-key-no-rig = OHNE
plan-key-today = HEUTE
plan-key-today-sub = nach diesem Plan
plan-key-not-today = HEUTE NICHT
plan-key-not-today-sub = ohne ihn angeln
setup-plan = Tagesplan
setup-plan-of = für { $day }
setup-plan-none = heute nicht
setup-plan-how = BEGINN übernimmt ihn, wie er dasteht

# On the Bank, a line at a time.
plan-due-peg = Plan für Platz { $peg }: { $note }.
plan-due-rig = Plan für Rute { $rod }: { $rig }.
plan-due-start = Plan, erster Wurf: { $spot }.
plan-due-leave = Plan: die ersten Würfe { $minutes } min liegen lassen.
plan-due-move = Plan, { $time }: ins geschonte Wasser wechseln.

# On the card of the day, below the word Plan.
day-plan = Tagesplan
report-plan = Tagesplan: { $what }
plan-pegs-kept = { $count ->
    [one] Platz { $pegs }
   *[other] einer der Plätze { $pegs }
}. Gezogen: { $drawn }.
plan-pegs-other = { $count ->
    [one] Platz { $pegs }
   *[other] einer der Plätze { $pegs }
}. Gezogen wurde { $drawn }.
plan-pegs-none = { $count ->
    [one] Platz { $pegs }
   *[other] einer der Plätze { $pegs }
}. Es wurde kein Platz eingegeben.
plan-rig-kept = Rute { $rod } mit { $rig }. So hast du begonnen.
plan-rig-other = Rute { $rod } mit { $rig }. Begonnen hast du mit: { $first }.
plan-rig-none = Rute { $rod } mit { $rig }. Sie wurde nicht ausgeworfen.
plan-start-kept = Beginn bei { $planned }. So war es.
plan-start-other = Beginn bei { $planned }. Begonnen hast du bei { $first }.
plan-spot-none = einer Stelle, die nicht gesetzt war
plan-start-none = Beginn bei { $planned }. Es gab keinen Wurf.
plan-leave-left = die ersten Würfe { $minutes } min liegen lassen. { $count ->
    [one] Der erste lag { $left } min.
   *[other] Die ersten { $count } lagen { $left } min.
}
plan-leave-none = die ersten Würfe { $minutes } min liegen lassen. Von keinem ist das Ende bekannt.
plan-move-cast = ins geschonte Wasser um { $time }. Erster Wurf dorthin { $first }.
plan-move-none = ins geschonte Wasser um { $time }. Kein Wurf ging dorthin.

entry-plan_set = Plan
entry-plan_cleared = Zeile aus dem Plan
entry-plan_taken = Plan für heute
entry-plan_dropped = heute ohne Plan
