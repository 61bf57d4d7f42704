# L'écran verrouillé, les alarmes, et ce qui relève du téléphone.

watch-title = { $rod } : { $since }
watch-hold = { $rod } : { $minutes } min tenues
watch-recast = { $rod } : relancer, { $minutes } min
watch-after = { $rod } : { $minutes } min à l'eau
watch-waited = { $rod } : { $minutes } min attendues

phone-title = Ce téléphone
phone-alarm = Alarme
phone-alarm-off = sans
phone-alarm-hold = à « laissez jusqu'à »
phone-alarm-recast = à « relancez avant »
phone-alarm-how = Pour un appât à l'eau. Sonne quand le journal peut le dire, ou après les minutes choisies.
phone-after = après { $minutes } min
phone-awake = Écran
phone-awake-on = reste allumé
phone-awake-off = s'éteint
phone-awake-how = Tant qu'une sortie est ouverte.
phone-weights = Poids
phone-weights-lb = lb oz dr
phone-weights-kg = kg et g
phone-weights-how = Pour les poissons, sauf si un concours en décide.
phone-hand = Main
phone-hand-right = droite
phone-hand-left = gauche
phone-hand-how = Met les touches à portée de ce pouce.
phone-scheme = Thème
phone-scheme-day = jour
phone-scheme-night = nuit
phone-scheme-how = Encre sur papier, ou craie sur encre.
