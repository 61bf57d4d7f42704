# Hinweise zur Sicherheit. Die Tabelle, die auf diese Texte verweist, ist core/caution/src/table.rs: beide zusammen pflegen.
# Jeder Hinweis sind drei Texte: der kurze Text, -title über der Karte, -authority mit der zuständigen Stelle.
# Die Texte gelten, wo nichts anderes gesagt ist, für Großbritannien und Nordirland und nennen die Stellen dort.

caution-closing = Folge den Regeln vor Ort, dem Betreiber des Gewässers und der Fischereibehörde.

# $read: Monat, in dem der Text gelesen wurde, als Jahr-Monat.
caution-basis-stored = Aus einer gespeicherten Fassung des Textes der Quelle, gelesen { $read }; ihr eigenes Datum wurde nicht geprüft.
caution-basis-second-hand = Wie andere es zitieren, gelesen { $read }: prüfe den Text der Quelle selbst.
caution-basis-practice = Üblich, ohne Quelle; notiert { $read }.

caution-power-lines =
    Schau nach oben, bevor du aufbaust, und bleib 30 m von Freileitungen weg. Kohlefaser, nasse Ruten und nasse Schnur leiten Strom, und er springt über. Trag Ruten tief und zerlegt. Berühre nie eine Schnur, die an einer Leitung hängt.
caution-power-lines-title = Freileitungen
caution-power-lines-authority = Energy Networks Association; Health and Safety Executive

caution-power-lines-emergency =
    Lass die Rute fallen und versuch nicht, sie zu lösen. Halte alle mindestens 5 m fern und berühre niemanden, der in Kontakt damit ist. Ruf die 999 an und verlange die Polizei: sie erreicht den Netzbetreiber. Eine Leitung, die tot aussieht, kann wieder Strom führen.
caution-power-lines-emergency-title = Hängt an der Leitung
caution-power-lines-emergency-authority = Scottish and Southern Electricity Networks; NIE Networks

caution-power-lines-emergency-ni =
    Ruf NIE Networks unter 03457 643 643 an; ist jemand verletzt, die 999. Lass die Rute fallen und versuch nicht, sie zu lösen. Halte alle fern und berühre niemanden, der in Kontakt damit ist.
caution-power-lines-emergency-ni-title = Hängt an der Leitung
caution-power-lines-emergency-ni-authority = NIE Networks, Nordirland

caution-carbon-monoxide =
    Zünde oder benutze nie einen Kocher, eine Heizung oder einen Grill in Zelt, Schirm oder geschlossenem Raum, und lass dort keinen stehen, der noch glimmt: das Gas kann in Minuten töten. Kopfschmerz, Schwindel, Übelkeit oder Müdigkeit: geh ins Freie und hol ärztliche Hilfe. Bricht jemand zusammen, ruf 112, in Großbritannien auch 999.
caution-carbon-monoxide-title = Kohlenmonoxid
caution-carbon-monoxide-authority = Public Health England, heute UK Health Security Agency; Public Health Agency, Nordirland

caution-lightning =
    Wenn du Donner hörst, kann der Blitz dich treffen. Leg die Rute ab, geh weg von Wasser und hohen Bäumen und in ein Gebäude oder ein Auto. Warte nach dem letzten Donner 30 Minuten.
caution-lightning-title = Gewitter
caution-lightning-authority = Met Office

caution-ice =
    Geh nie aufs Eis: nicht für Hund, Fisch oder Montage. Bleib weg von Kanten unter Schnee oder Laub. Ist jemand eingebrochen: ruf 112, in Großbritannien auch 999, verlange die Feuerwehr, reich oder wirf vom festen Ufer aus etwas hin, und bleib vom Eis.
caution-ice-title = Eis
caution-ice-authority = Royal Society for the Prevention of Accidents; West Yorkshire Fire and Rescue Service

caution-cold-water =
    Jemand im Wasser: ruf 112, in Großbritannien auch 999, verlange die Feuerwehr, reich oder wirf etwas hin, und geh nicht hinein. Du fällst hinein: lass dich auf dem Rücken treiben, bis der Atem ruhig ist, 60 bis 90 Sekunden, dann ruf um Hilfe und steig heraus. Wasser unter 15 °C nimmt dir den Atem.
caution-cold-water-title = Kaltes Wasser
caution-cold-water-authority = Royal National Lifeboat Institution; Royal Society for the Prevention of Accidents

