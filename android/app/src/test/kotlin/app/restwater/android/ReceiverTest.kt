package app.restwater.android

import android.Manifest.permission.ACCESS_COARSE_LOCATION
import android.Manifest.permission.ACCESS_FINE_LOCATION
import android.content.pm.PackageManager
import android.location.Location
import android.location.LocationManager
import android.os.SystemClock
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import app.restwater.core.Action
import app.restwater.core.Screen
import app.restwater.core.Which
import app.restwater.core.positionWords
import app.restwater.core.shellWords
import app.restwater.ui.Showing
import java.util.concurrent.TimeUnit
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.shadows.ShadowLooper

/** The key that reads the phone's position: when it asks, what it says if refused, what a reading fills in. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ReceiverTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private val receiver get() = shadowOf(Handset.app.getSystemService(LocationManager::class.java))
    private val state get() = checkNotNull(rule.activity.state)

    @Before fun aSessionIsOpen() {
        Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)
        Handset.deny(ACCESS_FINE_LOCATION)
        Handset.deny(ACCESS_COARSE_LOCATION)
        Handset.begin()
        receiver.setProviderEnabled(LocationManager.GPS_PROVIDER, true)
        receiver.setProviderEnabled(LocationManager.NETWORK_PROVIDER, false)
        Handset.until({ "no screen" }) { rule.activity.state != null }
        rule.runOnUiThread { state.open(Showing.SWIM) }
        tap("swim-more")
        repeat(6) { if (rule.onAllNodesWithTag("swim-place").fetchSemanticsNodes().isEmpty()) tap("next-page") }
        tap("swim-place")
        assertNull("nothing is asked for before the key is tapped", shadowOf(rule.activity).lastRequestedPermission)
    }

    private fun tap(tag: String) {
        rule.waitUntilExactlyOneExists(hasTestTag(tag), 20_000)
        rule.onNodeWithTag(tag).performClick()
        rule.waitForIdle()
    }

    private fun until(there: () -> Boolean) = Handset.until({ "still waiting; the screen says: ${state.notice}" }, there)

    /** The permission dialogue, and the user's answer. */
    @Suppress("DEPRECATION") // The system still answers this way; the registry passes it on.
    private fun answer(fine: Boolean, coarse: Boolean) {
        until { shadowOf(rule.activity).lastRequestedPermission != null }
        val asked = shadowOf(rule.activity).lastRequestedPermission
        assertEquals(setOf(ACCESS_FINE_LOCATION, ACCESS_COARSE_LOCATION), asked.requestedPermissions.toSet())
        if (fine) Handset.allow(ACCESS_FINE_LOCATION)
        if (coarse) Handset.allow(ACCESS_COARSE_LOCATION)
        val answers = asked.requestedPermissions.map { name ->
            if (if (name == ACCESS_FINE_LOCATION) fine else coarse) PackageManager.PERMISSION_GRANTED else PackageManager.PERMISSION_DENIED
        }
        rule.runOnUiThread { rule.activity.onRequestPermissionsResult(asked.requestCode, asked.requestedPermissions, answers.toIntArray()) }
    }

    private fun reads(provider: String, lat: Double, lon: Double, accuracyM: Float) {
        val at = Location(provider).apply {
            latitude = lat
            longitude = lon
            accuracy = accuracyM
            time = System.currentTimeMillis()
            elapsedRealtimeNanos = SystemClock.elapsedRealtimeNanos()
        }
        until { receiver.getLocationRequests(provider).isNotEmpty() }
        receiver.simulateLocation(at)
    }

    private fun lines() = (Handset.core.screen(Which.SWIM, Handset.app.now()) as Screen.Swim).v1.place.fields.map { it.value }

    @Test fun aRefusalIsReportedAndTheLinesCanStillBeTyped() {
        tap("swim-USE_PHONE")
        answer(fine = false, coarse = false)
        until { state.notice == shellWords("en-GB").positionNotAllowed }
        assertEquals(listOf("", "", ""), lines())
        assertTrue(rule.onAllNodesWithTag("field-lat").fetchSemanticsNodes().isNotEmpty())
    }

    @Test fun aSecondTapWhileItAsksIsRefusedAndTheAnswerStillCounts() {
        tap("swim-USE_PHONE")
        until { shadowOf(rule.activity).lastRequestedPermission != null }
        val asked = shadowOf(rule.activity).lastRequestedPermission
        tap("swim-USE_PHONE")
        // The system's immediate answer to a request that is made while another is open.
        @Suppress("DEPRECATION")
        if (shadowOf(rule.activity).lastRequestedPermission !== asked) {
            rule.runOnUiThread { rule.activity.onRequestPermissionsResult(asked.requestCode, emptyArray(), intArrayOf()) }
        }
        answer(fine = true, coarse = true)
        reads(LocationManager.GPS_PROVIDER, -17.5, 178.25, 6f)
        until { state.notice == positionWords(6.0, "en-GB") }
        assertEquals(listOf("-17.5000000", "178.2500000", ""), lines())
    }

    @Test fun whileItReadsTheScreenSaysThatItWaits() {
        Handset.allow(ACCESS_FINE_LOCATION)
        tap("swim-USE_PHONE")
        until { state.notice == "…" }
        reads(LocationManager.GPS_PROVIDER, 52.0, -1.5, 4f)
        until { state.notice == positionWords(4.0, "en-GB") }
    }

    @Test fun aReadingFillsTheLinesAndLogsNothing() {
        tap("swim-USE_PHONE")
        answer(fine = true, coarse = true)
        reads(LocationManager.GPS_PROVIDER, -17.5, 178.25, 6f)
        until { state.notice == positionWords(6.0, "en-GB") }
        assertEquals(listOf("-17.5000000", "178.2500000", ""), lines())
        assertTrue("peg_placed" !in Handset.kinds())
    }

    // Before Android 12 the satellite receiver gives nothing to an app that may read only a rough position.
    @Test @Config(sdk = [31, 34, 36]) fun aRoughReadingIsCalledRough() {
        tap("swim-USE_PHONE")
        answer(fine = false, coarse = true)
        reads(LocationManager.GPS_PROVIDER, 52.0, -1.5, 2_000f)
        until { state.notice == positionWords(2_000.0, "en-GB") }
        assertEquals("52.0000000", lines().first())
    }

    /** Android 12 and later let the angler choose "Approximate", which is too rough for a peg: the key offers the precise one again. */
    @Test @Config(sdk = [31, 34, 36]) fun aChoiceOfApproximateIsAskedAboutAgainAndMayStay() {
        Handset.allow(ACCESS_COARSE_LOCATION)
        tap("swim-USE_PHONE")
        answer(fine = false, coarse = true)
        reads(LocationManager.GPS_PROVIDER, 52.0, -1.5, 2_000f)
        until { state.notice == positionWords(2_000.0, "en-GB") }
    }

    @Test fun aReceiverThatIsSwitchedOffIsReported() {
        receiver.setProviderEnabled(LocationManager.GPS_PROVIDER, false)
        tap("swim-USE_PHONE")
        answer(fine = true, coarse = true)
        until { state.notice == shellWords("en-GB").positionNotFound }
    }

    // Android's own reading gives up after half a minute.
    @Test fun aColdReceiverIsWaitedForThreeQuartersOfAMinute() {
        Handset.allow(ACCESS_FINE_LOCATION)
        tap("swim-USE_PHONE")
        until { receiver.getLocationRequests(LocationManager.GPS_PROVIDER).isNotEmpty() }
        ShadowLooper.idleMainLooper(33, TimeUnit.SECONDS)
        assertEquals("…", state.notice)
        reads(LocationManager.GPS_PROVIDER, 52.0, -1.5, 4f)
        until { state.notice == positionWords(4.0, "en-GB") }
    }

    @Test fun aReceiverThatGivesNothingIsReportedAfterThat() {
        Handset.allow(ACCESS_FINE_LOCATION)
        tap("swim-USE_PHONE")
        until { receiver.getLocationRequests(LocationManager.GPS_PROVIDER).isNotEmpty() }
        ShadowLooper.idleMainLooper(46, TimeUnit.SECONDS)
        until { state.notice == shellWords("en-GB").positionNotFound }
    }

    @Test fun onceAllowedItIsNotAskedForAgain() {
        Handset.allow(ACCESS_FINE_LOCATION)
        tap("swim-USE_PHONE")
        reads(LocationManager.GPS_PROVIDER, 52.0, -1.5, 4f)
        until { state.notice == positionWords(4.0, "en-GB") }
        assertNull(shadowOf(rule.activity).lastRequestedPermission)
    }
}
