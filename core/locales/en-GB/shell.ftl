# Where the app speaks for the phone's system.

shell-channel-wait = Running wait
shell-channel-alarm = Alarms
shell-no-notifications = Notifications are off for Restwater, so no alarm can ring and the lock screen stays empty. Turn them on in the phone's settings.
shell-late-alarms = The phone may ring some minutes late: allow exact alarms for Restwater in its settings.
shell-file-not-allowed = That place may no longer be used: pick it again.
shell-file-gone = That file or place is gone: pick another.
shell-file-no-space = No space is left there: free some, or pick another place.
shell-file-failed = That did not work: try another place.
shell-file-saved = Saved.
shell-salvage = SAVE WHAT CAN BE SAVED
