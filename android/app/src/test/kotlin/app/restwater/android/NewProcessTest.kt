package app.restwater.android

import android.app.Notification
import android.content.Context
import android.os.Bundle
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performTextInput
import app.restwater.core.Action
import app.restwater.core.BookTap
import app.restwater.core.FilesTap
import app.restwater.core.Key
import app.restwater.core.Span
import app.restwater.core.Work
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import kotlinx.coroutines.runBlocking
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.android.controller.ActivityController
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** The system ends the process of an app in the background when it likes: a later tap means what it meant before. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class NewProcessTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val lockScreen by lazy { LockScreen(Handset.app) }

    @Before fun theClockRuns() = Handset.thatMayRing()

    @After fun everyReceiverHasAnswered() {
        Handset.settle()
        Handset.answered()
    }

    /** The lines of the log about entries of that kind, in all sessions. */
    private fun entries(kind: String): List<String> {
        Handset.core.act(Action.Files(FilesTap.Span(Span.Everything)), Handset.app.now())
        val file = runBlocking { Handset.core.send(Handset.app.now(), Work()) }
        return File(file.path).readLines().filter { "\"kind\":\"$kind\"" in it }
    }

    private fun key(label: String) = checkNotNull(checkNotNull(Handset.wait()).actions.find { it.title.toString() == label }).actionIntent

    /** Two rods out; the lock screen shows the second one. */
    private fun secondRodShown() {
        Handset.beginWithTwoRodsAndAnAlarm()
        for (action in listOf(Action.Cast(1u), Action.Cast(2u), Action.ChooseRod(2u))) {
            Handset.act(action, lockScreen)
            Handset.later(60)
        }
    }

    @Test fun aKeyOfTheLockScreenIsForTheRodThatItWasShownFor() {
        secondRodShown()
        val bite = key("BITE")
        Handset.newProcess()
        bite.send()
        Handset.answered()
        val logged = entries("bite").single()
        assertTrue(logged, "\"rod\":2" in logged)
        assertTrue("${Handset.wait()?.extras}", "Rod 2" in Handset.wait()?.extras?.getString(Notification.EXTRA_TITLE).orEmpty())
        assertNull(Handset.trouble())
    }

    /** In the app another rod was chosen, and the notification had not been updated when its key was tapped. */
    @Test fun anotherChosenRodDoesNotTakeTheKeysEntry() {
        secondRodShown()
        val bite = key("BITE")
        Handset.core.act(Action.ChooseRod(1u), Handset.app.now())
        Handset.later(60)
        bite.send()
        Handset.answered()
        val logged = entries("bite").single()
        assertTrue(logged, "\"rod\":2" in logged)
    }

    @Test fun aKeyThatIsNotOfferedAnyMoreSaysSo() {
        secondRodShown()
        val bite = key("BITE")
        Handset.core.act(Action.WoundIn(2u), Handset.app.now())
        Handset.later(60)
        bite.send()
        Handset.answered()
        assertEquals(emptyList<String>(), entries("bite"))
        val told = checkNotNull(Handset.trouble()) { "nothing is said" }.extras
        assertTrue("$told", told.getString(Notification.EXTRA_TITLE).orEmpty().startsWith("BITE"))
        assertTrue("$told", "rod 2" in told.getString(Notification.EXTRA_TEXT).orEmpty())
    }

    private fun launch(from: Bundle? = null): ActivityController<MainActivity> {
        val controller = Robolectric.buildActivity(MainActivity::class.java)
        if (from == null) controller.setup() else controller.setup(from)
        Handset.until({ "no screen" }) { rule.waitForIdle(); controller.get().state?.bank != null }
        Handset.settle()
        return controller
    }

    /** Another app is in the foreground, the system ends the process, and the angler comes back. */
    private fun comesBack(controller: ActivityController<MainActivity>, meanwhile: () -> Unit = {}): ActivityController<MainActivity> {
        val kept = processEnds(controller)
        meanwhile()
        return launch(kept)
    }

    /** What the system keeps of an activity in the background whose process it ends. */
    private fun processEnds(controller: ActivityController<MainActivity>): Bundle {
        val kept = Bundle()
        controller.pause().stop().saveInstanceState(kept).destroy()
        Handset.settle()
        Handset.newProcess()
        return kept
    }

    private fun tap(tag: String) {
        rule.waitUntilExactlyOneExists(hasTestTag(tag), 20_000)
        rule.onNodeWithTag(tag).performClick()
        Handset.settle()
    }

    private fun textIn(tag: String): String {
        rule.waitUntilExactlyOneExists(hasTestTag(tag), 20_000)
        return rule.onNodeWithTag(tag).fetchSemanticsNode().config[SemanticsProperties.EditableText].text
    }

    /** The day before is over and today's session runs. What to do next time is being written on the page of the day before. */
    private fun writing(first: String): ActivityController<MainActivity> {
        val controller = launch()
        rule.runOnUiThread { controller.get().state?.act(Action.Book(BookTap.Open(first))) }
        Handset.settle()
        rule.runOnUiThread { controller.get().state?.open(Showing.BOOK) }
        tap("key-leaf-next")
        rule.onNodeWithTag("typed-plan").performTextInput("begin far out")
        rule.waitForIdle()
        return controller
    }

    /** A session that is over, and another one after it; the id of the first. */
    private fun twoDays(): String {
        Handset.begin()
        Handset.later(600)
        Handset.core.act(Action.EndSession, Handset.app.now())
        Handset.later(3_600)
        val first = entries("session_started").single()
        Handset.begin()
        Handset.later(600)
        return checkNotNull(Regex("\"session\":\"([0-9a-f-]+)\"").find(first)).groupValues[1]
    }

    @Test fun whatIsTypedComesBackWithTheSessionThatItIsAbout() {
        val first = twoDays()
        val again = comesBack(writing(first))
        assertEquals("begin far out", textIn("typed-plan"))
        tap("send-plan")
        Handset.until({ "not logged: ${again.get().state?.notice}" }) { entries("planned_next").isNotEmpty() }
        val logged = entries("planned_next").single()
        assertTrue(logged, "\"session\":\"$first\"" in logged)
        again.pause().stop().destroy()
    }

    /** The sheet behind MORE, which is on no screen of its own. */
    @Test fun theSheetBehindMoreComesBackUnlessAFishCameOnMeanwhile() {
        Handset.begin()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        Handset.later(600)
        val controller = launch()
        tap("more")
        val again = comesBack(controller)
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.FEED)), 20_000)
        Handset.later(600)
        rule.runOnUiThread { again.get().state?.act(Action.Bite(1u)) }
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.LANDED)), 20_000)
        assertEquals(0, again.get().state?.page)
        again.pause().stop().destroy()
    }

    /** It was about a session that is not there any more: neither the screen nor the text may be about another one. */
    @Test fun aScreenWhoseSubjectIsGoneIsNotRestored() {
        val first = twoDays()
        val again = comesBack(writing(first)) {
            Handset.core.act(Action.EndSession, Handset.app.now())
            Handset.later(600)
            Handset.begin()
            Handset.later(600)
        }
        assertEquals(Showing.BANK, again.get().state?.showing)
        rule.runOnUiThread { again.get().state?.open(Showing.BOOK) }
        Handset.settle()
        tap("key-leaf-next")
        assertEquals("", textIn("typed-plan"))
        again.pause().stop().destroy()
    }

    /** What to do next time is being written about today, no session being opened in the Book. */
    private fun writingAboutToday(): ActivityController<MainActivity> {
        Handset.begin()
        Handset.later(600)
        val controller = launch()
        rule.runOnUiThread { controller.get().state?.open(Showing.BOOK) }
        tap("key-leaf-next")
        rule.onNodeWithTag("typed-plan").performTextInput("begin far out")
        rule.waitForIdle()
        return controller
    }

    private fun book(controller: ActivityController<MainActivity>): String {
        rule.runOnUiThread { controller.get().state?.open(Showing.BOOK) }
        Handset.settle()
        rule.waitForIdle()
        if (rule.onAllNodesWithTag("typed-plan").fetchSemanticsNodes().isEmpty()) tap("key-leaf-next")
        return textIn("typed-plan")
    }

    private fun bank(controller: ActivityController<MainActivity>) {
        controller.newIntent(MainActivity.bank(Handset.app))
        Handset.until({ "not at the Bank" }) { rule.waitForIdle(); controller.get().state?.showing == Showing.BANK }
        Handset.settle()
    }

    /** The commonest way back: a tap on the running wait, which leads to the Bank. */
    @Test fun whatWasTypedIsThereAfterTheNotificationOpenedTheApp() {
        val again = Robolectric.buildActivity(MainActivity::class.java).setup(processEnds(writingAboutToday()))
        bank(again)
        assertEquals("begin far out", book(again))
        again.pause().stop().destroy()
    }

    @Test fun whatWasTypedAboutYesterdayIsNotInTodaysLine() {
        val again = Robolectric.buildActivity(MainActivity::class.java).setup(processEnds(writingAboutToday()))
        bank(again)
        Handset.core.act(Action.EndSession, Handset.app.now())
        Handset.later(20 * 3_600)
        Handset.begin()
        Handset.later(60)
        assertEquals("", book(again))
        again.pause().stop().destroy()
    }

    /** In a process that lives on: the note is half typed, and an alarm is tapped. */
    @Test fun whatIsTypedOutlivesAnAlarm() {
        val controller = writingAboutToday()
        bank(controller)
        assertEquals("begin far out", book(controller))
        tap("send-plan")
        Handset.until({ "not logged: ${controller.get().state?.notice}" }) { entries("planned_next").size == 1 }
        Handset.settle()
        bank(controller)
        assertEquals("it was sent", "", book(controller))
        controller.pause().stop().destroy()
    }

    /**
     * The launcher's START, a swipe from the recent apps, a BACK on the Bank up to Android 11, a restart: the activity is gone and
     * leaves nothing that the system would keep.
     */
    private fun left(controller: ActivityController<MainActivity>) {
        controller.pause().stop().destroy()
        Handset.settle()
    }

    @Test fun whatWasTypedOutlivesAnActivityThatLeavesNothing() {
        left(writingAboutToday())
        val again = launch()
        assertEquals("begin far out", book(again))
        left(again)
    }

    @Test fun whatWasTypedOutlivesAProcessThatLeavesNothing() {
        left(writingAboutToday())
        Handset.newProcess()
        val again = launch()
        assertEquals("begin far out", book(again))
        tap("send-plan")
        Handset.until({ "not logged: ${again.get().state?.notice}" }) { entries("planned_next").size == 1 }
        Handset.settle()
        // The process ends with the screen open, without a word to it.
        val kept = Handset.app.getSharedPreferences("drafts", Context.MODE_PRIVATE).all.toString()
        assertTrue(kept, "begin far out" !in kept)
        left(again)
    }

    /** A battery that dies in the cold, or a crash, stops nothing first. */
    @Test fun whatIsTypedOutlivesABatteryThatDies() {
        val controller = writingAboutToday()
        repeat(2) { Handset.aSecondLater() }
        assertEquals(listOf("begin far out"), KeptDrafts(Handset.app).drafts.kept().drop(1))
        left(controller)
    }

    @Test fun aNewProcessHasItsOwnCore() {
        val before = Handset.core
        Handset.newProcess()
        assertNotNull(Handset.core)
        assertTrue(before !== Handset.core)
    }
}
