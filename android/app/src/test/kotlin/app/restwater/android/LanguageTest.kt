package app.restwater.android

import android.Manifest
import android.app.NotificationManager
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.test.core.app.ActivityScenario
import app.restwater.R
import app.restwater.core.Action
import app.restwater.core.BankView
import app.restwater.core.Key
import app.restwater.core.RestwaterException
import app.restwater.core.Screen
import app.restwater.core.Which
import app.restwater.core.shellWords
import app.restwater.ui.language
import java.io.File
import java.util.Locale
import javax.xml.parsers.DocumentBuilderFactory
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** The app in the phone's language: when it opens, and when another language is chosen while it is running. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class LanguageTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val before = Locale.getDefault()

    private val channels get() = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))

    @Before fun notificationsAreAllowed() {
        Handset.setClock()
        Handset.allow(Manifest.permission.POST_NOTIFICATIONS)
    }

    @After fun theLanguageIsRestored() {
        Handset.answered()
        Locale.setDefault(before)
    }

    /** What the system does when the angler chooses another language. */
    private fun choose(tag: String) {
        Locale.setDefault(Locale.forLanguageTag(tag))
        RuntimeEnvironment.setQualifiers("+${tag.replace("-", "-r")}")
        Handset.app.onConfigurationChanged(Handset.app.resources.configuration)
        Handset.answered()
    }

    private fun cast(bank: BankView) = bank.keys.first { it.key == Key.CAST }.label

    private fun bank() = (Handset.core.screen(Which.BANK, Handset.app.now()) as Screen.Bank).v1

    @Test fun aGermanPhoneOpensTheAppInGerman() {
        choose("de-AT")
        Handset.begin()
        assertEquals("WURF", cast(bank()))
        assertEquals("EINSTELLUNG ÖFFNEN", Handset.app.getString(R.string.open_setting))
        Handset.app.lockScreen
        assertEquals("Alarme", channels.getNotificationChannel(LockScreen.ALARM).name)
    }

    @Test fun anotherLanguageIsUsedAtOnceOnTheScreensTheLockScreenAndInErrors() {
        choose("en-GB")
        Handset.begin()
        ActivityScenario.launch(MainActivity::class.java).use { scenario ->
            var there: MainActivity? = null
            scenario.onActivity { there = it }
            Handset.until({ "no screen" }) { there?.state?.bank != null && Handset.wait() != null }
            assertEquals("CAST", checkNotNull(Handset.wait()).actions.first().title.toString())
            choose("fr")
            // The lock screen is updated after the screens, asynchronously.
            Handset.until({ "the lock screen is not in French" }) { Handset.wait()?.actions?.first()?.title.toString() == "LANCER" }
            assertEquals(shellWords("fr").channelWait, channels.getNotificationChannel(LockScreen.WAIT).name.toString())
            assertNotEquals(shellWords("en").channelWait, shellWords("fr").channelWait)
            scenario.recreate()
            scenario.onActivity { there = it }
            Handset.until({ "not in French" }) { there?.state?.bank?.let(::cast) == "LANCER" }
        }
        val said = runCatching { Handset.core.act(Action.Bite(1u), Handset.app.now()) }.exceptionOrNull() as RestwaterException.Failed
        assertTrue(said.text, said.text.startsWith("Rien à l'eau"))
    }

    /** The words that Android itself shows: each is translated into each language. */
    @Test fun everyAndroidStringIsThereInEachLanguage() {
        val english = strings("values")
        assertTrue("${english.size}", english.size > 10)
        for (language in listOf("de", "fr")) {
            val theirs = strings("values-$language")
            assertEquals(language, english.filter { it.value.second }.keys, theirs.keys)
            for ((name, text) in theirs) {
                assertEquals("$language $name", "%1\$s" in english.getValue(name).first, "%1\$s" in text.first)
                if (name != "notifications") assertNotEquals("$language $name", english.getValue(name).first, text.first)
            }
        }
        choose("fr-CA")
        assertEquals("fr-CA", language())
        assertEquals("autorisé", Handset.app.getString(R.string.allowed))
    }

    /** The text of each name, and whether it is to be translated. */
    private fun strings(folder: String): Map<String, Pair<String, Boolean>> {
        val file = File(System.getProperty("restwater.tree"), "android/app/src/main/res/$folder/strings.xml")
        val nodes = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file).getElementsByTagName("string")
        return (0 until nodes.length).map { nodes.item(it) }.associate { node ->
            val translated = node.attributes.getNamedItem("translatable")?.nodeValue != "false"
            node.attributes.getNamedItem("name").nodeValue to (node.textContent to translated)
        }
    }
}
