# Consignes de sécurité. La table qui renvoie à ces messages est core/caution/src/table.rs : tenir les deux ensemble.
# Chaque consigne a trois messages : le texte court, -title en tête de la carte, -authority qui nomme son autorité.
# Sauf mention contraire, les textes valent pour la Grande-Bretagne et l'Irlande du Nord et nomment les autorités de là-bas.

caution-closing = Suivez les règles locales, le gestionnaire du lieu et l'autorité des permis.

# $read : mois de lecture du texte, en année-mois.
caution-basis-stored = D'après une copie enregistrée du texte de l'autorité, lue { $read } ; sa propre date n'a pas été vérifiée.
caution-basis-second-hand = Cité par d'autres, lu { $read } : voyez le texte de l'autorité.
caution-basis-practice = Usage courant, sans source ; noté { $read }.

caution-power-lines =
    Regardez en l'air avant de monter, et restez à 30 m des lignes électriques. Le carbone, les cannes et le fil mouillés conduisent le courant, et il saute les vides. Portez les cannes basses et démontées. Ne touchez jamais un fil accroché à un câble électrique.
caution-power-lines-title = Lignes électriques
caution-power-lines-authority = Energy Networks Association ; Health and Safety Executive

caution-power-lines-emergency =
    Lâchez la canne et n'essayez pas de la dégager. Éloignez tout le monde d'au moins 5 m, et ne touchez personne en contact avec elle. Appelez le 999 et demandez la police : elle joint le gestionnaire du réseau. Un fil qui semble mort peut être remis sous tension.
caution-power-lines-emergency-title = Fil pris dans une ligne
caution-power-lines-emergency-authority = Scottish and Southern Electricity Networks ; NIE Networks

caution-power-lines-emergency-ni =
    Appelez NIE Networks au 03457 643 643 ; le 999 si quelqu'un est blessé. Lâchez la canne et n'essayez pas de la dégager. Éloignez tout le monde, et ne touchez personne en contact avec elle.
caution-power-lines-emergency-ni-title = Fil pris dans une ligne
caution-power-lines-emergency-ni-authority = NIE Networks, Irlande du Nord

caution-carbon-monoxide =
    N'allumez et n'utilisez jamais réchaud, chauffage ou barbecue sous une tente, un abri ou dans un lieu clos, et n'y laissez rien qui couve encore : le gaz peut tuer en quelques minutes. Maux de tête, vertiges, nausées ou somnolence : sortez et faites-vous soigner. Appelez le 112, au Royaume-Uni aussi le 999, si quelqu'un s'effondre.
caution-carbon-monoxide-title = Monoxyde de carbone
caution-carbon-monoxide-authority = Public Health England, aujourd'hui UK Health Security Agency ; Public Health Agency, Irlande du Nord

caution-lightning =
    Si vous entendez le tonnerre, la foudre peut vous atteindre. Posez la canne, quittez l'eau et les grands arbres, et entrez dans un bâtiment ou une voiture. Attendez 30 minutes après le dernier tonnerre.
caution-lightning-title = Foudre
caution-lightning-authority = Met Office

caution-ice =
    N'allez jamais sur la glace : ni pour un chien, ni pour un poisson, ni pour un montage. Restez loin des bords cachés sous la neige ou les feuilles. Quelqu'un est passé au travers : appelez le 112, au Royaume-Uni aussi le 999, demandez les pompiers, tendez ou lancez quelque chose depuis la terre ferme, et restez hors de la glace.
caution-ice-title = Glace
caution-ice-authority = Royal Society for the Prevention of Accidents ; West Yorkshire Fire and Rescue Service

caution-cold-water =
    Quelqu'un à l'eau : appelez le 112, au Royaume-Uni aussi le 999, demandez les pompiers, tendez ou lancez quelque chose, et n'entrez pas. Vous tombez : flottez sur le dos jusqu'à ce que le souffle se calme, 60 à 90 secondes, puis appelez à l'aide et sortez. Une eau sous 15 °C coupe le souffle.
caution-cold-water-title = Eau froide
caution-cold-water-authority = Royal National Lifeboat Institution ; Royal Society for the Prevention of Accidents

