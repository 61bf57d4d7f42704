package app.restwater.android

import android.Manifest
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.PhoneTap
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/**
 * When the app asks for notifications: once a session is open, whatever else is chosen, and never while a fish is on.
 */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class PermissionTest {
    @get:Rule val rule = createEmptyComposeRule()

    @Before fun notYetAllowed() {
        Handset.setClock()
        Handset.deny(Manifest.permission.POST_NOTIFICATIONS)
    }

    private fun act(action: Action) {
        Handset.core.act(action, Handset.app.now())
        Handset.later(60)
    }

    private fun on(test: (MainActivity) -> Unit) = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        var activity: MainActivity? = null
        scenario.onActivity { activity = it }
        Handset.until({ "no screen" }) { activity?.state?.bank != null }
        Handset.settle()
        rule.waitForIdle()
        test(checkNotNull(activity))
    }

    private fun asked(activity: MainActivity) = shadowOf(activity).lastRequestedPermission?.requestedPermissions?.toList()

    private fun isAsked(activity: MainActivity) = Handset.until({ "never asked for" }) {
        rule.waitForIdle()
        asked(activity) == notifications
    }

    private val notifications = listOf(Manifest.permission.POST_NOTIFICATIONS)

    @Test fun itIsAlsoAskedForIfTheScreenMayGoDark() {
        act(Action.Phone(PhoneTap.Awake(false)))
        act(Action.StartSession(null))
        on(::isAsked)
    }

    @Test fun itIsNotAskedForBeforeASessionIsOpen() = on { activity -> assertNull(asked(activity)) }

    @Test fun itWaitsUntilTheFishIsLanded() {
        act(Action.StartSession(null))
        act(Action.Cast(1u))
        act(Action.Bite(1u))
        on { activity ->
            assertNull("asked for over a fish", asked(activity))
            rule.runOnUiThread { activity.state?.act(Action.Landed(1u, null)) }
            isAsked(activity)
            assertEquals(1, Handset.kinds().count { it == "landed" })
        }
    }
}