caution-bank =
    Steh oder knie, lehn dich nicht hinaus. Prüfe Stege, bevor du ihnen traust, und achte auf Reif. Trag an tiefem oder steilem Wasser eine Schwimmweste.
caution-bank-title = Das Ufer
caution-bank-authority = Royal Society for the Prevention of Accidents

caution-alone =
    Sag jemandem Gewässer, Platz und wann du zurück bist. Halte das Handy warm und geladen, hab ein Licht dabei und kenne Namen oder Koordinaten des Ortes für einen Anruf bei 112, in Großbritannien auch 999.
caution-alone-title = Allein oder im Dunkeln
caution-alone-authority = Feuerwehren und Rettungsdienste (Fire and rescue services)

caution-weather =
    Sieh vor der Fahrt nach den Wetterwarnungen: gelb, orange (amber) oder rot. Bei Sturm, Schnee oder Hochwasser: geh nicht.
caution-weather-title = Wetter
caution-weather-authority = Met Office

caution-hypothermia =
    Zittern, undeutliche Worte, ungeschickt oder verwirrt: ruf 112, in Großbritannien auch 999. Dann such Schutz, werde trocken und warm, und trink nur bei vollem Bewusstsein schluckweise etwas Warmes, Süßes. Die Haut nicht reiben, kein Alkohol.
caution-hypothermia-title = Unterkühlung
caution-hypothermia-authority = National Health Service

caution-frostbite =
    Weiße, taube Finger: wärme sie in den Achselhöhlen. Nicht reiben, und fern von Feuer und Heizungen. Hol Rat beim Gesundheitsdienst.
caution-frostbite-title = Taube Finger, Erfrierung
caution-frostbite-authority = National Health Service

caution-hook-in-eye =
    Ein Haken im Auge oder Gesicht: nicht ziehen. Deck ihn ab, ohne zu drücken, und geh in die Notaufnahme. Trag eine rundum schließende Brille: Haken wie fliegende Bleie verletzen das Auge.
caution-hook-in-eye-title = Haken im Auge
caution-hook-in-eye-authority = Hoskin und andere, Acta Ophthalmologica (2015); Erste-Hilfe-Text aus dem Gedächtnis, prüfen

caution-casting =
    Schau hinter und über dich. Niemand im Schwungbereich. Prüfe Clip und Knoten, und nimm eine Schlagschnur, die zum Blei passt.
caution-casting-title = Werfen
caution-casting-authority = Üblich

caution-leptospirosis =
    Deck Wunden ab, halte nasse Hände und Schnur vom Mund fern und wasch dich vor dem Essen. Fühlst du dich 3 bis 21 Tage später wie bei Grippe, sag dem Arzt, dass du an Süßwasser warst.
caution-leptospirosis-title = Leptospirose (Weil-Krankheit)
caution-leptospirosis-authority = National Health Service; Health and Safety Executive

caution-tetanus =
    Wunden von Haken oder Messern im Schlamm: wasch sie aus, und hol Rat, wenn sie tief oder schmutzig sind oder deine Impfungen nicht mehr gelten.
caution-tetanus-title = Schnitte und Tetanus
caution-tetanus-authority = National Health Service

caution-lead =
    Bleigewichte nur bis 0,06 g (Nr. 8) oder über 28,35 g (1 oz). Dazwischen nimm ein anderes Metall. Bei genau 28,35 g sind die amtlichen Seiten verschieden. Wales nimmt Bleikernschnur, Futterkörbe und vorbebleite Posen aus. Schrot gehört in eine Dose, aus der nichts fällt.
caution-lead-title = Bleigewichte
caution-lead-authority = Natural Resources Wales; GOV.UK; SI 1986/1992

caution-lead-elsewhere =
    Regeln für Bleigewichte sind von Land zu Land und von Gewässer zu Gewässer verschieden und ändern sich. Erkundige dich, bevor du Blei benutzt.
caution-lead-elsewhere-title = Bleigewichte
caution-lead-elsewhere-authority = Europäische Kommission; Behörden von Staat und Ort

caution-close-season =
    An Flüssen kein Friedfischangeln (coarse fishing) vom 15. März bis 15. Juni, beide Tage eingeschlossen. Die meisten Stillwasser und Kanäle sind offen, manche geschützten nicht, und Eigentümer dürfen ihre schließen.
