# Ce que le système du téléphone montre pour l'application : canaux, droits, fichiers et position.

shell-channel-wait = Attente en cours
shell-channel-alarm = Alarmes
shell-no-notifications = Les notifications de Restwater sont coupées : une alarme ne sonne à coup sûr que tant que Restwater est à l'écran, et l'écran verrouillé reste vide. Activez-les dans les réglages du téléphone.
shell-alarms-silent = Le téléphone garde muettes les alarmes de Restwater : elles ne sonnent à coup sûr que tant que Restwater est à l'écran. Rétablissez leur son depuis l'écran « Mobile ».
shell-alarms-undisturbed = « Ne pas déranger » coupe aussi les alarmes : aucune ne sonnera. Autorisez les alarmes dans ses réglages, ou surveillez l'heure.
shell-alarm-sounds-off = Les sons ou les notifications urgentes de Restwater sont coupés : une alarme ne sonne à coup sûr que tant que Restwater est à l'écran. Activez les deux dans les réglages du téléphone.
shell-alarm-not-set = Le téléphone n'a pas pris une alarme : elle ne sonnera pas. Surveillez l'heure.
shell-wait-hidden = L'attente en cours est coupée pour Restwater : l'écran verrouillé ne montre ni attente ni boutons. Activez-la dans les réglages du téléphone.
shell-late-alarms = L'alarme peut venir jusqu'à une heure trop tard : ce téléphone n'accorde pas d'alarmes exactes à Restwater. Autorisez-les sur l'écran « Mobile ».
shell-phone-locked = Restwater ne peut lire ses fichiers qu'une fois le téléphone déverrouillé après son redémarrage. Déverrouillez-le et le journal s'ouvrira de lui-même.
shell-file-not-allowed = Restwater n'a plus droit à cet endroit. Choisissez-le de nouveau.
shell-file-gone = Ce fichier ou cet endroit a disparu. Choisissez-en un autre.
shell-file-no-space = Plus de place là-bas. Libérez-en, ou choisissez un autre endroit.
shell-file-failed = Cela n'a pas marché. Essayez un autre endroit.
shell-file-unfinished = Restwater a été fermé avant que le fichier soit enregistré ou envoyé. Recommencez.
shell-still-opening = Non enregistré : Restwater ouvre encore son journal. Touchez de nouveau dans un instant.
shell-salvage = SAUVER CE QUI PEUT L'ÊTRE
shell-no-receiver = Cet appareil n'a pas de récepteur de position. Tapez latitude et longitude.
shell-position-not-allowed = Restwater ne peut pas lire la position. Tapez-la, ou autorisez-le dans les réglages du téléphone.
shell-position-not-found = Aucune position trouvée. Activez la localisation dans les réglages et mettez-vous à découvert, ou tapez-la.
shell-position-read = La position du téléphone est remplie. Vérifiez-la, puis SITUER.
shell-position-rough = La position du téléphone est remplie, mais grossière. Accordez la position exacte à Restwater, ou corrigez-la, puis SITUER.
# Between whole numbers and decimals.
decimal-mark = ,
# A label with its value, the parts of a line, parts that have commas of their own, and two sentences of which the first has no full stop.
join-label = { $first } : { $then }
join-list = { $first }, { $then }
join-apart = { $first } ; { $then }
join-sentences = { $first }. { $then }
