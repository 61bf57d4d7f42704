# The Match screen. Figures come as ranges; what can't be told is said so.

match-title = Match
match-no-session = Start a session first, then set the match.
match-none = No match is set. Check these times, then SET A MATCH.
match-none-over = No match was set. Start a session to set one.
match-no-clock = The times of this match can't be read: set all-in and all-out again.
match-no-count = The nets can't be counted. { $why } Nothing was lost: correct the rules of the day.
match-to-all-in = to all-in at { $time }.
match-to-all-out = to all-out at { $time }.
match-to-land = to land a hooked fish. All-out was at { $time }.
# The phone's clock was set before a restart, so nobody knows which of its two times was right.
match-uncertain = The time left may be wrong by { $by }: this phone's clock was changed. Ask the organiser for the time.
match-unknown-time = The time left may be far too long: this phone's clock was reset. Ask the organiser for the time.
match-over = All-out was at { $time }.
match-spoken = { $left } { $says }
match-clock-ahead = The match clock is { $by } ahead of the phone.
match-clock-behind = The match clock is { $by } behind the phone.
match-bank-before = { $time } to all-in
match-bank-fishing = { $time } to all-out
match-bank-landing = { $time } to land a fish
match-bank-over = match over
match-alarm = { $minutes } min to all-out.
match-alarm-text = All-out at { $time }.
match-cant-tell = can't tell yet

match-casts = { $out ->
    [0] Casts left
    [one] Casts after this one
   *[other] Casts after these
}
match-casts-least = at least { $casts }
match-range = { $low } to { $high }
match-late = Winding in to recast
match-late-from = worth it until { $time }
match-late-now = no longer worth it
match-late-in = a cast costs nothing until all-out
match-late-how = After { $time } ({ $from } to { $to }) a new cast has less than half the chance of a full cast, so don't wind in for one. A rod that is in may still be cast: that costs nothing until all-out.

match-coming-says = Likely finish: { $low } to { $high }.
match-coming-one = Likely finish: { $low }.
match-coming-cant-tell = Can't tell yet: too few bites to say what is to come.
match-result-weigh = Weigh in under Scales.
match-bites = Bites to come
match-fish-to-come = Fish to come
match-weight-to-come = Weight to come
match-finish = Expected finish
match-own-count = Own count
match-count-both = Weighed in, the rest by own count
match-count-scales = Weighed in
match-likely = { $low } to { $high }, about { $likely }
match-light = Light at all-out
match-light-day = still daylight
match-light-twilight = twilight
match-light-dark = dark
match-light-unknown = can't tell: the peg has no place yet
match-sunset-by-phone = { $time } by the phone
match-sunset-after = sunset { $time }, { $by } after all-out: { $light }
match-sunset-before = sunset { $time }, { $by } before all-out: { $light }
match-how = On at least 8 days in 10 like this, the total falls in each range; "about" is its middle. { $out ->
    [0] The next cast
   *[other] This cast
} is left { $leave } min, later ones { $then } min, { $turn } min between.
match-cant-tell-why = Until three bites have come, the record can't tell what is to come, and the casts left are counted without a bite and with guessed leave times, { $leave } min and then { $then } min.
match-weights-guessed = No fish is landed yet: weights are the guesses of the classes.
match-estimates = Class weights move towards fish you weigh. A weight by eye may be a quarter out either way.

match-fish = { $count ->
    [one] 1 fish
   *[other] { $count } fish
}
match-net = Net { $number }
match-net-holds = { $fish }, { $weight }
match-net-weighed = { $fish }, { $weight } weighed in
match-net-empty = empty
match-net-limit = of { $limit }
match-net-range = { $low } to { $high }
match-about = about { $weight }
match-near = near the limit
match-at-limit = may be at the limit
match-says-near-limit = { $net } is near its limit.
match-says-at-limit = { $net } may be at its limit.
match-says-over-limit = { $net } is over its limit.
match-over-limit-counts = over the limit: counts { $limit }
match-over-limit-nothing = over the limit: doesn't count
match-unknown = { $count ->
    [one] 1 fish has neither weight nor class: it is counted as average.
   *[other] { $count } fish have neither weight nor class: they are counted as average.
}
match-not-counted = { $count ->
    [one] 1 fish is of a kind that doesn't count.
   *[other] { $count } fish are of kinds that don't count.
}
match-put-back = { $count ->
    [one] 1 fish was put back.
   *[other] { $count } fish were put back.
}
match-no-net = { $count ->
    [one] 1 fish is of a kind that no net may hold: choose another net or class.
   *[other] { $count } fish are of kinds that no net may hold: choose another net or class.
}

