# What the phone's system shows for the app: channels, permissions, files and the position.

shell-channel-wait = Running wait
shell-channel-alarm = Alarms
shell-no-notifications = Notifications are off for Restwater: an alarm is sure to sound only while Restwater is on the screen, and the lock screen stays empty. Turn them on in the phone's settings.
shell-alarms-silent = The phone keeps Restwater's alarms silent: one is sure to sound only while Restwater is on the screen. Turn their sound on from the Phone screen.
shell-alarms-undisturbed = Do not disturb silences alarms too, so an alarm will make no sound. Allow alarms in its settings, or watch the clock.
shell-alarm-sounds-off = Sounds or time-sensitive notifications are off for Restwater: an alarm is sure to sound only while Restwater is on the screen. Turn both on in the phone's settings.
shell-alarm-not-set = The phone refused an alarm, so it will not ring. Watch the clock.
shell-wait-hidden = The running wait is switched off for Restwater, so the lock screen shows no wait and no keys. Turn it on in the phone's settings.
shell-late-alarms = The alarm may come up to an hour late: this phone does not allow Restwater exact alarms. Allow them on the Phone screen.
shell-phone-locked = Restwater can't read its files until the phone has been unlocked once after its restart. Unlock it, and the log opens by itself.
shell-file-not-allowed = Restwater may no longer use that place. Pick it again.
shell-file-gone = That file or place is gone. Pick another.
shell-file-no-space = There is no space left there. Free some, or pick another place.
shell-file-failed = That did not work. Try another place.
shell-file-unfinished = Restwater was ended before the file was saved or sent. Do that again.
shell-still-opening = Not logged: Restwater is still opening its log. Tap again in a moment.
shell-salvage = SAVE WHAT CAN BE SAVED
shell-no-receiver = This device has no receiver for its position. Type latitude and longitude.
shell-position-not-allowed = Restwater may not read the position. Type it, or allow it in the phone's settings.
shell-position-not-found = No position was found. Turn on location in the phone's settings and stand in the open, or type it.
shell-position-read = The phone's position is filled in. Check it, then SET PLACE.
shell-position-rough = The phone's position is filled in, but it is rough. Allow the precise position for Restwater, or correct it, then SET PLACE.
# Between whole numbers and decimals.
decimal-mark = .
# A label with its value, the parts of a line, parts that have commas of their own, and two sentences of which the first has no full stop.
join-label = { $first }: { $then }
join-list = { $first }, { $then }
join-apart = { $first }; { $then }
join-sentences = { $first }. { $then }