caution-bank =
    Restez debout ou à genoux, ne vous penchez pas. Éprouvez les pontons avant de vous y fier, et gare au gel. Portez un gilet de flottaison près d'une eau profonde ou d'un bord raide.
caution-bank-title = La berge
caution-bank-authority = Royal Society for the Prevention of Accidents

caution-alone =
    Dites à quelqu'un le plan d'eau, la place et l'heure du retour. Gardez le téléphone au chaud et chargé, ayez une lampe, et sachez le nom ou les coordonnées du lieu pour un appel au 112, au Royaume-Uni aussi au 999.
caution-alone-title = Seul ou dans le noir
caution-alone-authority = Services d'incendie et de secours (Fire and rescue services)

caution-weather =
    Avant de partir, voyez les alertes météo : jaune, orange (amber) ou rouge. Par vent fort, neige ou crue, n'y allez pas.
caution-weather-title = Météo
caution-weather-authority = Met Office

caution-hypothermia =
    Frissons, parole pâteuse, gestes maladroits ou confusion : appelez le 112, au Royaume-Uni aussi le 999. Puis abritez-vous, séchez et réchauffez-vous, et buvez du chaud sucré à petites gorgées seulement si pleinement conscient. Ne frottez pas la peau, et pas d'alcool.
caution-hypothermia-title = Hypothermie
caution-hypothermia-authority = National Health Service

caution-frostbite =
    Doigts blancs et insensibles : réchauffez-les sous les bras. Ne frottez pas, et tenez-les loin du feu et des chauffages. Demandez conseil au service de santé.
caution-frostbite-title = Doigts gourds, gelures
caution-frostbite-authority = National Health Service

caution-hook-in-eye =
    Un hameçon dans l'œil ou le visage : ne tirez pas. Couvrez sans appuyer et allez aux urgences. Portez des lunettes enveloppantes : hameçons et plombs volants blessent tous deux.
caution-hook-in-eye-title = Hameçon dans l'œil
caution-hook-in-eye-authority = Hoskin et autres, Acta Ophthalmologica (2015) ; premiers secours de mémoire, à vérifier

caution-casting =
    Regardez derrière et au-dessus. Personne dans l'arc. Vérifiez clip et nœuds, et mettez une tête de ligne adaptée au plomb.
caution-casting-title = Lancer
caution-casting-authority = Usage courant

caution-leptospirosis =
    Couvrez les coupures, tenez mains mouillées et fil loin de la bouche, et lavez-vous avant de manger. Si vous vous sentez grippé 3 à 21 jours après, dites au médecin que vous étiez en eau douce.
caution-leptospirosis-title = Leptospirose (maladie de Weil)
caution-leptospirosis-authority = National Health Service ; Health and Safety Executive

caution-tetanus =
    Plaies d'hameçon ou de couteau dans la vase : lavez-les, et demandez conseil si elles sont profondes ou sales ou si vos vaccins ne sont pas à jour.
caution-tetanus-title = Coupures et tétanos
caution-tetanus-authority = National Health Service

caution-lead =
    Plombs en plomb seulement de 0,06 g (n° 8) ou moins, ou de plus de 28,35 g (1 oz). Entre les deux, un autre métal. À 28,35 g même, les pages officielles diffèrent. Le pays de Galles excepte la tresse plombée, les feeders et les flotteurs autoplombés. Gardez la cendrée dans une boîte qui ne se renverse pas.
caution-lead-title = Poids en plomb
caution-lead-authority = Natural Resources Wales ; GOV.UK ; SI 1986/1992

caution-lead-elsewhere =
    Les règles sur le plomb diffèrent d'un pays et d'un plan d'eau à l'autre, et changent. Renseignez-vous avant d'en utiliser.
caution-lead-elsewhere-title = Poids en plomb
caution-lead-elsewhere-authority = Commission européenne ; autorités nationales et locales

caution-close-season =
    Pas de pêche au poisson blanc (coarse fishing) en rivière du 15 mars au 15 juin, ces deux jours compris. La plupart des eaux closes et des canaux sont ouverts, mais certains, protégés, ne le sont pas, et les propriétaires peuvent fermer les leurs.
