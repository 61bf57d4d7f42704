# Cautions. The table that refers to these messages is core/caution/src/table.rs: keep both together.
# Each caution is three messages: the short text, -title that heads the card, -authority that names its authority.

caution-closing = Follow local rules, the venue and the licensing authority.

# $read: month in which the text was read, as year-month.
caution-basis-stored = From a stored copy of the authority's text, read { $read }; its own date was not verified.
caution-basis-second-hand = As quoted by others, read { $read }: check the authority's own text.
caution-basis-practice = Common practice, no source; noted { $read }.

caution-power-lines =
    Look up before you set up, and keep 30 m from overhead lines. Carbon, wet rods and wet line carry current, and it jumps gaps. Carry rods low and taken down. Never touch a line that is caught on a wire.
caution-power-lines-title = Overhead power lines
caution-power-lines-authority = Energy Networks Association; Health and Safety Executive

caution-power-lines-emergency =
    Drop the rod and don't try to free it. Keep everyone at least 5 m away, and touch nobody who is in contact with it. Ring 999 and ask for the police: they reach the network operator. A wire that looks dead may be switched on again.
caution-power-lines-emergency-title = Caught on a wire
caution-power-lines-emergency-authority = Scottish and Southern Electricity Networks; NIE Networks

caution-power-lines-emergency-ni =
    Ring NIE Networks on 03457 643 643; ring 999 if anyone is hurt. Drop the rod and don't try to free it. Keep everyone away, and touch nobody who is in contact with it.
caution-power-lines-emergency-ni-title = Caught on a wire
caution-power-lines-emergency-ni-authority = NIE Networks, Northern Ireland

caution-carbon-monoxide =
    Never light or use a stove, heater or barbecue in a tent, a shelter or any enclosed space, nor leave one there that still smoulders. The gas can kill within minutes. Headache, dizziness, sickness or sleepiness: go outside and get medical help. Ring 999 or 112 if anyone collapses.
caution-carbon-monoxide-title = Carbon monoxide
caution-carbon-monoxide-authority = Public Health England, now the UK Health Security Agency; Public Health Agency, Northern Ireland

caution-lightning =
    If you can hear thunder, lightning can reach you. Put the rod down, leave the water and tall trees, and get into a building or a car. Wait 30 minutes after the last thunder.
caution-lightning-title = Lightning
caution-lightning-authority = Met Office

caution-ice =
    Never go on the ice: not for a dog, a fish or a rig. Keep back from edges hidden under snow or leaves. Someone has gone through: ring 999 or 112, ask for the fire service, reach or throw from firm ground, and stay off the ice.
caution-ice-title = Ice
caution-ice-authority = Royal Society for the Prevention of Accidents; West Yorkshire Fire and Rescue Service

caution-cold-water =
    Someone in the water: ring 999 or 112, ask for the fire service, reach or throw, and don't go in. If you fall in, float on your back until your breathing steadies, 60 to 90 seconds, then call out and get out. Water below 15 °C takes your breath.
caution-cold-water-title = Cold water
caution-cold-water-authority = Royal National Lifeboat Institution; Royal Society for the Prevention of Accidents

caution-bank =
    Stand or kneel, don't lean out. Try platforms before you trust them and mind frost. Wear a flotation aid by deep or steep water.
caution-bank-title = The bank
caution-bank-authority = Royal Society for the Prevention of Accidents

caution-alone =
    Tell someone the water, the peg and when you will be back. Keep the phone warm and charged, carry a light, and know the name or grid reference of the place for a call to 999 or 112.
caution-alone-title = Alone or in the dark
caution-alone-authority = Fire and rescue services

caution-weather =
    Check the weather warnings before you go: yellow, amber or red. In strong wind, snow or flood, don't go.
caution-weather-title = Weather
caution-weather-authority = Met Office

caution-hypothermia =
    Shivering, slurred words, clumsy or confused: ring 999 or 112. Then find shelter, get dry and warm, and sip something warm and sweet only if fully awake. Don't rub the skin and give no alcohol.
caution-hypothermia-title = Hypothermia
caution-hypothermia-authority = National Health Service

caution-frostbite =
    White, numb fingers: warm them in your armpits. Don't rub them and keep them from fire and heaters. Get advice from the health service.
caution-frostbite-title = Numb fingers, frostbite
caution-frostbite-authority = National Health Service

caution-hook-in-eye =
    A hook in the eye or face: don't pull it. Cover it without pressing and go to accident and emergency. Wear wrap-round glasses: hooks and flying weights both injure eyes.
caution-hook-in-eye-title = Hook in the eye
caution-hook-in-eye-authority = Hoskin and others, Acta Ophthalmologica (2015); first-aid wording from memory, check

