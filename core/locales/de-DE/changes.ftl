# Lag es daran? Es sagt nie, dass etwas wirkt.

changes-title = Wechsel
changes-none = Noch wurde zwischen Würfen nichts geändert. Änderungen kommen aus dem Protokoll: nichts muss doppelt eingegeben werden.
changes-no-session = Beginne einen Ansitz und wirf: Änderungen zwischen Würfen kommen aus dem Protokoll.
changes-looked-at = { $count ->
    [one] 1 Änderung betrachtet.
   *[other] { $count } Änderungen betrachtet. Probiert man vieles, sieht etwas durch Glück gut aus: das ist berücksichtigt.
}
changes-raised = Jedes p ist um die Zahl der betrachteten Änderungen angehoben (Holm).
changes-clear = { $count ->
    [0] Noch nichts klar.
    [one] 1 ist klarer als Zufall.
   *[other] { $count } sind klarer als Zufall.
}
factor-spot = Stelle
factor-bait = Köder
factor-colour = Farbe
factor-height = Pop-up-Höhe
factor-hooklength = Vorfach
factor-hook_size = Hakengröße
factor-lead = Blei
factor-leader = Schlagschnur
factor-feed = Futter in den { $minutes } min davor
factor-feed_amount = Futtermenge in den { $minutes } min davor
# Dasselbe mitten im Satz.
factor-in-spot = Stelle
factor-in-bait = Köder
factor-in-colour = Farbe
factor-in-height = Pop-up-Höhe
factor-in-hooklength = Vorfach
factor-in-hook_size = Hakengröße
factor-in-lead = Blei
factor-in-leader = Schlagschnur
factor-in-feed = Futter in den { $minutes } min davor
factor-in-feed_amount = Futtermenge in den { $minutes } min davor
value-fed = gefüttert
value-not-fed = nicht gefüttert
value-feed-0 = unter { $low }
value-feed-1 = { $low } bis { $high }
value-feed-2 = ab { $high }
value-feed-about-0 = unter etwa { $low }
value-feed-about-1 = etwa { $low } bis { $high }
value-feed-about-2 = ab etwa { $high }
change-title = { $factor }: { $after } nach { $before }
change-title-fed = { $factor }: erst ohne, dann mit
change-title-not-fed = { $factor }: erst mit, dann ohne
verdict-cant-tell = noch unklar
verdict-leans = neigt zu { $value }
verdict-clear = { $value } heute hier klar besser
change-side = { $bites ->
    [0] kein Biss
    [one] 1 Biss
   *[other] { $bites } Bisse
} in { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfen
}, { $minutes } min
change-says-cant-tell = { $new } oder { $old }? Noch unklar.
change-says-leans = { $new } oder { $old }? Neigt zu { $value }.
change-says-clear = { $new } oder { $old }? { $value }, klar, heute hier.
change-counts = { $value }: { $counts }.
change-find-out = So zeigt es sich: { $a }, { $b }, { $b }, { $a } auf einer Stelle, mit einer Rute.
change-find-out-spots = So zeigt es sich: ein Wurf auf { $a }; zwei auf { $b }; einer auf { $a }; alle mit derselben Rute.
change-find-out-days = So zeigt es sich über mehrere Ansitze: { $a }, { $b }, { $b }, { $a } auf einer Stelle, mit einer Rute.
change-find-out-spots-days = So zeigt es sich über mehrere Ansitze: ein Wurf auf { $a }; zwei auf { $b }; einer auf { $a }; alle mit derselben Rute.
change-rate = { $rate } je Stunde und Rute ({ $limits })
change-of-100 = Von 100 Änderungen, die so aussehen, sprechen etwa { $better } für { $value }; { $worse } für { $other }; bei etwa { $same } sind sich beide zu ähnlich, um zu zählen.
change-ratio = { $value } gegen { $other }: { $ratio }-mal so viele Bisse je Minute (95 %: { $limits }).
change-ratio-open = { $value } gegen { $other }: kein Verhältnis, eine Seite hat keinen Biss.
change-p = Exakt { $exact }; in Blöcken von Würfen { $block }. Angehoben für { $count ->
    [one] 1 Änderung
   *[other] { $count } Änderungen
}: { $exactadjusted } und { $blockadjusted }. Jederzeit am Tag gelesen: { $anylook }.
change-block-once = In Blöcken kann p bei so wenigen Wechseln nicht unter { $least } liegen.
change-more = Etwa { $casts } weitere Würfe im Wechsel würden es in 8 von 10 Fällen klären.
change-more-maybe = { $casts } weitere Würfe im Wechsel würden es an { $days ->
    [one] 1 Tag
   *[other] { $days } Tagen
} von 10 klären.
change-more-day = Ein Tag ist dafür zu kurz: { $casts } weitere Würfe im Wechsel sind zu wenige.
change-more-clear = Für heute sind keine Würfe mehr nötig.
reason-few-bites = Weniger als drei Bisse auf beiden Seiten zusammen.
reason-few-casts = Weniger als drei Würfe auf einer Seite.
reason-once = Nur einmal gewechselt: von der Tageszeit nicht zu trennen.
reason-few-switches = Zu selten gewechselt: es kann an der Stunde liegen.
reason-together = Immer zusammen geändert mit: { $factor }. Die zwei sind nicht zu trennen.
reason-clumps = Die Bisse kamen in Schüben, es kann Glück sein.
reason-not-held = Jetzt auffällig, muss aber über zwei weitere Wechsel halten.
reason-read-all-day = Bei einem Blick auffällig, aber hier wird den ganzen Tag gelesen: das braucht mehr Bisse.
reason-many = Allein auffällig, unter so vielen Änderungen nicht.
reason-times = Die zwei lagen verschieden lange, und die Minuten und der Vergleich gleicher Wartezeiten sagen nicht dasselbe.
forest-axis = Bisse je Minute, neu gegen alt
forest-same = gleich
change-start = TESTEN
change-start-sub = beide im Wechsel
change-start-spoken = Einen Test im Wechsel beginnen: { $a } und { $b }.

