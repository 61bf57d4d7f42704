# Ça a joué ? L'écran ne dit jamais qu'une chose marche.

changes-title = Effets
changes-none = Rien n'a encore changé entre les lancers. Les changements viennent du journal : rien à entrer deux fois.
changes-no-session = Commencez une sortie et lancez : les changements entre lancers viennent du journal.
changes-looked-at = { $count ->
    [one] { $count } changement examiné.
   *[other] { $count } changements examinés. À force d'essayer, l'un a l'air bon par chance : on en tient compte.
}
changes-raised = Chaque p est relevé pour le nombre de changements examinés (Holm).
changes-clear = { $count ->
    [0] Rien de net encore.
    [one] { $count } est plus net que le hasard.
   *[other] { $count } sont plus nets que le hasard.
}
factor-spot = Point
factor-bait = Appât
factor-colour = Couleur
factor-height = Hauteur pop-up
factor-hooklength = Bas de ligne
factor-hook_size = Hameçon
factor-lead = Plomb
factor-leader = Tête de ligne
factor-feed = Amorce dans les { $minutes } min d'avant
factor-feed_amount = Dose d'amorce dans les { $minutes } min d'avant
# Les mêmes au milieu d'une phrase.
factor-in-spot = point
factor-in-bait = appât
factor-in-colour = couleur
factor-in-height = hauteur pop-up
factor-in-hooklength = bas de ligne
factor-in-hook_size = hameçon
factor-in-lead = plomb
factor-in-leader = tête de ligne
factor-in-feed = amorce dans les { $minutes } min d'avant
factor-in-feed_amount = dose d'amorce dans les { $minutes } min d'avant
value-fed = amorcé
value-not-fed = pas amorcé
value-feed-0 = moins de { $low }
value-feed-1 = { $low } à { $high }
value-feed-2 = { $high } et plus
value-feed-about-0 = moins de { $low } environ
value-feed-about-1 = environ { $low } à { $high }
value-feed-about-2 = { $high } environ et plus
change-title = { $factor } : { $after } après { $before }
change-title-fed = { $factor } : d'abord sans, puis avec
change-title-not-fed = { $factor } : d'abord avec, puis sans
verdict-cant-tell = pas encore clair
verdict-leans = penche vers { $value }
verdict-clear = { $value } nettement mieux ici ce jour
change-side = { $bites ->
    [0] aucune touche
    [one] { $bites } touche
   *[other] { $bites } touches
} en { $casts ->
    [one] { $casts } lancer
   *[other] { $casts } lancers
}, { $minutes } min
change-says-cant-tell = { $new } ou { $old } ? Pas encore clair.
change-says-leans = { $new } ou { $old } ? Penche vers { $value }.
change-says-clear = { $new } ou { $old } ? { $value }, nettement, ici ce jour.
change-counts = { $value } : { $counts }.
change-find-out = Pour savoir : { $a }, { $b }, { $b }, { $a } sur un point, une canne.
change-find-out-spots = Pour savoir : un lancer sur { $a } ; deux sur { $b } ; un sur { $a } ; tous avec la même canne.
change-find-out-days = Pour savoir, en plusieurs sorties : { $a }, { $b }, { $b }, { $a } sur un point, une canne.
change-find-out-spots-days = Pour savoir, en plusieurs sorties : un lancer sur { $a } ; deux sur { $b } ; un sur { $a } ; tous avec la même canne.
change-rate = { $rate } par heure et par canne ({ $limits })
change-of-100 = Sur 100 changements de ce genre, environ { $better } favorisent { $value } ; { $worse } favorisent { $other } ; dans environ { $same }, les deux se valent trop pour compter.
change-ratio = { $value } contre { $other } : { $ratio } fois les touches par minute (95 % : { $limits }).
change-ratio-open = { $value } contre { $other } : pas de rapport, un côté est sans touche.
change-p = Exact { $exact } ; par blocs de lancers { $block }. Relevé pour { $count ->
    [one] { $count } changement
   *[other] { $count } changements
} : { $exactadjusted } et { $blockadjusted }. Lu à tout moment du jour : { $anylook }.
change-block-once = Par blocs, p ne peut pas être inférieur à { $least } avec si peu d'alternances.
change-more = Environ { $casts } lancers de plus, alternés, trancheraient 8 fois sur 10.
change-more-maybe = { $casts } lancers de plus, alternés, trancheraient { $days ->
    [one] { $days } jour
   *[other] { $days } jours
} sur 10.
change-more-day = Un jour n'y suffit pas : { $casts } lancers de plus, alternés, sont trop peu.
change-more-clear = Plus besoin de lancers pour aujourd'hui.
reason-few-bites = Moins de trois touches des deux côtés ensemble.
reason-few-casts = Moins de trois lancers d'un côté.
reason-once = Changé une seule fois : impossible à séparer de l'heure.
reason-few-switches = Trop peu de changements pour dire : c'est peut-être l'heure.
reason-together = Toujours changé en même temps : { $factor }. Impossible de les séparer.
reason-clumps = Les touches sont venues par salves, c'est peut-être la chance.
reason-not-held = Frappant, mais cela doit tenir sur deux alternances de plus.
reason-read-all-day = Frappant d'un coup d'œil, mais ceci se lit toute la journée : il faut plus de touches.
reason-many = Frappant seul, pas parmi tant de changements examinés.
reason-times = Les deux sont restés à l'eau des temps différents, et les minutes et les attentes comparables ne disent pas la même chose.
forest-axis = touches par minute, nouveau contre ancien
forest-same = égal
change-start = TESTER
change-start-sub = les deux en alternance
change-start-spoken = Commencer un essai alterné de { $a } et { $b }.

