package app.restwater.android

import android.Manifest
import android.os.Build
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.test.platform.app.InstrumentationRegistry
import app.restwater.core.Key
import app.restwater.ui.tag
import org.junit.Assert.assertNotEquals
import org.junit.Rule
import org.junit.Test

/** On a phone or an emulator: the installed app logs a cast with its own library, and the clock of its rod runs on. */
@OptIn(ExperimentalTestApi::class)
class CastOnPhoneTest {
    init {
        // The request for notifications comes when a session opens, and would cover the keys.
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
            val test = InstrumentationRegistry.getInstrumentation()
            test.uiAutomation.grantRuntimePermission(test.targetContext.packageName, Manifest.permission.POST_NOTIFICATIONS)
        }
    }

    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    @Test fun aCastIsTappedAndItsClockGoesOn() {
        // An empty log shows the welcome first.
        rule.waitUntil(WITHIN_MS) { there(SKIP) || there(tag(Key.START)) || there(tag(Key.CAST)) }
        if (there(SKIP)) rule.onNodeWithTag(SKIP).performClick()
        rule.waitUntil(WITHIN_MS) { there(Key.START) || there(Key.CAST) }
        // The first START leads to the set-up, the second begins the session. An open session has neither.
        repeat(2) { if (there(Key.START)) tap(Key.START) }
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.CAST)), WITHIN_MS)
        val before = clock()
        tap(Key.CAST)
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), WITHIN_MS)
        rule.waitUntil("the clock says that a cast is out", WITHIN_MS) { clock() != before }
        val first = clock()
        // It is read out once a minute.
        rule.waitUntil("the clock goes on from: $first", A_MINUTE_MS) { clock() != first }
        assertNotEquals(before, clock())
    }

    private fun there(key: Key) = there(tag(key))

    private fun there(tag: String) = rule.onAllNodes(hasTestTag(tag)).fetchSemanticsNodes().isNotEmpty()

    private fun tap(key: Key) {
        rule.waitUntilExactlyOneExists(hasTestTag(tag(key)), WITHIN_MS)
        rule.onNodeWithTag(tag(key)).performClick()
        rule.waitForIdle()
    }

    /** What a screen reader says of the first rod's wait. */
    private fun clock(): String =
        rule.onNodeWithTag("clock-1").fetchSemanticsNode().config.getOrNull(SemanticsProperties.ContentDescription).orEmpty().joinToString()

    private companion object {
        const val SKIP = "key-skip-"
        const val WITHIN_MS = 20_000L
        const val A_MINUTE_MS = 75_000L
    }
}
