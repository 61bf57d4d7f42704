package app.restwater.android

import android.provider.Settings
import androidx.core.content.FileProvider
import kotlinx.coroutines.cancel
import kotlinx.coroutines.runBlocking
import kotlinx.coroutines.withContext

/**
 * The app of every test: Robolectric takes the class of this name instead of the manifest's. The end of a test ends no
 * process, so work that was still under way would find the system of the next test, or none.
 */
class TestRestwaterApplication : RestwaterApplication() {
    /** A phone has an alarm sound from its first start on; Robolectric's has none. */
    override fun onCreate() {
        super.onCreate()
        Settings.System.putString(contentResolver, Settings.System.ALARM_ALERT, "content://media/internal/audio/media/1")
        forgetFolders()
    }

    /** A process has one app; here it has that of each test, and androidx keeps the folders of the first one that passed a file on. */
    private fun forgetFolders() {
        val known = FileProvider::class.java.getDeclaredField("sCache").apply { isAccessible = true }.get(null) as MutableMap<*, *>
        known.clear()
    }

    /** Robolectric calls it at the end of each test, while the test's system is still there. A phone never does. */
    override fun onTerminate() {
        scope.cancel()
        receivers.cancel()
        // The worker takes one call after another, so this comes after whatever it has begun.
        runBlocking { withContext(worker) {} }
        super.onTerminate()
    }
}
