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
    /** The alarms that sound, each with what ends it if nobody answers. */
    private val sounding = mutableMapOf<String, Runnable>()
    private var tone: Ringtone? = null

    /**
     * Whether the system silences an app that is not on the screen. Android 17 and later do so without an error
     * (developer.android.com/about/versions/17/changes/bg-audio). The phone still vibrates.
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
        // The vibration ends by itself: if the system froze this process, nothing else would stop it.
        val shakes = if (once) 1 else (LONGEST_MS / LockScreen.BUZZ.sum()).toInt()
        shake(VibrationEffect.createWaveform(LongArray(shakes * LockScreen.BUZZ.size) { LockScreen.BUZZ[it % LockScreen.BUZZ.size] }, -1))
    }

    /** The screens are visible: an alarm that could only vibrate until now sounds for the rest of its time. */
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

    /** Vibrates with the usage of an alarm: in the background the system drops a vibration that states no usage. */
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
