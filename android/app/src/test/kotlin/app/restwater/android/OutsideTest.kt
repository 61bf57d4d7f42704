package app.restwater.android

import android.app.Notification
import android.service.quicksettings.Tile
import app.restwater.R
import app.restwater.core.Action
import app.restwater.core.Key
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config

/**
 * The wait outside the app: as a live update, after it was swiped away, in the quick settings; and a tap that was not
 * saved.
 */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36])
class OutsideTest {
    @Before fun allowed() {
        Handset.thatMayRing()
    }

    @After fun everyReceiverHasAnswered() = Handset.answered()

    private fun aBaitIsOut() {
        Handset.begin()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        LockScreen(Handset.app).show(Handset.core.watch(Handset.app.now()))
    }

    @Test fun theRunningWaitAsksToBeALiveUpdate() {
        aBaitIsOut()
        val wait = checkNotNull(Handset.wait())
        assertTrue(wait.extras.getBoolean("android.requestPromotedOngoing"))
        assertTrue("it counts by itself", wait.extras.getBoolean(Notification.EXTRA_SHOW_CHRONOMETER))
        assertTrue("a title is asked of one", !wait.extras.getString(Notification.EXTRA_TITLE).isNullOrBlank())
        assertEquals("its own picture in the status bar", R.drawable.wait, wait.smallIcon.resId)
    }

    @Test fun aRunningWaitThatWasSwipedAwayComesBack() {
        aBaitIsOut()
        val swept = checkNotNull(checkNotNull(Handset.wait()).deleteIntent) { "nobody hears of it" }
        Handset.sweep()
        swept.send()
        Handset.until({ "it is gone" }) { Handset.wait() != null }
    }

    @Test fun aKeyThatCouldNotBeSavedIsReported() {
        Handset.app.filesDir.resolve("log").apply { mkdirs() }.resolve(LOG).writeText("this is no log")
        val key = KeyReceiver.intent(Handset.app, Key.CAST, 1u, "CAST")
        KeyReceiver().onReceive(Handset.app, shadowOf(key).savedIntent)
        Handset.until({ "nothing is said" }) { Handset.trouble() != null }
        val told = checkNotNull(Handset.trouble())
        assertTrue("${told.extras}", told.extras.getString(Notification.EXTRA_TITLE).orEmpty().startsWith("CAST"))
        assertTrue(!told.extras.getString(Notification.EXTRA_TEXT).isNullOrBlank())
    }

    // Robolectric returns the spoken text of the tile only from Android 12.
    @Test @Config(sdk = [31, 34, 36]) fun theTileShowsTheWait() {
        aBaitIsOut()
        val tile = Robolectric.setupService(WaitTile::class.java)
        assertNotNull(tile.qsTile)
        tile.onStartListening()
        Handset.until({ "the tile stays off" }) { tile.qsTile.state == Tile.STATE_ACTIVE }
        assertTrue("${tile.qsTile.contentDescription}", "Rod 1" in tile.qsTile.contentDescription)
    }

    private companion object {
        const val LOG = "restwater.db"
    }
}
