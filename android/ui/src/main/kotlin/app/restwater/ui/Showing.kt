package app.restwater.ui

import app.restwater.core.Screen
import app.restwater.core.Which

/** Which screen is open. */
enum class Showing(
    /** What the core is asked for while it is open. */
    val which: Which,
) {
    BANK(Which.BANK),
    SETUP(Which.SETUP),
    TACKLE(Which.TACKLE),
    SWIM(Which.SWIM),
    WAITS(Which.WAITS),
    CHANGES(Which.CHANGES),
    MATCH(Which.MATCH),
    FISH(Which.FISH),
    WEIGHT(Which.WEIGHT),
    FEED(Which.FEED),
    FEED_WEIGHT(Which.FEED_WEIGHT),
    SEEN(Which.SEEN),
    BENCH(Which.BENCH),
    BOOK(Which.BOOK),
    CONDITIONS(Which.CONDITIONS),
    CAUTIONS(Which.CAUTIONS),
    MEND(Which.MEND),
    FILES(Which.FILES),
    PHONE(Which.PHONE),
    DAY(Which.DAY),
    WELCOME(Which.WELCOME),
    LEGEND(Which.LEGEND),

    /** The list of screens, over what the Bank screen shows. */
    SCREENS(Which.BANK),
    ;

    companion object {
        /** What shows a screen of the core; the Bank if this shell has none for it. */
        fun of(which: Which): Showing = entries.firstOrNull { it.which == which } ?: BANK
    }
}

/** Which screen a record of the core is of. */
internal fun whichOf(screen: Screen): Which = when (screen) {
    is Screen.Bank -> Which.BANK
    is Screen.Setup -> Which.SETUP
    is Screen.Tackle -> Which.TACKLE
    is Screen.Swim -> Which.SWIM
    is Screen.Waits -> Which.WAITS
    is Screen.Changes -> Which.CHANGES
    is Screen.Match -> Which.MATCH
    is Screen.Fish -> Which.FISH
    is Screen.Weight -> Which.WEIGHT
    is Screen.Feed -> Which.FEED
    is Screen.FeedWeight -> Which.FEED_WEIGHT
    is Screen.Seen -> Which.SEEN
    is Screen.Bench -> Which.BENCH
    is Screen.Book -> Which.BOOK
    is Screen.Conditions -> Which.CONDITIONS
    is Screen.Cautions -> Which.CAUTIONS
    is Screen.Files -> Which.FILES
    is Screen.Mend -> Which.MEND
    is Screen.Phone -> Which.PHONE
    is Screen.Day -> Which.DAY
    is Screen.Welcome -> Which.WELCOME
    is Screen.Legend -> Which.LEGEND
}