caution-close-season-title = Schonzeit
caution-close-season-authority = Environment Agency; GOV.UK

caution-licence =
    Ab 13 Jahren brauchst du einen Angelschein (rod licence): hab ihn dabei, und dazu die Karte des Gewässers.
caution-licence-title = Angelschein
caution-licence-authority = Environment Agency; Natural Resources Wales

caution-licence-elsewhere =
    Scheine, Erlaubnisse und Schonzeiten sind von Land zu Land verschieden. Erkundige dich, was du brauchst, bevor du angelst.
caution-licence-elsewhere-title = Schein und Schonzeit
caution-licence-elsewhere-authority = Die Fischereibehörde des Landes

caution-rods =
    Die äußersten Rutengriffe liegen höchstens 3 m auseinander, und eine beköderte Rute bleibt nie allein: nicht für einen Fisch, ein Handy oder diese App.
caution-rods-title = Ruten
caution-rods-authority = GOV.UK; Natural Resources Wales

caution-rods-on-licence =
    Ein Angelschein (rod licence) deckt eine begrenzte Zahl Ruten, und ein Gewässer kann weniger erlauben. Sieh auf deinem nach, bevor du noch eine aufbaust.
caution-rods-on-licence-title = Ruten auf deinem Schein
caution-rods-on-licence-authority = Environment Agency; Natural Resources Wales; der Betreiber

caution-keepnet-form =
    Ein Setzkescher ist knotenlos und ohne Metall: Maschenöffnung höchstens 25 mm, mindestens 2 m lang, Ringe höchstens 40 cm auseinander und mindestens 120 cm im Umfang. Ein Sack ist weich und dunkel und fasst einen Fisch. Ein Kescher ist knotenlos.
caution-keepnet-form-title = Setzkescher und Säcke
caution-keepnet-form-authority = Landesweite Satzungen von England und Wales (national byelaws)

caution-keepnet-use =
    Setz ihn tief, schattig und abgespannt, größtenteils unter Wasser, nicht überfüllt, Karpfen für sich, und so kurz du kannst. Bring ihn trocken mit oder tauch ihn ein, wie das Gewässer es verlangt.
caution-keepnet-use-title = Fisch im Setzkescher
caution-keepnet-use-authority = Regelwerke der Verbände und Vereine

caution-fish-handling =
    Hände und Matte nass, bleib tief, stütz den Bauch. Lösezange bereit. Schonhaken, wo es verlangt wird.
caution-fish-handling-title = Umgang mit Fischen
caution-fish-handling-authority = Üblich; der Betreiber

caution-fish-frost =
    Bei Frost im Wasser oder im Kescher abhaken: Kiemen können an der Luft gefrieren. Setz keine Fische in Setzkescher oder Sack, die unterwegs gefrieren würden.
caution-fish-frost-title = Fisch bei Frost
caution-fish-frost-authority = Fischereistudien; Vereine

caution-wildlife =
    Nimm Schnur und Haken mit nach Hause. Kommen Vögel an den Köder, hör auf, bis sie weg sind.
caution-wildlife-title = Vögel und andere Tiere
caution-wildlife-authority = Üblich

caution-clean =
    Prüfe, reinige und trockne Netze, Stiefel und Matte zwischen zwei Gewässern. Melde tote oder sterbende Fische.
caution-clean-title = Krankheit, fremde Arten
caution-clean-authority = GB Non-Native Species Secretariat; Environment Agency

# Steht dort, wo ein Gewicht eingegeben wird; verbietet nichts.
lead-rule-not-to-be-used = Blei dieses Gewichts darf in England und Wales nicht benutzt werden (über 0,06 g, bis 28,35 g). Dasselbe Gewicht aus anderem Metall geht. Folge den Regeln vor Ort, dem Betreiber des Gewässers und der Fischereibehörde.
lead-rule-at-the-limit = Eine Unze Blei liegt an der Grenze von 28,35 g, und die amtlichen Seiten für England und Wales sind darin verschieden. Folge den Regeln vor Ort, dem Betreiber des Gewässers und der Fischereibehörde.
lead-rule-check-locally = Regeln für Bleigewichte sind hier anders: erkundige dich, bevor du es benutzt. Folge den Regeln vor Ort, dem Betreiber des Gewässers und der Fischereibehörde.