caution-casting =
    Look behind and overhead. Nobody in the arc. Check clip and knots, and use a leader that fits the lead.
caution-casting-title = Casting
caution-casting-authority = Common practice

caution-leptospirosis =
    Cover cuts, keep wet hands and line from your mouth, and wash before you eat. If you have flu-like symptoms 3 to 21 days later, tell the doctor that you were by fresh water.
caution-leptospirosis-title = Leptospirosis (Weil's disease)
caution-leptospirosis-authority = National Health Service; Health and Safety Executive

caution-tetanus =
    Wounds from hooks or knives in mud: wash them, and get advice if they are deep or dirty or your jabs are out of date.
caution-tetanus-title = Cuts and tetanus
caution-tetanus-authority = National Health Service

caution-lead =
    Lead weights only of 0.06 g (No. 8) or less, or above 28.35 g (1 oz). Between the two use another metal. At 28.35 g itself the official pages differ. Wales excepts lead-core line, feeders and self-cocking floats. Keep shot in a box that can't spill.
caution-lead-title = Lead weights
caution-lead-authority = Natural Resources Wales; GOV.UK; SI 1986/1992

caution-lead-elsewhere =
    Rules on lead weights differ from country to country and from water to water, and are changing. Find out before you use lead.
caution-lead-elsewhere-title = Lead weights
caution-lead-elsewhere-authority = European Commission; national and local authorities

caution-close-season =
    No coarse fishing on rivers from 15 March to 15 June, both days included. Most stillwaters and canals are open, but some protected ones are not, and owners may close theirs.
caution-close-season-title = Close season
caution-close-season-authority = Environment Agency; GOV.UK

caution-licence =
    From the age of 13 you need a rod licence: carry it, and the ticket of the water with it.
caution-licence-title = Rod licence
caution-licence-authority = Environment Agency; Natural Resources Wales

caution-licence-elsewhere =
    Licences, permits and close seasons differ from country to country. Find out what you need before you fish.
caution-licence-elsewhere-title = Licence and close season
caution-licence-elsewhere-authority = The licensing authority of the country

caution-rods =
    Keep the outermost butts within 3 m of each other, and never leave a baited rod: not for a fish, a phone or this app.
caution-rods-title = Rods
caution-rods-authority = GOV.UK; Natural Resources Wales

caution-rods-on-licence =
    A licence covers a limited number of rods, and a water may allow fewer. Check yours before you set up another.
caution-rods-on-licence-title = Rods on your licence
caution-rods-on-licence-authority = Environment Agency; Natural Resources Wales; the venue

caution-keepnet-form =
    A keepnet is knotless and has no metal: holes of 25 mm at most, at least 2 m long, rings at most 40 cm apart and at least 120 cm round. A sack is soft and dark and holds one fish. A landing net is knotless.
caution-keepnet-form-title = Keepnets and sacks
caution-keepnet-form-authority = National byelaws of England and Wales

caution-keepnet-use =
    Set it deep, shaded and staked out, mostly under water, not crowded, carp apart, for as short a time as you can. Bring it dry or dip it as the water asks.
caution-keepnet-use-title = Fish in keepnets
caution-keepnet-use-authority = Codes of governing bodies and clubs

caution-fish-handling =
    Wet hands and mat, keep low, support the belly. Forceps ready. Barbless where it is asked for.
caution-fish-handling-title = Handling fish
caution-fish-handling-authority = Common practice; the venue

caution-fish-frost =
    Below freezing, unhook in the water or in the net: gills can freeze in the air. Don't put fish that would freeze on the way into a keepnet or sack.
caution-fish-frost-title = Fish in frost
caution-fish-frost-authority = Fisheries studies; clubs

caution-wildlife =
    Take line and hooks home. If birds come for the bait, stop until they have gone.
caution-wildlife-title = Birds and other wildlife
caution-wildlife-authority = Common practice

caution-clean =
    Check, clean and dry nets, boots and mat between waters. Report dead or dying fish.
caution-clean-title = Disease and invaders
caution-clean-authority = GB Non-Native Species Secretariat; Environment Agency

# Shown where a weight is entered; it forbids nothing.
lead-rule-not-to-be-used = Lead of this weight is not to be used in England and Wales (above 0.06 g, up to 28.35 g). The same weight in another metal is fine. Follow local rules, the venue and the licensing authority.
lead-rule-at-the-limit = One ounce of lead is exactly at the limit of 28.35 g, and the official pages for England and Wales differ on it. Follow local rules, the venue and the licensing authority.
lead-rule-check-locally = Rules on lead weights differ here: find out before you use it. Follow local rules, the venue and the licensing authority.
