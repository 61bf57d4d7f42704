package app.restwater.android

import android.app.Activity
import android.media.AudioManager
import android.view.KeyEvent
import app.restwater.core.Key
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing

/**
 * The volume keys while the app is in the foreground. Any of them stops the sound of an alarm. If the user chose it, holding one
 * logs (up: CAST, down: WOUND IN), and a short press changes the volume as usual.
 */
internal class VolumeKeys(private val activity: Activity, private val app: RestwaterApplication) {
    private var held = false

    /** Returns whether the event was handled. */
    fun take(event: KeyEvent, state: RestwaterState?): Boolean {
        val key = KEYS[event.keyCode] ?: return false
        if (event.action == KeyEvent.ACTION_DOWN && event.repeatCount == 0) app.lockScreen.quieten()
        if (!app.choices.volumeKeys || state == null || state.showing != Showing.BANK || state.bank?.rods.isNullOrEmpty()) return false
        when {
            event.action == KeyEvent.ACTION_DOWN && event.repeatCount == 0 -> held = false
            event.action == KeyEvent.ACTION_DOWN && !held && event.eventTime - event.downTime >= HOLD_MS -> {
                held = true
                // Only what the Bank has a key for now: with a fish on there is no CAST.
                state.bank?.keys?.find { it.key == key && it.enabled }?.let(state::tap) ?: app.feel.refused()
            }
            event.action == KeyEvent.ACTION_UP && !held -> change(event.keyCode)
        }
        return true
    }

    private fun change(code: Int) {
        val way = if (code == KeyEvent.KEYCODE_VOLUME_UP) AudioManager.ADJUST_RAISE else AudioManager.ADJUST_LOWER
        activity.getSystemService(AudioManager::class.java)
            ?.adjustSuggestedStreamVolume(way, AudioManager.USE_DEFAULT_STREAM_TYPE, AudioManager.FLAG_SHOW_UI)
    }

    private companion object {
        val KEYS = mapOf(KeyEvent.KEYCODE_VOLUME_UP to Key.CAST, KeyEvent.KEYCODE_VOLUME_DOWN to Key.WOUND_IN)

        /** As long as the system's own long press, so that a bump in a pocket does not count. */
        const val HOLD_MS = 500L
    }
}
