# Where the app speaks for the phone's system.

shell-channel-wait = Running wait
shell-channel-alarm = Alarms
shell-no-notifications = Notifications are off for Restwater, so no alarm can ring and the lock screen stays empty. Turn them on in the phone's settings.
shell-late-alarms = The alarm may come up to an hour late: this phone does not allow Restwater exact alarms. Allow them on the Phone screen.
shell-file-not-allowed = That place may no longer be used: pick it again.
shell-file-gone = That file or place is gone: pick another.
shell-file-no-space = No space is left there: free some, or pick another place.
shell-file-failed = That did not work: try another place.
shell-file-saved = Saved.
shell-salvage = SAVE WHAT CAN BE SAVED
shell-no-receiver = This device has no receiver for its position. Type latitude and longitude.
shell-position-not-allowed = The position may not be read. Type it, or allow it for Restwater in the phone's settings.
shell-position-not-found = No position came. Turn on location in the phone's settings and stand in the open, or type it.
shell-position-read = The phone's position stands in the lines. Look at it, then SET PLACE.
shell-position-rough = The phone's position stands in the lines, but it is rough. Allow the precise one for Restwater, or mend the lines, then SET PLACE.
