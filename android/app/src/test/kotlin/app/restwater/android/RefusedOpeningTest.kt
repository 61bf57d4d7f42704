package app.restwater.android

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.lifecycle.Lifecycle
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.Restwater
import java.io.File
import java.util.concurrent.CountDownLatch
import kotlinx.coroutines.Job
import kotlinx.coroutines.launch
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** A log that can't be opened is tried again when the app comes back, and a failed salvage is explained. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class RefusedOpeningTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val folder get() = Handset.app.filesDir.resolve("log").apply { mkdirs() }
    private val log get() = folder.resolve("restwater.db")

    @Before fun notificationsAreAllowed() = Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)

    private fun refused(test: (ActivityScenario<MainActivity>, () -> Stage) -> Unit) = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        rule.waitUntilExactlyOneExists(hasTestTag("trouble"), 20_000)
        var activity: MainActivity? = null
        scenario.onActivity { activity = it }
        test(scenario) { checkNotNull(activity).stage }
    }

    @Test fun theLogOpensWhenTheAppComesBackAndTheProblemIsGone() {
        log.writeText("this is no log")
        refused { scenario, stage ->
            log.delete()
            scenario.moveToState(Lifecycle.State.CREATED)
            scenario.moveToState(Lifecycle.State.RESUMED)
            Handset.until({ "still refused" }) { (stage() as? Stage.Ready)?.state?.bank != null }
        }
    }

    /** Whatever waited for it would hold its activity. */
    @Test fun nothingWaitsForALogThatNeverOpens() {
        log.writeText("this is no log")
        refused { scenario, _ ->
            repeat(3) {
                scenario.moveToState(Lifecycle.State.CREATED)
                scenario.moveToState(Lifecycle.State.RESUMED)
                Handset.settle()
            }
        }
        Handset.settle()
        assertEquals(0, checkNotNull(Handset.app.scope.coroutineContext[Job]).children.count())
    }

    /** A log whose second half is overwritten. */
    private fun damage() {
        val made = java.nio.file.Files.createTempDirectory("damaged").toFile()
        Restwater.open(made.path, Handset.app.now(), "en-GB").use { core -> core.act(Action.StartSession(null), Handset.app.now()) }
        val bytes = made.resolve("restwater.db").readBytes()
        assertTrue("${bytes.size}", bytes.size > 2 * PAGE)
        for (i in PAGE until bytes.size step 7) bytes[i] = (bytes[i].toInt() xor 0x5A).toByte()
        log.writeBytes(bytes)
    }

    @Test fun theReasonForAFailedSalvageIsShown() {
        damage()
        refused { _, stage ->
            assertTrue("a damaged log", (stage() as Stage.Refused).damaged)
            val opening = (stage() as Stage.Refused).text
            // The new file can't be created: something else has its name.
            val inTheWay = File(folder, "restwater.db.saving").apply { mkdirs() }.resolve("kept").apply { writeText("") }
            rule.onNodeWithTag("trouble-key").performClick()
            Handset.until({ "not said: $opening" }) { (stage() as? Stage.Refused)?.text.orEmpty() !in setOf("", opening) }
            Handset.settle()
            assertTrue("the old reason is gone", (stage() as? Stage.Refused)?.text.orEmpty() !in setOf("", opening))
            inTheWay.parentFile?.deleteRecursively()
        }
    }

    /** A user who leaves while it is saved reads afterwards which entries were lost. */
    @Test fun whatASalvageSaysWaitsForTheNextScreen() {
        damage()
        refused { scenario, stage ->
            val held = CountDownLatch(1)
            // The worker is busy until the activity is gone.
            Handset.app.scope.launch(Handset.app.worker) { held.await() }
            rule.onNodeWithTag("trouble-key").performClick()
            Handset.settle()
            assertTrue("at work", stage() is Stage.Opening)
            scenario.close()
            held.countDown()
        }
        Handset.settle()
        ActivityScenario.launch(MainActivity::class.java).use { scenario ->
            var activity: MainActivity? = null
            scenario.onActivity { activity = it }
            Handset.until({ "no screen" }) { rule.waitForIdle(); activity?.state?.bank != null }
            Handset.until({ "not said: ${activity?.state?.notice}" }) { !activity?.state?.notice.isNullOrEmpty() }
        }
    }

    private companion object {
        const val PAGE = 4_096
    }
}
