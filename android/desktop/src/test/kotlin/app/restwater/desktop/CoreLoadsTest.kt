package app.restwater.desktop

import androidx.compose.ui.test.assertTextEquals
import androidx.compose.ui.test.junit4.v2.createComposeRule
import androidx.compose.ui.test.onNodeWithTag
import app.restwater.core.coreVersion
import app.restwater.ui.About
import org.junit.Rule
import kotlin.test.Test
import kotlin.test.assertEquals

class CoreLoadsTest {
    @get:Rule val rule = createComposeRule()

    /** The whole chain: Rust library, generated Kotlin, a screen that shows it. */
    @Test fun theScreenShowsTheCoresVersion() {
        val version = coreVersion()
        assertEquals(3, version.split(".").map { it.toInt() }.size)
        rule.setContent { About(version) }
        rule.onNodeWithTag("about").assertTextEquals("Restwater $version")
    }
}
