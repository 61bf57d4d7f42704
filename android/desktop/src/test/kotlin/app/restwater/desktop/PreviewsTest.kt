package app.restwater.desktop

import androidx.compose.ui.ExperimentalComposeUiApi
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.graphics.toComposeImageBitmap
import androidx.compose.ui.graphics.toPixelMap
import androidx.compose.ui.unit.Density
import app.restwater.ui.previews
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** The previews that Android Studio shows beside the source of the screens' parts. */
@OptIn(ExperimentalComposeUiApi::class)
class PreviewsTest {
    @Test
    fun eachPreviewDrawsItsPart() {
        wearFace()
        for ((name, preview) in previews) {
            val scene = ImageComposeScene(SIDE, SIDE, Density(2.625f, 1f)) { preview() }
            val picture = scene.render(0)
            File("${System.getProperty("restwater.tree")}/target/screens/previews").apply { mkdirs() }
                .resolve("$name.png").writeBytes(checkNotNull(picture.encodeToData()).bytes)
            val pixels = picture.toComposeImageBitmap().toPixelMap()
            val paper = pixels[0, 0]
            // At least a hundredth of the part is ink: less would be a word or two, and no key, digit or bar.
            val inked = (0 until SIDE step 3).sumOf { y -> (0 until SIDE step 3).count { x -> pixels[x, y] != paper } }
            assertTrue(inked > (SIDE / 3) * (SIDE / 3) / 100, "$name: only $inked of its points are drawn")
            scene.close()
        }
    }

    @Test
    fun everyPreviewIsInTheList() {
        val source = File("${System.getProperty("restwater.tree")}/android/ui/src/debug/kotlin/app/restwater/ui/Previews.kt").readText()
        assertEquals(Regex("^@Preview\\(", RegexOption.MULTILINE).findAll(source).count(), previews.size)
    }

    private companion object {
        const val SIDE = 1120
    }
}
