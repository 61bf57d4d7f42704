package app.restwater.desktop

import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.ui.ExperimentalComposeUiApi
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.Modifier
import androidx.compose.ui.unit.Density
import app.restwater.core.BankView
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.core.KeyView
import app.restwater.core.PadAsk
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.RodView
import app.restwater.core.Scheme
import app.restwater.core.Settings
import app.restwater.core.SwimScene
import app.restwater.core.Which
import app.restwater.core.bankLayout
import app.restwater.ui.BankScreen
import app.restwater.ui.BankTaps
import app.restwater.ui.Ink
import app.restwater.ui.LocalInk
import app.restwater.ui.LocalPxPerMm
import app.restwater.ui.SwimCanvas
import org.jetbrains.skia.EncodedImageFormat

/** Draws a screen of this size without a window, as PNG. */
@OptIn(ExperimentalComposeUiApi::class)
fun picture(glass: Glass, content: @Composable () -> Unit): ByteArray {
    wearFace()
    val scene = ImageComposeScene(glass.widthPx.toInt(), glass.heightPx.toInt(), Density(2.625f, 1f), content = content)
    try {
        scene.render(0)
        val image = scene.render(50_000_000)
        return checkNotNull(image.encodeToData(EncodedImageFormat.PNG)) { "no PNG encoder in this Skia" }.bytes
    } finally {
        scene.close()
    }
}

/** The Bank screen of a record as PNG, or a [page] of the sheet behind MORE. */
fun bankPicture(view: BankView, glass: Glass, settings: Settings, words: PadWords, page: Int = 0, fan: (Glass, Rect) -> SwimScene?): ByteArray =
    picture(glass) {
        val ink = if (settings.scheme == Scheme.DAY) Ink.Day else Ink.Night
        CompositionLocalProvider(LocalInk provides ink, LocalPxPerMm provides glass.pxPerMm.toFloat()) {
            val of = glass.copy(leftHanded = settings.hand == Hand.LEFT)
            val ask = PadAsk(view.state, view.rods.size.coerceIn(1, 3).toUByte(), page.toUByte())
            val layout = bankLayout(of, ask)
            val scene = layout.fan?.let { fan(of, it) }
            BankScreen(
                view, layout, words, page, "", NoTaps,
                scene?.let { drawn -> { SwimCanvas(drawn, Modifier.fillMaxSize()) } },
            )
        }
    }

/** A picture can't be tapped. */
private object NoTaps : BankTaps {
    override fun key(key: KeyView) = Unit
    override fun more() = Unit
    override fun back() = Unit
    override fun rod(rod: RodView) = Unit
    override fun screens() = Unit
    override fun open(which: Which) = Unit
}
