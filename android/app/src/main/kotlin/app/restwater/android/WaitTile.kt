package app.restwater.android

import android.annotation.SuppressLint
import android.app.PendingIntent
import android.os.Build
import android.service.quicksettings.Tile
import android.service.quicksettings.TileService
import app.restwater.R
import app.restwater.core.WatchView
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** The running wait in the quick settings; a tap opens the Bank, on the lock screen too. */
class WaitTile : TileService() {
    private val app get() = application as RestwaterApplication

    override fun onStartListening() {
        app.scope.launch {
            withContext(app.worker) { app.core.getOrNull()?.let { core -> runCatching { core.watch(app.now()) }.getOrNull() } }?.let(::show)
        }
    }

    private fun show(watch: WatchView) {
        val tile = qsTile ?: return
        tile.state = if (watch.open) Tile.STATE_ACTIVE else Tile.STATE_INACTIVE
        val name = getString(R.string.app_name)
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.Q) {
            tile.label = name
            tile.subtitle = watch.title
        } else {
            // A tile has one line only.
            tile.label = watch.title.ifBlank { name }
        }
        tile.contentDescription = watch.spoken
        tile.updateTile()
    }

    // Android 14 and later have only the form with a pending intent, earlier versions only the other.
    @SuppressLint("StartActivityAndCollapseDeprecated")
    override fun onClick() {
        val open = MainActivity.bank(this)
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.UPSIDE_DOWN_CAKE) {
            startActivityAndCollapse(PendingIntent.getActivity(this, 0, open, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT))
        } else {
            @Suppress("DEPRECATION") startActivityAndCollapse(open)
        }
    }
}
