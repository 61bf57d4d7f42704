# Was das System des Handys für die App zeigt: Kanäle, Rechte, Dateien und die Position.

shell-channel-wait = Laufende Wartezeit
shell-channel-alarm = Alarme
shell-no-notifications = Mitteilungen sind für Restwater aus: ein Alarm klingelt sicher nur, solange Restwater auf dem Bildschirm ist, und der Sperrbildschirm bleibt leer. Schalte sie in den Einstellungen des Handys ein.
shell-alarms-silent = Das Handy hält die Alarme von Restwater stumm: einer klingelt sicher nur, solange Restwater auf dem Bildschirm ist. Schalte ihren Ton auf der Seite „Handy“ ein.
shell-alarms-undisturbed = „Bitte nicht stören“ hält auch Alarme stumm, ein Alarm klingelt also nicht. Erlaube Alarme in den Einstellungen dafür oder achte auf die Uhr.
shell-alarm-sounds-off = Töne oder zeitkritische Mitteilungen sind für Restwater aus: ein Alarm klingelt sicher nur, solange Restwater auf dem Bildschirm ist. Schalte beide in den Einstellungen des Handys ein.
shell-alarm-not-set = Das Handy hat einen Alarm nicht angenommen, er klingelt also nicht. Achte auf die Uhr.
shell-wait-hidden = Die laufende Wartezeit ist für Restwater abgeschaltet: der Sperrbildschirm zeigt weder Wartezeit noch Tasten. Schalte sie in den Einstellungen des Handys ein.
shell-late-alarms = Der Alarm kann bis zu eine Stunde zu spät kommen: dieses Handy erlaubt Restwater keine genauen Alarme. Erlaube sie auf der Seite „Handy“.
shell-phone-locked = Restwater kann seine Dateien erst lesen, wenn das Handy nach dem Neustart einmal entsperrt wurde. Entsperre es, dann öffnet sich das Protokoll von selbst.
shell-file-not-allowed = Restwater darf diesen Ort nicht mehr nutzen. Wähle ihn noch einmal.
shell-file-gone = Diese Datei oder dieser Ort ist weg. Wähle etwas anderes.
shell-file-no-space = Dort ist kein Platz mehr. Schaff welchen oder wähle einen anderen Ort.
shell-file-failed = Das ging nicht. Versuch einen anderen Ort.
shell-file-unfinished = Restwater wurde beendet, bevor die Datei gesichert oder gesendet war. Bitte noch einmal.
shell-still-opening = Nicht eingetragen: Restwater öffnet noch sein Protokoll. Tippe gleich noch einmal.
shell-salvage = RETTEN, WAS ZU RETTEN IST
shell-no-receiver = Dieses Gerät kann seine Position nicht bestimmen. Gib Breite und Länge ein.
shell-position-not-allowed = Restwater darf die Position nicht lesen. Gib sie ein oder erlaube es in den Einstellungen des Handys.
shell-position-not-found = Keine Position gefunden. Schalte den Standort in den Einstellungen ein und stell dich ins Freie, oder gib sie ein.
shell-position-read = Die Position des Handys ist eingetragen. Prüfe sie, dann LAGE SETZEN.
shell-position-rough = Die Position des Handys ist eingetragen, aber grob. Erlaube Restwater den genauen Standort oder korrigiere sie, dann LAGE SETZEN.
# Between whole numbers and decimals.
decimal-mark = ,
# A label with its value, the parts of a line, parts that have commas of their own, and two sentences of which the first has no full stop.
join-label = { $first }: { $then }
join-list = { $first }, { $then }
join-apart = { $first }; { $then }
join-sentences = { $first }. { $then }
