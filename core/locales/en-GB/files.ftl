# Files in and out, backups, and the check of the log.

files-title = Files
files-form = What
files-form-entries = entries for another phone
files-form-report = report to read or print
files-form-casts = table of casts
files-form-fish = table of fish
files-form-sessions = table of sessions
files-form-map = the swim as a map
files-span = Which sessions
files-span-this = this session
files-span-days = { $days ->
    [one] today
    *[other] the last { $days } days
  }
files-span-all = everything
files-place = Position of the peg
files-place-left_out = left out
files-place-included = included
files-place-how = Latitude and longitude. Marks and spots are sent without it.
files-formulas = Formula signs
files-formulas-marked = marked with '
files-formulas-as_typed = as typed
files-formulas-how = A spreadsheet runs text that begins with =, +, - or @ as a formula; the mark stops it.
files-says-entries = A file of entries (.restwater.json-seq) for another phone to import. Importing it twice changes nothing.
files-says-report = One page (.html) with the session's figures and pictures, readable without this app.
files-says-casts = A table (.csv) with one row for each cast and units in the headers.
files-says-fish = A table (.csv) with one row for each landed fish and units in the headers.
files-says-sessions = A table (.csv) with one row for each session and units in the headers.
files-says-map = The swim of this session (.geojson): marks, features, hazards, outline. Another phone can import it; a map program opens it if the position is included.
files-no-session = No session is shown: choose everything, or start one.
files-send = SEND
files-save = SAVE
files-folder = FOLDER
files-take-in = IMPORT
files-imports = Imports
files-backups = Backups
files-back-up = BACK UP NOW
files-look-over = CHECK THE LOG
files-restore = RESTORE
files-none = No file was imported yet. Tap BACK, then IMPORT: what a file brings is listed here and can be undone.
files-no-backups = No backup yet. Tap BACK UP NOW.
files-source = From
files-unnamed = no name
files-stamp = { $day } { $time }
files-import = { $source }, { $when }: { $ops ->
    [one] 1 entry
    *[other] { $ops } entries
  }
files-import-back = { $source }, { $when }: { $ops ->
    [one] 1 entry
    *[other] { $ops } entries
  }, undone
files-undo-import = UNDO IMPORT
files-redo-import = REDO IMPORT
files-import-undone = The whole import is undone.
files-import-redone = The whole import is back.
files-backed-up = Backed up and verified: { $when }.
files-made-entries = { $count ->
    [one] 1 entry
    *[other] { $count } entries
  }
files-made-report = Report of { $count ->
    [one] 1 cast
    *[other] { $count } casts
  }
files-made-casts = { $count ->
    [one] 1 cast
    *[other] { $count } casts
  }
files-made-fish = { $count ->
    [one] 1 fish
    *[other] { $count } fish
  }
files-made-sessions = { $count ->
    [one] 1 session
    *[other] { $count } sessions
  }
files-made-map = { $count ->
    [0] The swim's outline
    [one] The swim with 1 mark or feature
    *[other] The swim with { $count } marks and features
  }

incoming-title = Import
incoming-title-after = Imported
incoming-sessions = { $count ->
    [one] 1 session
    *[other] { $count } sessions
  }
incoming-new = { $count ->
    [0] Nothing new is in it.
    [one] 1 new entry in { $sessions }.
    *[other] { $count } new entries in { $sessions }.
  }
incoming-new-after = { $count ->
    [0] Nothing new was in it.
    [one] 1 new entry in { $sessions } is in the log. UNDO IMPORT removes it.
    *[other] { $count } new entries in { $sessions } are in the log. UNDO IMPORT removes them.
  }
incoming-kit = { $count ->
    [one] 1 new entry that belongs to no session, such as tackle or a plan.
    *[other] { $count } new entries that belong to no session, such as tackle or a plan.
  }
incoming-kit-after = { $count ->
    [one] 1 new entry that belongs to no session, such as tackle or a plan, is in the log. UNDO IMPORT removes it.
    *[other] { $count } new entries that belong to no session, such as tackle or a plan, are in the log. UNDO IMPORT removes them.
  }
incoming-back = { $count ->
    [one] UNDO IMPORT removed 1 entry of this file. IMPORT brings it back.
    *[other] UNDO IMPORT removed { $count } entries of this file. IMPORT brings them back.
  }
incoming-back-after = { $count ->
    [one] 1 entry that UNDO IMPORT had removed is back.
    *[other] { $count } entries that UNDO IMPORT had removed are back.
  }
incoming-mended = { $count ->
    [one] 1 entry is damaged in your log. IMPORT puts it right.
    *[other] { $count } entries are damaged in your log. IMPORT puts them right.
  }
incoming-mended-after = { $count ->
    [one] 1 entry that was damaged in your log is whole again.
    *[other] { $count } entries that were damaged in your log are whole again.
  }
incoming-known = { $count ->
    [one] 1 entry is here already.
    *[other] { $count } entries are here already.
  }
incoming-amended = { $count ->
    [one] 1 of the new ones corrects or undoes another.
    *[other] { $count } of the new ones correct or undo others.
  }
incoming-newer = { $count ->
    [one] 1 is from a newer version: it is kept and passed on, and read once this app is updated.
    *[other] { $count } are from a newer version: they are kept and passed on, and read once this app is updated.
  }
incoming-clashes = { $count ->
    [one] 1 entry differs from yours. Yours is kept.
    *[other] { $count } entries differ from yours. Yours are kept.
  }
incoming-damaged = { $count ->
    [one] 1 record is damaged and is left out.
    *[other] { $count } records are damaged and are left out.
  }
incoming-first-fault = The first fault: { $place }.
incoming-cut = The end of the file is missing: ask for it again. What is whole can be imported.
incoming-differs = The file says it had { $count ->
    [one] 1 entry
    *[other] { $count } entries
  }: some are missing, ask for it again.
incoming-clock-ahead = A phone's clock is { $count } min ahead of this one. Its times are kept as they are.
incoming-clock-back = A phone's clock was set back by { $count } min. Its times are kept as they are.
incoming-map-undo = One tap of UNDO removes it.
incoming-map-adds = It adds: { $what }.
incoming-map-already = Here already: { $what }.
incoming-map-skipped = Can't be used: { $what }.
incoming-take = IMPORT
incoming-leave = DON'T IMPORT
incoming-done = DONE

check-clean = All well: { $ops ->
    [one] 1 entry
    *[other] { $ops } entries
  }, each as it was written.
check-repaired = { $ops ->
    [one] 1 entry
    *[other] { $ops } entries
  }, each as it was written. { $count ->
    [one] 1 summary
    *[other] { $count } summaries
  } did not match them and were rebuilt.
check-without = A summary of them could not be saved or read ({ $why }); the app works without it. Free some space, then check again.
check-damaged = { $count ->
    [one] 1 entry is damaged
   *[other] { $count } entries are damaged
} and { $ops ->
    [one] 1 is
   *[other] { $ops } are
} whole. Restore the latest backup, or import a file from another phone.
check-file-damaged = The log's file is damaged, and { $ops ->
    [one] its 1 entry
    *[other] its { $ops } entries
  } can still be read. SEND everything as entries, so that a copy is safe.
salvage = { $saved ->
    [one] 1 entry saved
    *[other] { $saved } entries saved
  }, { $lost } lost. The damaged log is kept as { $aside }.
salvage-unknown = { $saved ->
    [one] 1 entry saved
    *[other] { $saved } entries saved
  }; how many were lost is not known. The damaged log is kept as { $aside }.
