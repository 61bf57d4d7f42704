package app.restwater.android

import android.content.Context
import android.os.SystemClock
import android.provider.Settings
import app.restwater.core.Moment
import java.time.Instant
import java.time.ZoneId

/** This moment by the phone's clocks. The monotonic one counts while the phone sleeps and restarts at each boot. */
fun present(context: Context): Moment {
    val wall = System.currentTimeMillis()
    val zone = ZoneId.systemDefault()
    val offset = zone.rules.getOffset(Instant.ofEpochMilli(wall)).totalSeconds / 60
    val boot = Settings.Global.getInt(context.contentResolver, Settings.Global.BOOT_COUNT, 0)
    return Moment(wall, offset.toShort(), zone.id, SystemClock.elapsedRealtime(), boot.toString(), 0u)
}
