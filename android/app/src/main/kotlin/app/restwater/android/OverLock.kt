package app.restwater.android

import android.app.Activity
import android.app.KeyguardManager
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import android.content.IntentFilter
import android.os.Build
import android.view.WindowManager
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue

/**
 * Shows an alarm over the lock screen until the activity is left or the screen goes dark. Nothing else is shown there, since its
 * keys could be tapped inside a pocket. [model] keeps the state while the phone is turned; it ends with the process.
 */
internal class OverLock(private val activity: Activity, private val model: RestwaterModel) {
    /** Whether the window has had the focus since the alarm came. */
    private var seen = false

    fun alarm() {
        seen = activity.hasWindowFocus()
        model.overLock = true
        set(true)
    }

    /** The activity was recreated because the phone was turned. */
    fun again() {
        if (model.overLock) set(true)
    }

    fun focused() {
        seen = true
    }

    fun stopped() {
        // Some phones stop the activity once while they wake for it, before anybody can have seen it.
        if (!model.overLock || !seen || activity.isChangingConfigurations) return
        model.overLock = false
        set(false)
    }

    private fun set(on: Boolean) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.O_MR1) {
            activity.setShowWhenLocked(on)
            activity.setTurnScreenOn(on)
            return
        }
        @Suppress("DEPRECATION")
        val flags = WindowManager.LayoutParams.FLAG_SHOW_WHEN_LOCKED or WindowManager.LayoutParams.FLAG_TURN_SCREEN_ON
        if (on) activity.window.addFlags(flags) else activity.window.clearFlags(flags)
    }
}

/** Whether the phone is locked; kept up to date while the activity is visible. */
internal class Lock(private val activity: Activity) : BroadcastReceiver() {
    var locked by mutableStateOf(false)
        private set

    fun started() {
        look()
        // Only the system may send it.
        activity.registerReceiver(this, IntentFilter(Intent.ACTION_USER_PRESENT))
    }

    fun stopped() = activity.unregisterReceiver(this)

    fun look() {
        locked = activity.getSystemService(KeyguardManager::class.java)?.isKeyguardLocked == true
    }

    /** The phone was unlocked while an alarm was shown over the lock screen. */
    override fun onReceive(context: Context, intent: Intent) = look()
}