# The fish.
match-to-fish = Fish
match-to-fish-sub = weight, class, net
match-to-fish-spoken = The fish: weight, class and net.
match-to-coming = Forecast
match-to-coming-sub = bites, finish
match-to-coming-spoken = What is to come: bites, fish, weight, finish, light.
match-to-result = Result
match-to-result-sub = weight, place
match-to-result-spoken = The result: weight, place, light.
match-to-rules = Rules
match-to-rules-sub = times, nets
match-to-rules-spoken = The rules of the day.
match-to-weigh-in = Scales
match-to-weigh-in-sub = weigh-in
match-to-weigh-in-spoken = The weigh-in.

# The weigh-in.
match-weigh-in-title = Weigh-in: { $net }
match-weigh-in-take = WEIGHED IN
match-weigh-in-take-sub = { $net }
match-weigh-in-take-spoken = { $net } weighed { $weight }.
match-weigh-in-done-sub = { $net } weighed in
match-weigh-in-done-spoken = { $net } is weighed in: { $weight }. Type another weight to change it.
match-weigh-in-known-sub = { $net }, entered before
match-weigh-in-known-spoken = { $net } is entered: { $weight }. Type another weight to change it.
match-weigh-in-next-sub = next net
match-weigh-in-next-spoken = { $net } is on the scales.
match-weigh-in-guess = GUESS
match-weigh-in-guess-sub = { $net }, by eye
match-weigh-in-guess-spoken = { $net } has about { $weight }, by eye.
match-peg-left = { $place ->
    [1] Next peg left
    [2] 2nd peg left
    [3] 3rd peg left
   *[other] { $place }th peg left
}
match-peg-right = { $place ->
    [1] Next peg right
    [2] 2nd peg right
    [3] 3rd peg right
   *[other] { $place }th peg right
}
match-peg-across = Across { $place }
match-other-none = not known yet
match-other-called = { $weight }, called
match-other-guessed = about { $weight }, guessed
match-place = Place in the section
match-place-known = Place among the nets you know
match-place-is = { $best } of { $of }
match-place-between = { $best } to { $worst } of { $of }
match-place-how = Place: your nets count { $mine }, and { $known } of { $all ->
    [one] 1 other is known
   *[other] { $all } others are known
}, { $guessed } of them guessed. A guess may be a quarter out either way; a net that isn't known may be ahead.
match-own = own count { $weight }
match-weighed-in = { $weight }, { $differs }, { $agreement }
match-more-by = { $by } over own count
match-less-by = { $by } under own count
match-as-counted = as counted
match-agrees = within its range
match-differs = outside its range
match-weigh-in-total = In all
match-scales-more = More than you logged: a fish missed, or weights low?
match-scales-less = Less than you logged: a fish logged twice or put back, or weights high?

# The rules of the day.
match-begin = SET A MATCH
match-begin-sub = with these rules
match-begin-spoken = Set a match here: then change its rules.
match-row-all-in = All-in
match-row-all-out = All-out
match-row-clock = Clocks
match-row-nets = Nets
match-row-limit = Limit of { $net }
match-row-over = Over the limit
match-row-landing = Landing after all-out
match-row-alarms = Alarms before
match-row-classes = Classes
match-row-counting = What counts
match-row-guess = One { $class }
match-row-unit = Scales in
match-row-mark = Finest mark
match-row-section-left = Section: pegs left
match-row-section-right = Section: pegs right
match-section-unknown = not entered
match-section-half = Counts once the other side is entered.
match-row-said = Dead or put back
match-said-nothing = ask the organiser
match-row-off = No match
match-off-yes = Remove the match
match-clock-same = as the phone
match-clock-ahead-short = match { $seconds } s ahead
match-clock-behind-short = match { $seconds } s behind
match-clock-heard-in = All-in sounds now
match-clock-heard-out = All-out sounds now
match-clock-same-now = As the phone
match-clock-less = { $seconds } s back
match-clock-more = { $seconds } s on
match-minutes = { $minutes } min
match-no-minutes = not allowed
match-no-limit = no limit
match-over-to-limit = counts to the limit
match-over-nothing = net doesn't count
match-no-alarm = none
match-all-count = every fish
match-all-but = all but { $classes }
match-guess-source = A guess until some are weighed.
match-unit-drams = lb, oz, dr
match-unit-grams = kg, g
kind-silver = Silver
kind-roach = Roach
kind-perch = Perch
kind-skimmer = Skimmer
kind-bream = Bream
kind-tench = Tench
kind-stockie = Stockie
kind-carp = Carp
kind-pike = Pike

entry-match_set = match
entry-match_off = no match
entry-net_weighed = weigh-in
entry-other_net_told = other net
entry-section_set = section
entry-match_rule_said = rule

error-no-match = No match is set. Set all-in and all-out first, under MATCH.
error-no-landing = No such fish is landed. Tap LANDED first, then enter its weight.
