# Le départ d'un club pour les conseils.

club = Club
club-leave = QUITTER LE CLUB
club-says = Les conseils partent de { $days ->
    [one] 1 journée
    *[other] { $days } journées
  } de { $anglers ->
    [one] 1 pêcheur
    *[other] { $anglers } pêcheurs
  } sur { $waters ->
    [one] 1 plan d'eau
    *[other] { $waters } plans d'eau
  }.
club-unused = Le départ de ce club est pour une autre version de l'application et n'est pas utilisé.
club-made-of = Le départ d'un club pour les conseils, tiré des journées de ses pêcheurs. Il ne contient ni lancers ni noms de pêcheurs.
club-waters = Plans d'eau qui ont leur propre départ : { $waters }.
club-casts = Vos lancers comptent comme avant, et plus il y en a, moins le départ compte. Si votre plan d'eau diffère de ceux du club, quelques lancers le montrent.
club-known = Il est déjà utilisé.
club-replaces = Il remplace le départ du club utilisé en ce moment.
club-back = ANNULER le retire. Pour continuer sans club, touchez QUITTER LE CLUB dans Fichiers.
club-figures = D'où partent les conseils
club-here-all = Le départ du jour vient de toutes ces journées, car aucun plan d'eau, aucune température ni aucun mois parmi elles ne convient à aujourd'hui.
club-here-water = Le départ du jour vient de celles de { $water } ({ $days }).
club-here-month = Le départ du jour vient de celles de { $month } ({ $days }).
club-here-temperature = Le départ du jour vient de celles où l'eau est de { $from } à { $until } °C ({ $days }).
club-own = { $percent } % du départ reste tel qu'il est sans club.
entry-club_taken = départ du club
entry-club_left = départ sans club
error-no-club = Aucun départ de club n'est utilisé : importez d'abord le fichier d'un club.
error-club-older = Le fichier de ce club est pour une version plus ancienne de l'application. Demandez-en un nouveau.
error-club-damaged = Le fichier de ce club est abîmé. Redemandez-le. Rien n'a été changé.
error-club-weights = Les pondérations du fichier de ce club sont inutilisables. Demandez-en un nouveau. Rien n'a été changé.
error-club-few = Le fichier de ce club a des pondérations tirées de moins de cinq pêcheurs ({ $detail }). Demandez-en un avec au moins cinq par plan d'eau. Rien n'a été changé.
error-club-large = Le fichier de ce club est plus grand qu'un tel fichier ne peut l'être. Demandez-en un nouveau. Rien n'a été changé.
files-form-club = tableau des journées pour un club
files-says-club = Un tableau (.csv) qui dit, pour chaque journée, à quel point chaque profil de touches correspond à ses lancers. Un club tire des tableaux de nombreux pêcheurs un départ pour les conseils. Il contient les noms des plans d'eau et aucun lancer.
files-made-club = { $count ->
    [one] 1 journée
    *[other] { $count } journées
  }
