package app.restwater.android

import android.content.ActivityNotFoundException
import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Build
import android.provider.Settings
import app.restwater.R
import app.restwater.ui.PhoneRows
import app.restwater.ui.ShellChoice
import app.restwater.ui.ShellRow
import app.restwater.ui.listing

/** The permissions that Android grants the app, each with the key that opens its setting, and the volume keys. */
internal class PhoneChoices(private val context: RestwaterApplication) : PhoneRows {
    private val kept = context.getSharedPreferences("phone", Context.MODE_PRIVATE)

    /** Whether the volume keys log while the app is in the foreground; off unless the user switches it on. */
    var volumeKeys: Boolean
        get() = kept.getBoolean(VOLUME, false)
        private set(on) = kept.edit().putBoolean(VOLUME, on).apply()

    override fun rows(): List<ShellRow> = listing {
        add(allowance(NOTIFICATIONS, R.string.notifications, R.string.notifications_why, context.lockScreen.alarmsAllowed))
        // Few phones ever need these two rows, so each is shown only while it is needed.
        if (context.lockScreen.waitHidden) add(allowance(WAIT, R.string.running_wait, R.string.running_wait_why, false))
        if (context.lockScreen.undisturbed) add(allowance(UNDISTURBED, R.string.undisturbed, R.string.undisturbed_why, false))
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.S) {
            add(allowance(EXACT, R.string.exact_alarms, R.string.exact_alarms_why, context.lockScreen.exactAlarms))
        }
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.UPSIDE_DOWN_CAKE) {
            add(allowance(FULL_SCREEN, R.string.full_screen, R.string.full_screen_why, context.lockScreen.fullScreen))
        }
        val (on, off) = context.getString(R.string.volume_keys_on) to context.getString(R.string.volume_keys_off)
        val choices = listOf(ShellChoice(OFF, off, !volumeKeys), ShellChoice(ON, on, volumeKeys))
        add(ShellRow(VOLUME, context.getString(R.string.volume_keys), if (volumeKeys) on else off, choices, context.getString(R.string.volume_keys_why)))
    }

    private fun allowance(field: String, label: Int, why: Int, allowed: Boolean): ShellRow {
        val value = context.getString(if (allowed) R.string.allowed else R.string.not_allowed)
        return ShellRow(field, context.getString(label), value, listOf(ShellChoice(OPEN, context.getString(R.string.open_setting), !allowed)), context.getString(why))
    }

    override fun choose(row: String, choice: String) {
        if (row == VOLUME) volumeKeys = choice == ON else open(row)
    }

    /** Opens the setting itself or, if the phone has no page for it, the app's page in the settings. */
    private fun open(field: String) {
        try {
            start(setting(field))
        } catch (nobody: ActivityNotFoundException) {
            start(Intent(Settings.ACTION_APPLICATION_DETAILS_SETTINGS, us))
        }
    }

    private val us: Uri get() = Uri.fromParts("package", context.packageName, null)

    private fun setting(field: String): Intent = when {
        field == UNDISTURBED -> Intent(Settings.ACTION_ZEN_MODE_PRIORITY_SETTINGS)
        field == WAIT -> ofUs(Settings.ACTION_CHANNEL_NOTIFICATION_SETTINGS).putExtra(Settings.EXTRA_CHANNEL_ID, LockScreen.WAIT)
        field == EXACT && Build.VERSION.SDK_INT >= Build.VERSION_CODES.S -> Intent(Settings.ACTION_REQUEST_SCHEDULE_EXACT_ALARM, us)
        // Once that is granted, only the alarms' channel can prevent it.
        field == FULL_SCREEN && Build.VERSION.SDK_INT >= Build.VERSION_CODES.UPSIDE_DOWN_CAKE && !channelIsTooLow ->
            Intent(Settings.ACTION_MANAGE_APP_USE_FULL_SCREEN_INTENT, us)
        // The app's notifications as a whole come first: while they are off, the page of a channel can change nothing.
        !context.lockScreen.allowed -> ofUs(Settings.ACTION_APP_NOTIFICATION_SETTINGS)
        else -> ofUs(Settings.ACTION_CHANNEL_NOTIFICATION_SETTINGS).putExtra(Settings.EXTRA_CHANNEL_ID, LockScreen.ALARM)
    }

    private val channelIsTooLow get() = with(context.lockScreen) { fullScreenGranted && !fullScreen }

    private fun ofUs(setting: String) = Intent(setting).putExtra(Settings.EXTRA_APP_PACKAGE, context.packageName)

    private fun start(intent: Intent) = context.startActivity(intent.addFlags(Intent.FLAG_ACTIVITY_NEW_TASK))

    internal companion object {
        const val NOTIFICATIONS = "android-notifications"
        const val WAIT = "android-running-wait"
        const val UNDISTURBED = "android-undisturbed"
        const val EXACT = "android-exact-alarms"
        const val FULL_SCREEN = "android-full-screen"
        const val VOLUME = "android-volume-keys"
        const val OPEN = "open"
        const val ON = "on"
        const val OFF = "off"
    }
}
