# The lock screen, alarms, and what belongs to the phone.

watch-title = { $rod }: { $since }
watch-hold = { $rod }: held { $minutes } min
watch-recast = { $rod }: recast by now, { $minutes } min
watch-after = { $rod }: { $minutes } min out
watch-waited = { $rod }: waited { $minutes } min

phone-title = This phone
phone-alarm = Alarm
phone-alarm-off = off
phone-alarm-hold = at hold until
phone-alarm-recast = at recast by
phone-alarm-how = For a bait that is out. Rings when the record can tell, or after the minutes you choose.
phone-after = after { $minutes } min
phone-awake = Screen
phone-awake-on = stays on
phone-awake-off = goes dark
phone-awake-how = While a session is open.
phone-weights = Weights
phone-weights-lb = lb oz dr
phone-weights-kg = kg and g
phone-weights-how = For fish where no match says otherwise.
phone-hand = Hand
phone-hand-right = right
phone-hand-left = left
phone-hand-how = Puts the keys within reach of that thumb.
phone-scheme = Scheme
phone-scheme-day = day
phone-scheme-night = night
phone-scheme-dusk = night at dusk
phone-scheme-how = Ink on paper, or chalk on ink. At dusk needs the peg on the map.