caution-close-season-title = Fermeture
caution-close-season-authority = Environment Agency ; GOV.UK

caution-licence =
    Dès 13 ans il faut un permis (rod licence) : ayez-le sur vous, et la carte du plan d'eau avec.
caution-licence-title = Permis de pêche
caution-licence-authority = Environment Agency ; Natural Resources Wales

caution-licence-elsewhere =
    Permis, autorisations et fermetures diffèrent d'un pays à l'autre. Renseignez-vous avant de pêcher.
caution-licence-elsewhere-title = Permis et fermeture
caution-licence-elsewhere-authority = L'autorité des permis du pays

caution-rods =
    Gardez les talons extrêmes à moins de 3 m l'un de l'autre, et ne laissez jamais une canne eschée : ni pour un poisson, ni pour un téléphone, ni pour cette application.
caution-rods-title = Cannes
caution-rods-authority = GOV.UK ; Natural Resources Wales

caution-rods-on-licence =
    Un permis (rod licence) couvre un nombre limité de cannes, et un plan d'eau peut en admettre moins. Voyez le vôtre avant d'en monter une autre.
caution-rods-on-licence-title = Cannes du permis
caution-rods-on-licence-authority = Environment Agency ; Natural Resources Wales ; le gestionnaire

caution-keepnet-form =
    Une bourriche est sans nœuds et sans métal : mailles de 25 mm au plus, 2 m de long au moins, cercles à 40 cm au plus l'un de l'autre et 120 cm de tour au moins. Un sac est doux et sombre et tient un seul poisson. Une épuisette est sans nœuds.
caution-keepnet-form-title = Bourriches et sacs
caution-keepnet-form-authority = Règlements nationaux d'Angleterre et du pays de Galles (national byelaws)

caution-keepnet-use =
    Posez-la profond, à l'ombre, bien tendue, presque toute sous l'eau, pas trop pleine, les carpes à part, le moins longtemps possible. Apportez-la sèche ou trempez-la comme le plan d'eau le demande.
caution-keepnet-use-title = Poissons en bourriche
caution-keepnet-use-authority = Codes des fédérations et des clubs

caution-fish-handling =
    Mouillez mains et tapis, restez bas, soutenez le ventre. Pince prête. Sans ardillon là où on le demande.
caution-fish-handling-title = Manier le poisson
caution-fish-handling-authority = Usage courant ; le gestionnaire

caution-fish-frost =
    Par gel, décrochez dans l'eau ou dans l'épuisette : les ouïes peuvent geler à l'air. Ne mettez ni en bourriche ni en sac un poisson qui gèlerait en chemin.
caution-fish-frost-title = Poisson par gel
caution-fish-frost-authority = Études halieutiques ; clubs

caution-wildlife =
    Remportez fil et hameçons. Si des oiseaux viennent à l'appât, arrêtez jusqu'à leur départ.
caution-wildlife-title = Oiseaux et autres animaux
caution-wildlife-authority = Usage courant

caution-clean =
    Vérifiez, nettoyez et séchez bourriches, bottes et tapis entre deux plans d'eau. Signalez les poissons morts ou mourants.
caution-clean-title = Maladies et invasives
caution-clean-authority = GB Non-Native Species Secretariat ; Environment Agency

# Montré là où l'on entre un poids ; n'interdit rien.
lead-rule-not-to-be-used = Le plomb de ce poids ne doit pas être utilisé en Angleterre et au pays de Galles (plus de 0,06 g, jusqu'à 28,35 g). Le même poids dans un autre métal convient. Suivez les règles locales, le gestionnaire du lieu et l'autorité des permis.
lead-rule-at-the-limit = Une once de plomb est à la limite de 28,35 g, et les pages officielles pour l'Angleterre et le pays de Galles diffèrent là-dessus. Suivez les règles locales, le gestionnaire du lieu et l'autorité des permis.
lead-rule-check-locally = Les règles sur le plomb diffèrent ici : renseignez-vous avant d'en utiliser. Suivez les règles locales, le gestionnaire du lieu et l'autorité des permis.
