# Fichiers entrants et sortants, copies, et vérification du journal.

files-title = Fichiers
files-form = Quoi
files-form-entries = notes pour un autre téléphone
files-form-report = rapport à lire ou à imprimer
files-form-casts = tableau des lancers
files-form-fish = tableau des poissons
files-form-sessions = tableau des sorties
files-form-map = la carte du poste
files-span = Quelles sorties
files-span-this = cette sortie
files-span-days = { $days ->
    [one] aujourd'hui
    *[other] les { $days } derniers jours
  }
files-span-all = tout
files-place = Position de la place
files-place-left_out = sans
files-place-included = avec
files-place-how = Latitude et longitude. Repères et points partent sans elle.
files-formulas = Signes de formule
files-formulas-marked = marqués d'un '
files-formulas-as_typed = tels quels
files-formulas-how = Un tableur exécute comme formule un texte qui commence par =, +, - ou @ ; la marque l'en empêche.
files-says-entries = Un fichier de notes (.restwater.json-seq) qu'un autre téléphone importe. L'importer deux fois ne change rien.
files-says-report = Une page (.html) avec les chiffres et les images de la sortie, lisible sans cette application.
files-says-casts = Un tableau (.csv), une ligne par lancer, unités en tête.
files-says-fish = Un tableau (.csv), une ligne par poisson pris, unités en tête.
files-says-sessions = Un tableau (.csv), une ligne par sortie, unités en tête.
files-says-map = Le poste de cette sortie (.geojson) : repères, reliefs, dangers, contour. Un autre téléphone peut l'importer ; un logiciel de cartes l'ouvre si la position y est.
files-no-session = Aucune sortie affichée : choisissez tout, ou commencez-en une.
files-send = ENVOYER
files-save = ENREGISTRER
files-folder = DOSSIER
files-take-in = IMPORTER
files-imports = Importés
files-backups = Sauvegardes
files-back-up = SAUVEGARDER
files-look-over = VÉRIFIER LE JOURNAL
files-restore = RESTAURER
files-none = Aucun fichier importé. Touchez RETOUR, puis IMPORTER : ce qu'un fichier apporte figure ici et peut être annulé.
files-no-backups = Aucune sauvegarde. Touchez SAUVEGARDER.
files-source = De
files-unnamed = sans nom
files-stamp = { $day } { $time }
files-import = { $source }, { $when } : { $ops ->
    [one] { $ops } note
    *[other] { $ops } notes
  }
files-import-back = { $source }, { $when } : { $ops ->
    [one] { $ops } note
    *[other] { $ops } notes
  }, annulé
files-undo-import = ANNULER IMPORT
files-redo-import = REFAIRE IMPORT
files-import-undone = Tout l'import est annulé.
files-import-redone = Tout l'import est rétabli.
files-backed-up = Sauvegardé et vérifié : { $when }.
files-made-entries = { $count ->
    [one] { $count } note
    *[other] { $count } notes
  }
files-made-report = Rapport sur { $count ->
    [one] { $count } lancer
    *[other] { $count } lancers
  }
files-made-casts = { $count ->
    [one] { $count } lancer
    *[other] { $count } lancers
  }
files-made-fish = { $count ->
    [one] { $count } poisson
    *[other] { $count } poissons
  }
files-made-sessions = { $count ->
    [one] { $count } sortie
    *[other] { $count } sorties
  }
files-made-map = { $count ->
    [0] Le contour du poste
    [one] Le poste avec { $count } repère ou relief
    *[other] Le poste avec { $count } repères et reliefs
  }

incoming-title = À importer
incoming-title-after = Importé
incoming-sessions = { $count ->
    [one] { $count } sortie
    *[other] { $count } sorties
  }
incoming-new = { $count ->
    [0] Il n'y a rien de nouveau.
    [one] { $count } note nouvelle dans { $sessions }.
    *[other] { $count } notes nouvelles dans { $sessions }.
  }
incoming-new-after = { $count ->
    [0] Il n'y avait rien de nouveau.
    [one] { $count } note nouvelle dans { $sessions } est au journal. ANNULER IMPORT la retire.
    *[other] { $count } notes nouvelles dans { $sessions } sont au journal. ANNULER IMPORT les retire.
  }
incoming-kit = { $count ->
    [one] { $count } note nouvelle qui n'est d'aucune sortie, comme du matériel ou un plan.
    *[other] { $count } notes nouvelles qui ne sont d'aucune sortie, comme du matériel ou un plan.
  }
