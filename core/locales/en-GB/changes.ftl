# Did it matter? It never says that something works.

changes-title = Changes
changes-none = Nothing has been changed between casts yet. Changes are found in the log: nothing has to be entered twice.
changes-no-session = Start a session and cast: changes between casts are found in the log.
changes-looked-at = { $count ->
    [one] 1 change looked at.
   *[other] { $count } changes looked at. Try many things and one will look good by luck: that is allowed for.
}
changes-raised = Every p is raised for the number of changes looked at (Holm).
changes-clear = { $count ->
    [0] Nothing clear yet.
    [one] 1 is clearer than chance.
   *[other] { $count } are clearer than chance.
}
factor-spot = Spot
factor-bait = Bait
factor-colour = Colour
factor-height = Pop-up height
factor-hooklength = Hooklength
factor-hook_size = Hook size
factor-lead = Lead
factor-leader = Leader
factor-feed = Feed in the { $minutes } min before
factor-feed_amount = Amount fed in the { $minutes } min before
# The same within a sentence.
factor-in-spot = spot
factor-in-bait = bait
factor-in-colour = colour
factor-in-height = pop-up height
factor-in-hooklength = hooklength
factor-in-hook_size = hook size
factor-in-lead = lead
factor-in-leader = leader
factor-in-feed = feed in the { $minutes } min before
factor-in-feed_amount = amount fed in the { $minutes } min before
value-fed = fed
value-not-fed = not fed
value-feed-0 = under { $low }
value-feed-1 = { $low } to { $high }
value-feed-2 = { $high } and over
value-feed-about-0 = under about { $low }
value-feed-about-1 = about { $low } to { $high }
value-feed-about-2 = about { $high } and over
change-title = { $factor }: { $after } after { $before }
change-title-fed = { $factor }: first without, then with
change-title-not-fed = { $factor }: first with, then without
verdict-cant-tell = can't tell yet
verdict-leans = leans to { $value }
verdict-clear = { $value } clearly better here today
change-side = { $bites ->
    [0] no bites
    [one] 1 bite
   *[other] { $bites } bites
} in { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}, { $minutes } min
change-says-cant-tell = { $new } or { $old }? Can't tell yet.
change-says-leans = { $new } or { $old }? It leans to { $value }.
change-says-clear = { $new } or { $old }? { $value }, clearly, here today.
change-counts = { $value }: { $counts }.
change-find-out = To find out: { $a }, { $b }, { $b }, { $a } on one spot, one rod.
change-find-out-spots = To find out: one cast at { $a }; two at { $b }; one at { $a }; all with the same rod.
change-find-out-days = To find out over several sessions: { $a }, { $b }, { $b }, { $a } on one spot, one rod.
change-find-out-spots-days = To find out over several sessions: one cast at { $a }; two at { $b }; one at { $a }; all with the same rod.
change-rate = { $rate } an hour for each rod ({ $limits })
change-of-100 = Of 100 changes that look like this, about { $better } favour { $value }; { $worse } favour { $other }; in about { $same } the two are too alike to matter.
change-ratio = { $value } against { $other }: { $ratio } times the bites per minute (95 %: { $limits }).
change-ratio-open = { $value } against { $other }: no ratio, one side has no bites.
change-p = Exact { $exact }; in blocks of casts { $block }. Raised for { $count ->
    [one] 1 change
   *[other] { $count } changes
}: { $exactadjusted } and { $blockadjusted }. Read at any moment of the day: { $anylook }.
change-block-once = In blocks, p can't be lower than { $least } with so few switches.
change-more = About { $casts } more casts, alternated, would settle it 8 times in 10.
change-more-maybe = { $casts } more casts, alternated, would settle it on { $days ->
    [one] 1 day
   *[other] { $days } days
} in 10.
change-more-day = One day is too short for that: { $casts } more casts, alternated, are too few.
change-more-clear = No more casts are needed for today.
reason-few-bites = Fewer than three bites on both sides together.
reason-few-casts = Fewer than three casts on one side.
reason-once = Changed once only: it can't be told from the time of day.
reason-few-switches = Changed too few times to say: the hour may be the reason.
reason-together = Always changed together with { $factor }: the two can't be told apart.
reason-clumps = Bites came in bursts, so this may be luck.
reason-not-held = Striking now, but it has to hold over two more switches.
reason-read-all-day = Striking at one look, but this is read all day: that takes more bites.
reason-many = Striking alone, not among as many changes as were looked at.
reason-times = The two were left out for different times, and bites per minute and bites at equal waits disagree.
forest-axis = bites per minute, new against old
forest-same = same
change-start = TEST IT
change-start-sub = alternate the two
change-start-spoken = Start an alternating test of { $a } and { $b }.

test-title = Test of { $factor }: { $a } and { $b }
test-how = A B B A on one spot, one rod: a drift of the day then falls on both alike.
test-step = { $number }. { $value }
test-step-done = { $step }, done
test-step-out = { $step }, out now
test-step-next = { $step }, next
test-step-later = { $step }, later
test-next = Next on rod { $rod }: { $value }.
test-out = Out now: { $value }. Then { $next }.
test-last-out = Out now: { $value }, the last of the plan.
test-complete = The test is complete. Its result is with the change below.
test-off = { $count ->
    [one] 1 cast since then was with something else or elsewhere, and doesn't count for the plan.
   *[other] { $count } casts since then were with something else or elsewhere, and don't count for the plan.
}
test-set = SET IT
test-set-sub = { $value } for the next cast
test-end = END TEST
test-end-sub = stop alternating

question-over = Over { $sessions ->
    [one] 1 session
   *[other] { $sessions } sessions
}, { $casts ->
    [one] 1 cast
   *[other] { $casts } casts
}: { $verdict }.
question-clear = { $value } clearly better in these sessions
question-none = Compared in { $sessions ->
    [one] 1 session
   *[other] { $sessions } sessions
}, but changed back and forth too few times, or together with something else: can't tell yet.
question-others = { $sessions ->
    [one] 1 more session doesn't count.
   *[other] { $sessions } more sessions don't count.
}
question-of-100 = Over these sessions, of 100 questions that look like this, about { $better } favour { $value }; { $worse } favour { $other }; in about { $same } the two are too alike to matter.
question-more = About { $sessions ->
    [one] 1 more session
   *[other] { $sessions } more sessions
} like the last would settle it 8 times in 10.
question-more-maybe = { $sessions ->
    [one] 1 more session
   *[other] { $sessions } more sessions
} like the last would settle it about { $times ->
    [one] once
   *[other] { $times } times
} in 10.
question-more-no = { $sessions ->
    [one] 1 more session like the last is
   *[other] { $sessions } more sessions like the last are
} too few to settle it.
question-more-clear = No more sessions are needed to say so.
question-more-unknown = How many more sessions it would take can't be said yet.
question-next = Next time: { $a }, { $b }, { $b }, { $a }, and again, on one spot with one rod.
question-title = { $factor }: { $a } or { $b }, { $water }
question-figures = { $a } against { $b }: { $ratio } times the bites per minute if they differ (95 %: { $low } to { $high }). A stake of 1 against "no difference" has become { $minutes } by minutes, { $waits } by waits, { $decides } with half on each; { $casts } by casts. Question { $place } of those asked: { $anylook }, read at any moment. Blocks of casts reshuffled within their sessions: { $block }.
