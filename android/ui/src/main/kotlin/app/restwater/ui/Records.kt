package app.restwater.ui

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateMapOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import app.restwater.core.BankView
import app.restwater.core.Screen
import app.restwater.core.Which

/** The core's latest record for each screen. */
open class Records {
    private val said = mutableStateMapOf<Which, Screen>()

    var bank by mutableStateOf<BankView?>(null)
        private set

    /** The Bank as it is between two taps or minutes, without what changes each second, see [SecondsOf]. */
    var steadyBank by mutableStateOf<BankView?>(null)
        private set

    val setup get() = (said[Which.SETUP] as? Screen.Setup)?.v1
    val tackle get() = (said[Which.TACKLE] as? Screen.Tackle)?.v1
    val swim get() = (said[Which.SWIM] as? Screen.Swim)?.v1
    val waits get() = (said[Which.WAITS] as? Screen.Waits)?.v1
    val changes get() = (said[Which.CHANGES] as? Screen.Changes)?.v1
    val match get() = (said[Which.MATCH] as? Screen.Match)?.v1
    val fish get() = (said[Which.FISH] as? Screen.Fish)?.v1
    val weight get() = (said[Which.WEIGHT] as? Screen.Weight)?.v1
    val feed get() = (said[Which.FEED] as? Screen.Feed)?.v1
    val feedWeight get() = (said[Which.FEED_WEIGHT] as? Screen.FeedWeight)?.v1
    val seen get() = (said[Which.SEEN] as? Screen.Seen)?.v1
    val bench get() = (said[Which.BENCH] as? Screen.Bench)?.v1
    val book get() = (said[Which.BOOK] as? Screen.Book)?.v1
    val conditions get() = (said[Which.CONDITIONS] as? Screen.Conditions)?.v1
    val cautions get() = (said[Which.CAUTIONS] as? Screen.Cautions)?.v1
    val files get() = (said[Which.FILES] as? Screen.Files)?.v1
    val mend get() = (said[Which.MEND] as? Screen.Mend)?.v1
    val phone get() = (said[Which.PHONE] as? Screen.Phone)?.v1
    val day get() = (said[Which.DAY] as? Screen.Day)?.v1
    val welcome get() = (said[Which.WELCOME] as? Screen.Welcome)?.v1
    val legend get() = (said[Which.LEGEND] as? Screen.Legend)?.v1

    /** Keeps a record in place of the one before. */
    protected open fun show(screen: Screen) {
        if (screen is Screen.Bank) {
            bank = screen.v1
            steadyBank = screen.v1.withoutSeconds()
        } else {
            said[whichOf(screen)] = screen
        }
    }
}