incoming-kit-after = { $count ->
    [one] { $count } note nouvelle qui n'est d'aucune sortie, comme du matériel ou un plan, est au journal. ANNULER IMPORT la retire.
    *[other] { $count } notes nouvelles qui ne sont d'aucune sortie, comme du matériel ou un plan, sont au journal. ANNULER IMPORT les retire.
  }
incoming-back = { $count ->
    [one] ANNULER IMPORT avait retiré { $count } note de ce fichier. IMPORTER la remet.
    *[other] ANNULER IMPORT avait retiré { $count } notes de ce fichier. IMPORTER les remet.
  }
incoming-back-after = { $count ->
    [one] { $count } note retirée par ANNULER IMPORT est de retour.
    *[other] { $count } notes retirées par ANNULER IMPORT sont de retour.
  }
incoming-mended = { $count ->
    [one] { $count } note est abîmée dans votre journal. IMPORTER la rétablit.
    *[other] { $count } notes sont abîmées dans votre journal. IMPORTER les rétablit.
  }
incoming-mended-after = { $count ->
    [one] { $count } note abîmée dans votre journal est de nouveau entière.
    *[other] { $count } notes abîmées dans votre journal sont de nouveau entières.
  }
incoming-known = { $count ->
    [one] { $count } note est déjà ici.
    *[other] { $count } notes sont déjà ici.
  }
incoming-amended = { $count ->
    [one] { $count } des nouvelles en corrige ou en annule une autre.
    *[other] { $count } des nouvelles en corrigent ou en annulent d'autres.
  }
incoming-newer = { $count ->
    [one] { $count } vient d'une version plus récente : elle est gardée, transmise, et lue après la mise à jour.
    *[other] { $count } viennent d'une version plus récente : elles sont gardées, transmises, et lues après la mise à jour.
  }
incoming-clashes = { $count ->
    [one] { $count } note diffère de la vôtre. La vôtre reste.
    *[other] { $count } notes diffèrent des vôtres. Les vôtres restent.
  }
incoming-damaged = { $count ->
    [one] { $count } enregistrement est abîmé et laissé de côté.
    *[other] { $count } enregistrements sont abîmés et laissés de côté.
  }
incoming-first-fault = Le premier défaut : { $place }.
incoming-cut = La fin du fichier manque : redemandez-le. Ce qui est entier peut s'importer.
incoming-differs = Le fichier dit avoir eu { $count ->
    [one] { $count } note
    *[other] { $count } notes
  } : il en manque, redemandez-le.
incoming-clock-ahead = L'horloge d'un téléphone avance de { $count } min sur celui-ci. Ses heures restent telles quelles.
incoming-clock-back = L'horloge d'un téléphone a été reculée de { $count } min. Ses heures restent telles quelles.
incoming-map-undo = Un appui sur ANNULER le retire.
incoming-map-adds = Cela ajoute : { $what }.
incoming-map-already = Déjà ici : { $what }.
incoming-map-skipped = Inutilisable : { $what }.
incoming-take = IMPORTER
incoming-leave = NE PAS IMPORTER
incoming-done = FINI

check-clean = Tout va bien : { $ops ->
    [one] { $ops } note
    *[other] { $ops } notes
  }, telles qu'écrites.
check-repaired = { $ops ->
    [one] { $ops } note
    *[other] { $ops } notes
  }, telles qu'écrites. { $count ->
    [one] { $count } résumé n'y correspondait pas et a été refait.
    *[other] { $count } résumés n'y correspondaient pas et ont été refaits.
  }
check-without = Un de leurs résumés n'a pu être enregistré ou lu ({ $why }) ; l'application marche sans. Libérez de la place, puis vérifiez encore.
check-damaged = { $count ->
    [one] { $count } note est abîmée
   *[other] { $count } notes sont abîmées
} et { $ops ->
    [one] { $ops } est entière
   *[other] { $ops } sont entières
}. Restaurez la dernière sauvegarde, ou importez un fichier d'un autre téléphone.
check-file-damaged = Le fichier du journal est abîmé, et { $ops ->
    [one] sa note se lit
    *[other] ses { $ops } notes se lisent
  } encore. Envoyez tout comme notes, pour qu'une copie soit en sûreté.
salvage = { $saved ->
    [one] { $saved } note sauvée
    *[other] { $saved } notes sauvées
  }, { $lost ->
    [one] { $lost } perdue
    *[other] { $lost } perdues
  }. Le journal abîmé est gardé sous { $aside }.
salvage-unknown = { $saved ->
    [one] { $saved } note sauvée
    *[other] { $saved } notes sauvées
  } ; on ignore combien sont perdues. Le journal abîmé est gardé sous { $aside }.
