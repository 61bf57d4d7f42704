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

    /**
     * Whether the system plays nothing of an app that is not on the screen, without an error and perhaps hours later: from
     * Android 17 on (developer.android.com/about/versions/17/changes/bg-audio). It shakes all the same.
     */
    internal var onlyInFront = Build.VERSION.SDK_INT >= ANDROID_17
    private val app get() = context.applicationContext as RestwaterApplication
    private val vibrator get() = context.getSystemService(Vibrator::class.java)

    @Synchronized
    fun sound(alarmId: String, once: Boolean = false) {
        val end = Runnable { stop(alarmId) }
        sounding.put(alarmId, end)?.let(main::removeCallbacks)
        main.postDelayed(end, if (once) ONCE_MS else LONGEST_MS)
        if (!onlyInFront || app.heard != null) play()
        // It ends by itself: the system may freeze this process, and would go on shaking.
        val shakes = if (once) 1 else (LONGEST_MS / LockScreen.BUZZ.sum()).toInt()
        shake(VibrationEffect.createWaveform(LongArray(shakes * LockScreen.BUZZ.size) { LockScreen.BUZZ[it % LockScreen.BUZZ.size] }, -1))
    }

    /** The screens are visible: what could only shake until now sounds for the rest of its time. */
    @Synchronized
    fun cameToFront() {
        if (onlyInFront && sounding.isNotEmpty() && tone?.isPlaying != true) play()
    }

    private fun play() {
        val tone = tone ?: RingtoneManager.getRingtone(context, RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM))
        this.tone = tone
        tone?.audioAttributes = USE
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) tone?.isLooping = true
        tone?.play()
    }

    /** As an alarm: the system drops a vibration of no stated use while the app is in the background. */
    private fun shake(effect: VibrationEffect) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
            vibrator?.vibrate(effect, VibrationAttributes.createForUsage(VibrationAttributes.USAGE_ALARM))
        } else {
            @Suppress("DEPRECATION") vibrator?.vibrate(effect, USE)
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

        private val USE: AudioAttributes =
            AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ALARM).setContentType(AudioAttributes.CONTENT_TYPE_SONIFICATION).build()

        /** Its name is not in the SDK that `./dev` compiles against. */
        private const val ANDROID_17 = 37

        /** About as long as the sound of a notification: a choice. */
        private const val ONCE_MS = 6_000L
    }
}
