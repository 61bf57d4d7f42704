package app.restwater.android

import android.content.Context
import android.media.AudioAttributes
import android.media.Ringtone
import android.media.RingtoneManager
import android.os.Build
import android.os.Handler
import android.os.Looper
import android.os.VibrationEffect
import android.os.Vibrator

/** Sound and vibration of an alarm if notifications are not allowed: made by the process itself while it lives. */
class Sounder(private val context: Context) {
    private val main = Handler(Looper.getMainLooper())
    private val sounding = mutableSetOf<String>()
    private var tone: Ringtone? = null
    private val vibrator get() = context.getSystemService(Vibrator::class.java)

    @Synchronized
    fun sound(alarmId: String) {
        sounding += alarmId
        val use = AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ALARM).setContentType(AudioAttributes.CONTENT_TYPE_SONIFICATION).build()
        val tone = tone ?: RingtoneManager.getRingtone(context, RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM))
        this.tone = tone
        tone?.audioAttributes = use
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) tone?.isLooping = true
        tone?.play()
        vibrator?.vibrate(VibrationEffect.createWaveform(LockScreen.BUZZ, 0))
        main.postDelayed({ stop(alarmId) }, LONGEST_MS)
    }

    /** Stops one alarm; another one that sounds goes on. */
    @Synchronized
    fun stop(alarmId: String) {
        if (!sounding.remove(alarmId) || sounding.isNotEmpty()) return
        tone?.stop()
        tone = null
        vibrator?.cancel()
    }

    /** Stops all of them. */
    @Synchronized
    fun stopAll() = sounding.toList().forEach(::stop)

    private companion object {
        /** After that nobody is there: a phone that sounds for an hour is a nuisance on the bank. */
        const val LONGEST_MS = 120_000L
    }
}
