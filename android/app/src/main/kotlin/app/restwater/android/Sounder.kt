package app.restwater.android

import android.content.Context
import android.media.AudioAttributes
import android.media.Ringtone
import android.media.RingtoneManager
import android.os.Build
import android.os.Handler
import android.os.Looper
import android.os.VibrationAttributes
import android.os.VibrationEffect
import android.os.Vibrator

/** Sound and vibration of an alarm if notifications are not allowed: made by the process itself while it lives. */
class Sounder(private val context: Context) {
    private val main = Handler(Looper.getMainLooper())
    /** The alarms that sound, each with what ends it when nobody does. */
    private val sounding = mutableMapOf<String, Runnable>()
    private var tone: Ringtone? = null
    private val vibrator get() = context.getSystemService(Vibrator::class.java)

    @Synchronized
    fun sound(alarmId: String, once: Boolean = false) {
        val end = Runnable { stop(alarmId) }
        sounding.put(alarmId, end)?.let(main::removeCallbacks)
        main.postDelayed(end, if (once) ONCE_MS else LONGEST_MS)
        val use = AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ALARM).setContentType(AudioAttributes.CONTENT_TYPE_SONIFICATION).build()
        val tone = tone ?: RingtoneManager.getRingtone(context, RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM))
        this.tone = tone
        tone?.audioAttributes = use
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) tone?.isLooping = true
        tone?.play()
        // It ends by itself: the system may freeze this process, and would go on shaking.
        val shakes = if (once) 1 else (LONGEST_MS / LockScreen.BUZZ.sum()).toInt()
        shake(VibrationEffect.createWaveform(LongArray(shakes * LockScreen.BUZZ.size) { LockScreen.BUZZ[it % LockScreen.BUZZ.size] }, -1), use)
    }

    /** As an alarm: the system drops a vibration of no stated use while the app is in the background. */
    private fun shake(effect: VibrationEffect, use: AudioAttributes) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
            vibrator?.vibrate(effect, VibrationAttributes.createForUsage(VibrationAttributes.USAGE_ALARM))
        } else {
            @Suppress("DEPRECATION") vibrator?.vibrate(effect, use)
        }
    }

    /** Stops one alarm; another one that sounds goes on. */
    @Synchronized
    fun stop(alarmId: String) {
        main.removeCallbacks(sounding.remove(alarmId) ?: return)
        if (sounding.isNotEmpty()) return
        tone?.stop()
        tone = null
        vibrator?.cancel()
    }

    /** Stops all of them. */
    @Synchronized
    fun stopAll() = sounding.keys.toList().forEach(::stop)

    internal companion object {
        /** After that nobody is there: a phone that sounds for an hour is a nuisance on the bank. */
        internal const val LONGEST_MS = 120_000L

        /** About as long as the sound of a notification: a choice. */
        private const val ONCE_MS = 6_000L
    }
}
