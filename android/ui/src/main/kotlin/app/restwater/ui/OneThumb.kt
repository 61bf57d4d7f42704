package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.input.pointer.PointerEventPass
import androidx.compose.ui.input.pointer.pointerInput
import kotlinx.coroutines.delay

/**
 * Once two or more contacts are on the screen, ignores everything until all have gone: a palm or running drops of water
 * beside the thumb must not log anything. [onRejected] is called once for each such set of contacts. For the parent of all
 * screens: siblings do not see each other's contacts.
 */
fun Modifier.oneThumbOnly(onRejected: () -> Unit): Modifier = pointerInput(onRejected) {
    awaitPointerEventScope {
        var several = false
        while (true) {
            val event = awaitPointerEvent(PointerEventPass.Initial)
            val down = event.changes.count { it.pressed }
            if (!several && down > 1) onRejected()
            several = if (down == 0 && !event.changes.any { it.previousPressed }) false else several || down > 1
            if (several) event.changes.forEach { it.consume() }
            if (down == 0) several = false
        }
    }
}

/** A frame around the screen for a moment after rejected contacts; [count] is how often contacts were rejected. */
@Composable
internal fun RejectedFrame(count: Int) {
    var shows by remember { mutableStateOf(false) }
    // Contacts rejected before this screen was composed have been shown already.
    val before = remember { count }
    LaunchedEffect(count) {
        shows = count > before
        delay(FRAME_MS)
        shows = false
    }
    if (!shows) return
    val accent = LocalInk.current.accent
    val edge = FRAME_MM * LocalPxPerMm.current
    Canvas(Modifier.fillMaxSize().tagged("rejected")) {
        drawRect(accent, Offset(edge / 2, edge / 2), Size(size.width - edge, size.height - edge), style = Stroke(edge))
    }
}

private const val FRAME_MS = 600L
private const val FRAME_MM = 1.6f
