# Der Sperrbildschirm, Alarme, und was zum Handy gehört.

watch-title = { $rod }: { $since }
watch-hold = { $rod }: { $minutes } min gewartet
watch-recast = { $rod }: jetzt neu werfen, { $minutes } min
watch-after = { $rod }: { $minutes } min draußen
watch-waited = { $rod }: { $minutes } min vorbei

phone-title = Dieses Handy
phone-alarm = Alarm
phone-alarm-off = aus
phone-alarm-hold = bei „Warte bis“
phone-alarm-recast = bei „Wirf neu bis“
phone-alarm-how = Für einen Köder, der draußen ist. Klingelt, wenn das Protokoll es sagen kann, oder nach den Minuten, die du wählst.
phone-after = nach { $minutes } min
phone-awake = Bildschirm
phone-awake-on = bleibt an
phone-awake-off = wird dunkel
phone-awake-how = Solange ein Ansitz offen ist.
phone-weights = Gewichte
phone-weights-lb = lb oz dr
phone-weights-kg = kg und g
phone-weights-how = Für Fische, wo keine Wertung anderes sagt.
phone-hand = Hand
phone-hand-right = rechts
phone-hand-left = links
phone-hand-how = Legt die Tasten in Reichweite dieses Daumens.
phone-scheme = Schema
phone-scheme-day = Tag
phone-scheme-night = Nacht
phone-scheme-how = Tinte auf Papier oder Kreide auf Tinte.
