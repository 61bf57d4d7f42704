package app.restwater.android

import android.content.Intent
import android.content.pm.PackageManager
import android.content.res.Configuration
import android.os.Build
import androidx.compose.ui.graphics.toArgb
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.core.view.WindowCompat
import androidx.test.core.app.ActivityScenario
import app.restwater.R
import app.restwater.core.Action
import app.restwater.core.Scheme
import app.restwater.ui.Ink
import java.util.concurrent.CountDownLatch
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.launch
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.xmlpull.v1.XmlPullParser

/**
 * What the system does around the screens: its bars, the first window, the move to a new phone, files shared to the
 * app.
 */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class WindowTest {
    @get:Rule val rule = createEmptyComposeRule()

    private fun until(what: String, there: () -> Boolean) = Handset.until({ what }) {
        rule.waitForIdle()
        there()
    }

    @Test fun theIconsOfTheBarsFollowTheScheme() = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        var activity: MainActivity? = null
        scenario.onActivity { activity = it }
        val there = checkNotNull(activity)
        val bars = WindowCompat.getInsetsController(there.window, there.window.decorView)
        until("no screen") { there.state?.bank != null }
        until("dark marks by day") { bars.isAppearanceLightStatusBars }
        scenario.onActivity { it.state?.act(Action.Set(null, Scheme.NIGHT)) }
        until("light marks by night") { !bars.isAppearanceLightStatusBars }
    }

    private fun on(test: (ActivityScenario<MainActivity>, MainActivity) -> Unit) = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        var activity: MainActivity? = null
        scenario.onActivity { activity = it }
        val there = checkNotNull(activity)
        until("no screen") { there.state?.bank != null }
        test(scenario, there)
    }

    @Suppress("DEPRECATION") // Only Android 8 to 14 draw it.
    @Test @Config(sdk = [26, 31, 34]) fun theBarBelowHasNoGroundOfItsOwn() = on { scenario, activity ->
        assertEquals("by day", 0, activity.window.navigationBarColor)
        scenario.onActivity { it.state?.act(Action.Set(null, Scheme.NIGHT)) }
        until("night") { activity.state?.settings?.scheme == Scheme.NIGHT }
        assertEquals("by night", 0, activity.window.navigationBarColor)
    }

    // Android 10 and 11 do the same; from 12 on the phone follows the scheme that the app has set.
    @Test @Config(sdk = [31]) fun theMarksStayTheSchemesWhenThePhonesThemeTurns() = on { scenario, activity ->
        val bars = WindowCompat.getInsetsController(activity.window, activity.window.decorView)
        until("dark marks by day") { bars.isAppearanceLightStatusBars }
        scenario.onActivity {
            RuntimeEnvironment.setQualifiers("+night")
            it.window.decorView.dispatchConfigurationChanged(it.resources.configuration)
        }
        rule.waitForIdle()
        assertTrue("still dark", bars.isAppearanceLightStatusBars && bars.isAppearanceLightNavigationBars)
    }

    @Test fun theFirstPictureOfANightIsDark() {
        Handset.core.act(Action.Set(null, Scheme.NIGHT), Handset.app.now())
        val gates = List(2) { CountDownLatch(1) }
        val workers = CoroutineScope(Handset.app.worker)
        workers.launch { gates[0].await() }
        try {
            ActivityScenario.launch(MainActivity::class.java).use { scenario ->
                // The worker opens the log and then does nothing more: the screens know only what that gave them.
                workers.launch { gates[1].await() }
                gates[0].countDown()
                var activity: MainActivity? = null
                scenario.onActivity { activity = it }
                Handset.until({ "never ready" }) { activity?.state != null }
                assertEquals(Scheme.NIGHT, activity?.state?.settings?.scheme)
                gates[1].countDown()
            }
        } finally {
            gates.forEach { it.countDown() }
        }
    }

    @Test fun theFirstWindowHasThePaperColourOfTheScheme() {
        for ((night, ink) in listOf(Configuration.UI_MODE_NIGHT_NO to Ink.Day, Configuration.UI_MODE_NIGHT_YES to Ink.Night)) {
            val config = Configuration(Handset.app.resources.configuration)
            config.uiMode = config.uiMode and Configuration.UI_MODE_NIGHT_MASK.inv() or night
            val context = Handset.app.createConfigurationContext(config)
            context.setTheme(context.applicationInfo.theme)
            val value = android.util.TypedValue()
            assertTrue(context.theme.resolveAttribute(android.R.attr.windowBackground, value, true))
            assertEquals(Integer.toHexString(ink.paper.toArgb()), Integer.toHexString(context.getColor(value.resourceId)))
        }
    }

    @Test fun whatWasAskedOnThisPhoneDoesNotMoveToAnother() {
        val parser = Handset.app.resources.getXml(R.xml.data_extraction_rules)
        val moved = mutableListOf<String>()
        var inTransfer = false
        while (parser.next() != XmlPullParser.END_DOCUMENT) {
            if (parser.name == "device-transfer") inTransfer = parser.eventType == XmlPullParser.START_TAG
            if (inTransfer && parser.eventType == XmlPullParser.START_TAG && parser.name == "include") {
                moved += parser.getAttributeValue(null, "domain") + ":" + parser.getAttributeValue(null, "path")
            }
        }
        assertTrue("the log moves: $moved", "file:." in moved)
        assertTrue("$moved", moved.none { it == "sharedpref:." || it == "sharedpref:asked.xml" || it == "sharedpref:alarms.xml" })
    }

    /** Android 9 to 11 tell a move from phone to phone from a cloud backup; Android 8 doesn't, and includes nothing. */
    @Test @Config(sdk = [26, 31]) fun upToAndroid11NothingGoesIntoACloudAndFromAndroid9AMoveTakesTheLogAlong() {
        val parser = Handset.app.resources.getXml(R.xml.backup_rules)
        val (moved, left) = mutableListOf<String>() to mutableListOf<String>()
        while (parser.next() != XmlPullParser.END_DOCUMENT) {
            if (parser.eventType != XmlPullParser.START_TAG) continue
            val what = parser.getAttributeValue(null, "domain") + ":" + parser.getAttributeValue(null, "path")
            if (parser.name == "exclude") left += what
            if (parser.name != "include") continue
            assertEquals("$what goes into a cloud", "deviceToDeviceTransfer", parser.getAttributeValue(null, "requireFlags"))
            moved += what
        }
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.P) {
            assertEquals(emptyList<String>(), moved)
            assertEquals(setOf("root:.", "file:.", "database:.", "sharedpref:.", "external:."), left.toSet())
        } else {
            assertEquals(listOf("file:.", "sharedpref:phone.xml"), moved)
            assertEquals(listOf("file:log/outgoing"), left)
        }
    }

    @Test fun onlyFilesOfOurKindsAreSharedToTheApp() {
        fun taken(type: String) = Handset.app.packageManager
            .queryIntentActivities(Intent(Intent.ACTION_SEND).setType(type).setPackage(Handset.app.packageName), PackageManager.MATCH_DEFAULT_ONLY).isNotEmpty()
        for (ours in listOf("application/json-seq", "application/geo+json", "application/octet-stream")) assertTrue(ours, taken(ours))
        for (other in listOf("image/jpeg", "text/plain", "video/mp4", "application/pdf")) assertTrue(other, !taken(other))
    }
}