test-title = Test ({ $factor }): { $a } und { $b }
test-how = A B B A auf einer Stelle, mit einer Rute: der Lauf des Tages trifft dann beide gleich.
test-step = { $number }. { $value }
test-step-done = { $step }, erledigt
test-step-out = { $step }, draußen
test-step-next = { $step }, als Nächstes
test-step-later = { $step }, später
test-next = Als Nächstes, Rute { $rod }: { $value }.
test-out = Jetzt draußen: { $value }. Dann { $next }.
test-last-out = Jetzt draußen: { $value }, der letzte des Plans.
test-complete = Der Plan ist durch. Was er sagt, steht unten bei der Änderung.
test-off = { $count ->
    [one] 1 Wurf seitdem war mit anderem oder anderswo und zählt nicht für den Plan.
   *[other] { $count } Würfe seitdem waren mit anderem oder anderswo und zählen nicht für den Plan.
}
test-set = SETZEN
test-set-sub = { $value } für den nächsten Wurf
test-end = TEST ENDE
test-end-sub = kein Wechsel mehr

question-over = Bei { $sessions ->
    [one] 1 Ansitz
   *[other] { $sessions } Ansitzen
}, { $casts ->
    [one] 1 Wurf
   *[other] { $casts } Würfe
}: { $verdict }.
question-clear = { $value } bei diesen Ansitzen klar besser
question-none = Bei { $sessions ->
    [one] 1 Ansitz
   *[other] { $sessions } Ansitzen
} verglichen, aber zu selten hin und her gewechselt oder zusammen mit etwas anderem: noch unklar.
question-others = { $sessions ->
    [one] 1 weiterer Ansitz zählt nicht.
   *[other] { $sessions } weitere Ansitze zählen nicht.
}
question-of-100 = Bei diesen Ansitzen, von 100 Fragen, die so aussehen, sprechen etwa { $better } für { $value }; { $worse } für { $other }; bei etwa { $same } sind sich beide zu ähnlich, um zu zählen.
question-more = Etwa { $sessions ->
    [one] 1 weiterer Ansitz
   *[other] { $sessions } weitere Ansitze
} wie der letzte würden es in 8 von 10 Fällen klären.
question-more-maybe = { $sessions ->
    [one] 1 weiterer Ansitz
   *[other] { $sessions } weitere Ansitze
} wie der letzte würden es etwa { $times ->
    [one] einmal
   *[other] { $times }-mal
} in 10 Fällen klären.
question-more-no = { $sessions ->
    [one] 1 weiterer Ansitz wie der letzte ist
   *[other] { $sessions } weitere Ansitze wie der letzte sind
} zu wenig, um es zu klären.
question-more-clear = Dafür sind keine weiteren Ansitze nötig.
question-more-unknown = Wie viele Ansitze es noch braucht, ist noch nicht zu sagen.
question-next = Nächstes Mal: { $a }, { $b }, { $b }, { $a } und wieder so, auf einer Stelle mit einer Rute.
question-title = { $factor }: { $a } oder { $b }, { $water }
question-figures = { $a } gegen { $b }: { $ratio }-mal so viele Bisse je Minute, falls sie sich unterscheiden (95 %: { $low } bis { $high }). Ein Einsatz von 1 gegen „kein Unterschied“ wurde nach Minuten zu { $minutes }, nach Wartezeiten zu { $waits }, je zur Hälfte gesetzt zu { $decides }; nach Würfen zu { $casts }. Frage { $place } der gestellten: { $anylook }, jederzeit zu lesen. Blöcke von Würfen innerhalb ihrer Ansitze neu verteilt: { $block }.
