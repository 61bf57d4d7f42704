package app.restwater.ui

import androidx.compose.foundation.layout.absoluteOffset
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.unit.IntOffset
import app.restwater.core.BankLayout
import app.restwater.core.Rect
import app.restwater.core.subMm
import kotlin.math.roundToInt

/** Places something where the core's layout says, whatever the direction of the language. */
@Composable
fun Modifier.at(rect: Rect): Modifier {
    val left = rect.left.roundToInt()
    val top = rect.top.roundToInt()
    val width = (rect.left + rect.width).roundToInt() - left
    val height = (rect.top + rect.height).roundToInt() - top
    return with(LocalDensity.current) {
        this@at.absoluteOffset { IntOffset(left, top) }.size(width.toDp(), height.toDp())
    }
}

/**
 * The layout of a screen with pages: its text has the size set on the phone, for which a screen without pages has no
 * room.
 */
fun BankLayout.ofPages(): BankLayout = copy(text = pageText)

/** The size of text at 100 % as a share of that of large text. */
internal fun BankLayout.usualShare(mm: Float): Float = (subMm() * mm / text.sub).toFloat().coerceAtMost(1f)