test-title = Essai ({ $factor }) : { $a } et { $b }
test-how = A B B A sur un point, une canne : le cours du jour touche alors les deux de la même façon.
test-step = { $number }. { $value }
test-step-done = { $step }, fait
test-step-out = { $step }, à l'eau
test-step-next = { $step }, ensuite
test-step-later = { $step }, plus tard
test-next = Ensuite sur la canne { $rod } : { $value }.
test-out = À l'eau : { $value }. Puis { $next }.
test-last-out = À l'eau : { $value }, le dernier du plan.
test-complete = Le plan est fini. Ce qu'il dit figure avec le changement, plus bas.
test-off = { $count ->
    [one] { $count } lancer depuis était avec autre chose ou ailleurs, et ne compte pas pour le plan.
   *[other] { $count } lancers depuis étaient avec autre chose ou ailleurs, et ne comptent pas pour le plan.
}
test-set = METTRE
test-set-sub = { $value } au prochain lancer
test-end = FINIR
test-end-sub = ne plus alterner

question-over = Sur { $sessions ->
    [one] 1 sortie
   *[other] { $sessions } sorties
}, { $casts ->
    [one] 1 lancer
   *[other] { $casts } lancers
} : { $verdict }.
question-clear = { $value } nettement mieux lors de ces sorties
question-none = Comparés sur { $sessions ->
    [one] 1 sortie
   *[other] { $sessions } sorties
}, mais trop peu alternés, ou avec autre chose en même temps : pas encore clair.
question-others = { $sessions ->
    [one] 1 autre sortie ne compte pas.
   *[other] { $sessions } autres sorties ne comptent pas.
}
question-of-100 = Pour ces sorties, sur 100 questions de ce genre, environ { $better } favorisent { $value } ; { $worse } favorisent { $other } ; dans environ { $same }, les deux se valent trop pour compter.
question-more = Environ { $sessions ->
    [one] 1 sortie de plus comme la dernière trancherait
   *[other] { $sessions } sorties de plus comme la dernière trancheraient
} 8 fois sur 10.
question-more-maybe = { $sessions ->
    [one] 1 sortie de plus comme la dernière trancherait
   *[other] { $sessions } sorties de plus comme la dernière trancheraient
} environ { $times ->
    [one] une fois
   *[other] { $times } fois
} sur 10.
question-more-no = { $sessions ->
    [one] 1 sortie de plus comme la dernière est
   *[other] { $sessions } sorties de plus comme la dernière sont
} trop peu pour trancher.
question-more-clear = Pas besoin d'autres sorties pour le dire.
question-more-unknown = On ne peut pas encore dire combien de sorties il faudrait.
question-next = La prochaine fois : { $a }, { $b }, { $b }, { $a }, et ainsi de suite, sur un point avec une canne.
question-title = { $factor } : { $a } ou { $b }, { $water }
question-figures = { $a } contre { $b } : { $ratio } fois les touches par minute s'ils diffèrent (95 % : { $low } à { $high }). Une mise de 1 contre « aucune différence » est devenue { $minutes } par les minutes, { $waits } par les attentes, { $decides } moitié-moitié ; { $casts } par les lancers. Question { $place } de celles posées : { $anylook }, à lire à tout moment. Blocs de lancers redistribués dans leurs sorties : { $block }.
