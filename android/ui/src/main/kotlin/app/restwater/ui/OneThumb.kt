package app.restwater.ui

import androidx.compose.ui.Modifier
import androidx.compose.ui.input.pointer.PointerEventPass
import androidx.compose.ui.input.pointer.pointerInput

/**
 * Once two or more contacts are on the screen, ignores everything until all have gone: a palm or running drops of water
 * beside the thumb must not log anything. For the parent of all screens: siblings do not see each other's contacts.
 */
fun Modifier.oneThumbOnly(): Modifier = pointerInput(Unit) {
    awaitPointerEventScope {
        var several = false
        while (true) {
            val event = awaitPointerEvent(PointerEventPass.Initial)
            val down = event.changes.count { it.pressed }
            several = if (down == 0 && !event.changes.any { it.previousPressed }) false else several || down > 1
            if (several) event.changes.forEach { it.consume() }
            if (down == 0) several = false
        }
    }
}
